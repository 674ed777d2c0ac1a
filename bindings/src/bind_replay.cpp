#include "arrays.hpp"
#include "bind.hpp"
#include "kettlecast/ensemble/many.hpp"
#include "record.hpp"
#include "signals.hpp"

namespace kettlecast::python {
namespace {

std::vector<Replay> replay_tasks(const Kettle& kettle, const std::vector<RunPlan>& plans,
                                 const std::vector<std::pair<std::size_t, Coefficients>>& tasks,
                                 const Options& options, unsigned threads) {
  std::vector<ReplayTask> list;
  for (const auto& [plan, coefficients] : tasks) list.push_back({plan, coefficients});
  return replay_many(kettle, plans, list, {options, threads, poll_signals});
}

}  // namespace

void bind_replay(py::module_& module) {
  bind_record<DriveSignals>(module, "DriveSignals", "Logged drive signals over time.");
  bind_record<TimedAddition>(module, "TimedAddition", "An addition and when its pour began.");
  bind_record<TimedSetting>(module, "TimedSetting", "Cover and jacket limit from a time on.");
  bind_record<RunPlan>(module, "RunPlan", "What drives the model through a logged run.");
  py::class_<Replay>(module, "Replay", "What the sensors of the model show.")
      .def_property_readonly("floor_reading",
                             [](const Replay& replay) { return array_from(replay.floor_reading); })
      .def_property_readonly("probe_reading",
                             [](const Replay& replay) { return array_from(replay.probe_reading); })
      .def_property_readonly("evaporated",
                             [](const Replay& replay) { return array_from(replay.evaporated); })
      .def_readonly("balance", &Replay::balance)
      .def(py::pickle(
          [](const Replay& replay) {
            return py::make_tuple(replay.floor_reading, replay.probe_reading, replay.evaporated,
                                  replay.balance);
          },
          [](const py::tuple& state) {
            return Replay{state[0].cast<std::vector<double>>(),
                          state[1].cast<std::vector<double>>(),
                          state[2].cast<std::vector<double>>(), state[3].cast<Balance>()};
          }));
  module.def("replay", &replay, py::arg("kettle"), py::arg("coefficients"), py::kw_only(),
             py::arg("plan"), py::arg("options") = Options(),
             py::call_guard<py::gil_scoped_release>(),
             "Runs the model with logged heat, jacket, agitator, lid and pours.");
  module.def("replay_many", &replay_tasks, py::arg("kettle"), py::arg("plans"), py::kw_only(),
             py::arg("tasks"), py::arg("options") = Options(), py::arg("threads") = 0,
             py::call_guard<py::gil_scoped_release>(),
             "Replays (plan index, Coefficients) pairs on several threads; Ctrl-C stops it.");
}

}  // namespace kettlecast::python
