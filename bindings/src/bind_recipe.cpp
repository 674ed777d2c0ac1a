#include <pybind11/native_enum.h>

#include "bind.hpp"
#include "kettlecast/recipe/recipe.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

void bind_enums(py::module_& module) {
  py::native_enum<Shape>(module, "Shape", "enum.Enum", "Shape of pieces; none for liquids.")
      .value("none", Shape::none)
      .value("slab", Shape::slab)
      .value("cylinder", Shape::cylinder)
      .value("sphere", Shape::sphere)
      .finalize();
  py::native_enum<Cover>(module, "Cover", "enum.Enum", "What lies on the free surface.")
      .value("open", Cover::open)
      .value("lid", Cover::lid)
      .value("oil_film", Cover::oil_film)
      .finalize();
  py::native_enum<JacketUse>(module, "JacketUse", "enum.Enum", "What the jacket does in a phase.")
      .value("off", JacketUse::off)
      .value("heat", JacketUse::heat)
      .value("cool", JacketUse::cool)
      .finalize();
  py::native_enum<Regulated>(module, "Regulated", "enum.Enum", "What the heat is regulated on.")
      .value("none", Regulated::none)
      .value("floor", Regulated::floor)
      .value("probe", Regulated::probe)
      .value("difference", Regulated::difference)
      .value("core", Regulated::core)
      .finalize();
  py::native_enum<EndKind>(module, "EndKind", "enum.Enum", "When a phase is over.")
      .value("held", EndKind::held)
      .value("elapsed", EndKind::elapsed)
      .value("above", EndKind::above)
      .value("below", EndKind::below)
      .value("mass_lost", EndKind::mass_lost)
      .value("share_lost", EndKind::share_lost)
      .finalize();
}

}  // namespace

void bind_recipe(py::module_& module) {
  bind_enums(module);
  bind_record<Composition>(module, "Composition",
                           "Mass fractions of a food [kg/kg]; they add up to 1.");
  bind_record<Food>(module, "Food", "Name, composition, initial freezing point [K].");
  bind_record<Addition>(module, "Addition", "One ingredient poured into the kettle.");
  bind_record<Agitation>(module, "Agitation", "Speed [1/s], constant or in on/off cycles [s].");
  bind_record<EndRule>(module, "EndRule", "A rule that ends a phase.");
  bind_record<Phase>(module, "Phase", "One phase of a recipe.");
  bind_record<Recipe>(module, "Recipe", "A list of phases.");
  module.def("check", py::overload_cast<const Food&>(&check), py::arg("food"));
  module.def("check", py::overload_cast<const Recipe&>(&check), py::arg("recipe"),
             "Raises InvalidArgument, naming phase and key, if the recipe cannot be run.");
  module.def("loaded_after", &loaded_after, py::arg("phase"),
             "End of the last pour, from the start of the phase [s].");
}

}  // namespace kettlecast::python
