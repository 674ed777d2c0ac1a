#include <utility>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/transfer/two_node.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
using Nodes = TwoNodeKettle<double>;

constexpr double smallest = 1e-12, largest = 1e15, hottest = 1e4;

const Nodes& checked(const Nodes& kettle) {
  const char* where = "two nodes";
  require_between(where, "floor_capacity", kettle.floor_capacity, smallest, largest, "J/K");
  require_between(where, "liquid_capacity", kettle.liquid_capacity, smallest, largest, "J/K");
  require_between(where, "conductance", kettle.conductance, smallest, largest, "W/K");
  require_between(where, "floor_loss", kettle.floor_loss, 0.0, largest, "W/K");
  require_between(where, "liquid_loss", kettle.liquid_loss, 0.0, largest, "W/K");
  require_between(where, "surroundings", kettle.surroundings, 0.0, hottest, "K");
  return kettle;
}

TwoNodeState<double> state(double floor, double liquid) {
  require_between("two nodes", "floor", floor, 0.0, hottest, "K");
  require_between("two nodes", "liquid", liquid, 0.0, hottest, "K");
  return {floor, liquid};
}

/// Defines a function that takes its own arguments first and the kettle by keyword.
template <class Function, class... Arguments>
void define(py::module_& module, const char* name, Function function, const char* text,
            Arguments... own) {
  module.def(name, function, own..., py::kw_only(), py::arg("floor_capacity"),
             py::arg("liquid_capacity"), py::arg("conductance"), py::arg("floor_loss"),
             py::arg("liquid_loss"), py::arg("surroundings"), text);
}

}  // namespace

void bind_two_node(py::module_& module) {
  define(
      module, "two_node_eigenvalues",
      [](double c1, double c2, double g, double l1, double l2, double room) {
        const auto modes = two_node_modes(checked({c1, c2, g, l1, l2, room}), 0.0,
                                          TwoNodeState<double>{room, room});
        return std::pair(modes.fast, modes.slow);
      },
      "Fast and slow eigenvalue of floor and liquid [1/s]; exact.");
  define(
      module, "two_node_after",
      [](double time, double power, double floor, double liquid, double c1, double c2, double g,
         double l1, double l2, double room) {
        require_between("two nodes", "time", time, 0.0, largest, "s");
        const auto at =
            two_node_after(checked({c1, c2, g, l1, l2, room}), power, state(floor, liquid), time);
        return std::pair(at.floor, at.liquid);
      },
      "Temperatures of floor and liquid [K] after a time [s] at constant power [W]; exact.",
      py::arg("time"), py::arg("power"), py::arg("floor"), py::arg("liquid"));
  define(
      module, "two_node_time_to",
      [](double target, double power, double floor, double liquid, double c1, double c2, double g,
         double l1, double l2, double room) {
        const double time = two_node_time_to(checked({c1, c2, g, l1, l2, room}), power,
                                             state(floor, liquid), target);
        if (time < largest) return time;
        throw OutsideValidity(
            "two nodes: the liquid never reaches this temperature; see "
            "two_node_peak for the highest it does reach");
      },
      "Time [s] at which the liquid reaches a temperature [K] at constant power [W], such as the "
      "one to switch off; exact.",
      py::arg("target"), py::arg("power"), py::arg("floor"), py::arg("liquid"));
  define(
      module, "two_node_peak",
      [](double power, double floor, double liquid, double c1, double c2, double g, double l1,
         double l2, double room) {
        const auto peak =
            two_node_peak(checked({c1, c2, g, l1, l2, room}), power, state(floor, liquid));
        return std::pair(peak.time, peak.temperature);
      },
      "When [s] the liquid is hottest and how hot [K]; infinite time: it rises for ever; exact.",
      py::arg("power"), py::arg("floor"), py::arg("liquid"));
  module.def(
      "two_node_overshoot_bound",
      [](double floor_capacity, double liquid_capacity, double floor, double liquid) {
        return two_node_overshoot_bound(
            checked({floor_capacity, liquid_capacity, 1.0, 0.0, 0.0, 0.0}), state(floor, liquid));
      },
      py::arg("floor_capacity"), py::arg("liquid_capacity"), py::arg("floor"), py::arg("liquid"),
      "Overshoot of the liquid if nothing is lost after switch-off [K]; heat balance.");
}

}  // namespace kettlecast::python
