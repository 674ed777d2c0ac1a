#include <utility>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/transfer/two_node.hpp"

namespace kettlecast::python {
namespace {

using Nodes = TwoNodeKettle<double>;
using State = TwoNodeState<double>;

/// Defines a function that takes its own arguments first and the kettle by keyword.
template <class Function, class... Arguments>
void define_nodes(py::module_& module, const char* name, Function function, const char* text,
                  const Arguments&... own) {
  define(module, name, function, text, own..., py::kw_only(), named("floor_capacity"),
         named("liquid_capacity"), named("conductance"), named("floor_loss"), named("liquid_loss"),
         named("surroundings"));
}

}  // namespace

void bind_two_node(py::module_& module) {
  define_nodes(
      module, "two_node_eigenvalues",
      [](double c1, double c2, double g, double l1, double l2, double room) {
        const auto modes = two_node_modes(Nodes{c1, c2, g, l1, l2, room}, 0.0, State{room, room});
        return std::pair(modes.fast, modes.slow);
      },
      "Fast and slow eigenvalue of floor and liquid [1/s]; exact.");
  define_nodes(
      module, "two_node_after",
      [](double time, double power, double floor, double liquid, double c1, double c2, double g,
         double l1, double l2, double room) {
        const auto at =
            two_node_after(Nodes{c1, c2, g, l1, l2, room}, power, State{floor, liquid}, time);
        return std::pair(at.floor, at.liquid);
      },
      "Temperatures of floor and liquid [K] after a time [s] at constant power [W]; exact.",
      named("time"), named("power"), named("floor"), named("liquid"));
  define_nodes(
      module, "two_node_time_to",
      [](double target, double power, double floor, double liquid, double c1, double c2, double g,
         double l1, double l2, double room) {
        const double time =
            two_node_time_to(Nodes{c1, c2, g, l1, l2, room}, power, State{floor, liquid}, target);
        if (time < 1e15) return time;
        throw OutsideValidity(
            "two nodes: the liquid never reaches this temperature; see "
            "two_node_peak for the highest it does reach");
      },
      "Time [s] at which the liquid reaches a temperature [K] at constant power [W], such as the "
      "one to switch off; exact.",
      named("target"), named("power"), named("floor"), named("liquid"));
  define_nodes(
      module, "two_node_peak",
      [](double power, double floor, double liquid, double c1, double c2, double g, double l1,
         double l2, double room) {
        const auto peak =
            two_node_peak(Nodes{c1, c2, g, l1, l2, room}, power, State{floor, liquid});
        return std::pair(peak.time, peak.temperature);
      },
      "When [s] the liquid is hottest and how hot [K]; infinite time: it rises for ever; exact.",
      named("power"), named("floor"), named("liquid"));
  define(
      module, "two_node_overshoot_bound",
      [](double floor_capacity, double liquid_capacity, double floor, double liquid) {
        return two_node_overshoot_bound(Nodes{floor_capacity, liquid_capacity, 1.0, 0.0, 0.0, 0.0},
                                        State{floor, liquid});
      },
      "Overshoot of the liquid if nothing is lost after switch-off [K]; heat balance.",
      named("floor_capacity"), named("liquid_capacity"), named("floor"), named("liquid"));
}

}  // namespace kettlecast::python
