#include <numeric>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/consistency.hpp"
#include "kettlecast/properties/mixture.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

double mixture_of(const std::vector<double>& viscosities, const std::vector<double>& masses) {
  const char* where = "consistency.mixed_viscosity";
  if (viscosities.empty() || viscosities.size() != masses.size()) {
    throw InvalidArgument(std::string(where) +
                          ": viscosities and masses must be equally many, at least one");
  }
  const double total = std::accumulate(masses.begin(), masses.end(), 0.0);
  require_between(where, "sum of the masses", total, 1e-12, 1e30, "kg");
  return mixed_viscosity(viscosities, masses);
}

}  // namespace

void bind_consistency(py::module_& module) {
  bind_record<Consistency>(
      module, "Consistency",
      "How thick a liquid is, and how it thickens; the default is like water.");
  module.def("check", py::overload_cast<const Consistency&>(&check), py::arg("consistency"),
             "Raises InvalidArgument, naming the key, if no liquid is like this.");
  auto properties = properties_of(module);
  auto thick = properties.def_submodule("consistency", "Viscosity of thick liquids.");
  const py::arg liquid("consistency");
  const auto temperature = named("temperature", 253.15, 473.15, "K");
  define(thick, "apparent_viscosity", &apparent_viscosity<double>,
         "Viscosity [Pa s] at a temperature [K], shear rate [1/s], thickened share [-] and dry "
         "share [kg/kg]; Ostwald's power law with Arrhenius' term.",
         liquid, temperature, named("shear_rate"), named("thickened"), named("dry_share"));
  define(thick, "thickening_speed", &thickening_speed<double>,
         "Growth of the thickened share [1/s] at a temperature [K]; first order.", liquid,
         temperature, named("thickened"));
  define(thick, "mixed_viscosity", &mixture_of,
         "Viscosity of liquids poured together [Pa s], mean of the logarithms by mass [kg]; "
         "Arrhenius.",
         named("viscosities"), named("masses"));
}

}  // namespace kettlecast::python
