#include <pybind11/native_enum.h>

#include <limits>

#include "bind.hpp"
#include "kettlecast/kettle/vessel.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

constexpr double endless = std::numeric_limits<double>::max();

Wetting<double> wetting_of(const VesselShape& shape, double volume) {
  check(shape);
  require_between("wetting", "volume", volume, 0.0, endless, "m3");
  return wetting(shape, volume);
}

double volume_below(const VesselShape& shape, double level) {
  check(shape);
  require_between("volume_at_level", "level", level, -endless, endless, "m");
  return volume_at_level(shape, level);
}

double volume_over(const VesselShape& shape, double height, double radius) {
  check(shape);
  require_between("volume_to_cover", "height", height, 0.0, endless, "m");
  require_between("volume_to_cover", "radius", radius, 0.0, 0.5 * shape.diameter, "m");
  return volume_to_cover(shape, height, radius);
}

double holds(const VesselShape& shape) {
  check(shape);
  return capacity(shape);
}

double whole_floor(const VesselShape& shape) {
  check(shape);
  return floor_total_area(shape);
}

void bind_functions(py::module_& module) {
  module.def("wetting", &wetting_of, py::arg("shape"), py::arg("volume"),
             "Level [m] and wetted areas [m2] of a volume [m3]; exact for a level surface over a "
             "flat or spherical floor (Harris & Stocker; Gauss-Bonnet theorem).");
  module.def("capacity", &holds, py::arg("shape"),
             "Volume until the low side of the lip spills [m3]; same source as wetting.");
  module.def("floor_total_area", &whole_floor, py::arg("shape"),
             "Area of the whole floor [m2]; Archimedes.");
  module.def("volume_at_level", &volume_below, py::arg("shape"), py::arg("level"),
             "Volume [m3] whose surface meets the axis at a level above the floor's centre [m]; "
             "same source as wetting.");
  module.def("volume_to_cover", &volume_over, py::arg("shape"), py::arg("height"),
             py::arg("radius"),
             "Volume [m3] that covers a disc on the axis, for example an agitator, of a radius "
             "[m] at a height above the floor's centre [m]; same source as wetting.");
}

}  // namespace

void bind_vessel(py::module_& module) {
  py::native_enum<FloorShape>(module, "FloorShape", "enum.Enum", "Floor under the straight wall.")
      .value("flat", FloorShape::flat)
      .value("dished", FloorShape::dished)
      .value("hemispherical", FloorShape::hemispherical)
      .finalize();
  bind_record<VesselShape>(module, "VesselShape", "A cylinder over a floor, upright or tilted.");
  bind_record<Wetting<double>>(module, "Wetting", "What a volume of product wets.");
  module.def(
      "check", [](const VesselShape& shape) { check(shape); }, py::arg("shape"),
      "Raises InvalidArgument, naming the key, if the vessel cannot exist.");
  auto vessel = module.def_submodule("vessel", "Volume, level and wetted areas of a kettle.");
  bind_functions(vessel);
}

}  // namespace kettlecast::python
