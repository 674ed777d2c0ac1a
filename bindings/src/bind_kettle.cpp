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
  py::native_enum<JacketKind>(module, "JacketKind", "enum.Enum", "What heats the jacket.")
      .value("electric", JacketKind::electric)
      .value("steam", JacketKind::steam)
      .value("liquid", JacketKind::liquid)
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
  bind_record<JacketFlow>(module, "JacketFlow", "A liquid that flows through the jacket.");
  bind_record<Jacket>(module, "Jacket", "The jacket of a kettle and what feeds it.");
  bind_record<Kettle>(module, "Kettle", "A cylindrical kettle, as on its type plate.");
  module.def("check", py::overload_cast<const Kettle&>(&check), py::arg("kettle"),
             "Raises InvalidArgument, naming the key, if the kettle cannot exist.");
  module.def("covering_volume", &covering_volume, py::arg("kettle"),
             "Volume of product that covers the agitator [m3]; 0 if its height is not given.");
  module.def("heats_by_jacket", &heats_by_jacket, py::arg("kettle"),
             "Whether the controller acts on the jacket, because there are no floor elements.");
  module.def("usable_volume", &usable_volume, py::arg("kettle"), "Usable volume [m3].");
}

}  // namespace kettlecast::python
