#include <pybind11/native_enum.h>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/kettle/vessel.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

double volume_over(const VesselShape& shape, double height, double radius) {
  require_between("vessel.volume_to_cover", "radius", radius, 0.0, 0.5 * shape.diameter, "m");
  return volume_to_cover(shape, height, radius);
}

void bind_functions(py::module_& module) {
  const py::arg shape("shape");
  define(
      module, "wetting", [](const VesselShape& of, double volume) { return wetting(of, volume); },
      "Level [m] and wetted areas [m2] of a volume [m3]; exact for a level surface over a "
      "flat or spherical floor (Harris & Stocker; Gauss-Bonnet theorem).",
      shape, named("volume"));
  define(module, "capacity", &capacity,
         "Volume until the low side of the lip spills [m3]; same source as wetting.", shape);
  define(module, "floor_total_area", &floor_total_area, "Area of the whole floor [m2]; Archimedes.",
         shape);
  define(module, "volume_at_level", &volume_at_level,
         "Volume [m3] whose surface meets the axis at a level above the floor's centre [m]; "
         "same source as wetting.",
         shape, named("level"));
  define(module, "volume_to_cover", &volume_over,
         "Volume [m3] that covers a disc on the axis, for example an agitator, of a radius "
         "[m] at a height above the floor's centre [m]; same source as wetting.",
         shape, named("height", 0.0, 1e6, "m"), named("radius", 0.0, 1e6, "m"));
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
