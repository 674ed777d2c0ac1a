#include <pybind11/native_enum.h>

#include "bind.hpp"
#include "kettlecast/kettle/kettle.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

void bind_enums(py::module_& module) {
  py::native_enum<MetalKind>(module, "MetalKind", "enum.Enum", "Metal of floor and wall.")
      .value("stainless_steel", MetalKind::stainless_steel)
      .value("carbon_steel", MetalKind::carbon_steel)
      .value("aluminium", MetalKind::aluminium)
      .finalize();
  py::native_enum<AgitatorKind>(module, "AgitatorKind", "enum.Enum", "Kind of the agitator.")
      .value("none", AgitatorKind::none)
      .value("anchor", AgitatorKind::anchor)
      .value("scraped_anchor", AgitatorKind::scraped_anchor)
      .value("paddle", AgitatorKind::paddle)
      .value("helical_ribbon", AgitatorKind::helical_ribbon)
      .value("turbine", AgitatorKind::turbine)
      .finalize();
  py::native_enum<ControllerKind>(module, "ControllerKind", "enum.Enum",
                                  "How the heat is switched.")
      .value("on_off", ControllerKind::on_off)
      .value("proportional_integral", ControllerKind::proportional_integral)
      .finalize();
}

}  // namespace

void bind_kettle(py::module_& module) {
  bind_enums(module);
  bind_record<Controller>(module, "Controller", "The controller and how it counts 'reached'.");
  bind_record<Surroundings>(module, "Surroundings", "The room around the kettle.");
  bind_record<Kettle>(module, "Kettle", "A cylindrical kettle, as on its type plate.");
  module.def("check", py::overload_cast<const Kettle&>(&check), py::arg("kettle"),
             "Raises InvalidArgument, naming the key, if the kettle cannot exist.");
  module.def("usable_volume", &usable_volume, py::arg("kettle"), "Usable volume [m3].");
}

}  // namespace kettlecast::python
