#include <pybind11/native_enum.h>

#include "arrays.hpp"
#include "bind.hpp"
#include "kettlecast/simulate/sensitivity.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

void bind_lever(py::module_& module) {
  py::native_enum<LeverKind>(module, "LeverKind", "enum.Enum", "Kinds of inputs of a run.")
      .value("coefficient", LeverKind::coefficient)
      .value("addition_delay", LeverKind::addition_delay)
      .value("addition_temperature", LeverKind::addition_temperature)
      .value("addition_mass", LeverKind::addition_mass)
      .value("start", LeverKind::start)
      .value("set_point", LeverKind::set_point)
      .finalize();
  bind_record<Lever>(module, "Lever", "One input that results are differentiated by.");
}

/// A matrix with one row per output time.
py::array_t<double> matrix(const std::vector<double>& values, std::size_t rows) {
  const std::size_t columns = rows == 0 ? 0 : values.size() / rows;
  return array_from(values, {static_cast<py::ssize_t>(rows), static_cast<py::ssize_t>(columns)});
}

void bind_replay_slopes(py::module_& module) {
  const auto bound = [](std::vector<double> ReplaySlopes::*member) {
    return [member](const ReplaySlopes& slopes) {
      return matrix(slopes.*member, slopes.replay.probe_reading.size());
    };
  };
  py::class_<ReplaySlopes>(module, "ReplaySlopes",
                           "A replay with slopes of its readings, shape (output times, levers).")
      .def_readonly("replay", &ReplaySlopes::replay)
      .def_property_readonly("floor_reading", bound(&ReplaySlopes::floor_reading))
      .def_property_readonly("probe_reading", bound(&ReplaySlopes::probe_reading))
      .def_property_readonly("evaporated", bound(&ReplaySlopes::evaporated))
      .def(py::pickle(
          [](const ReplaySlopes& slopes) {
            return py::make_tuple(slopes.replay, slopes.floor_reading, slopes.probe_reading,
                                  slopes.evaporated);
          },
          [](const py::tuple& state) {
            return ReplaySlopes{state[0].cast<Replay>(), state[1].cast<std::vector<double>>(),
                                state[2].cast<std::vector<double>>(),
                                state[3].cast<std::vector<double>>()};
          }));
}

void bind_forecast_slopes(py::module_& module) {
  bind_record<PhaseSlopes>(module, "PhaseSlopes", "Slopes of what a phase reports, by lever.");
  py::class_<ForecastSlopes>(module, "ForecastSlopes", "A forecast without its trace, with slopes.")
      .def_readonly("phases", &ForecastSlopes::phases)
      .def_readonly("slopes", &ForecastSlopes::slopes)
      .def_property_readonly(
          "duration", [](const ForecastSlopes& slopes) { return array_from(slopes.duration); })
      .def_property_readonly(
          "product_mass",
          [](const ForecastSlopes& slopes) { return array_from(slopes.product_mass); })
      .def(py::pickle(
          [](const ForecastSlopes& slopes) {
            return py::make_tuple(slopes.phases, slopes.slopes, slopes.duration,
                                  slopes.product_mass);
          },
          [](const py::tuple& state) {
            return ForecastSlopes{state[0].cast<std::vector<PhaseReport>>(),
                                  state[1].cast<std::vector<PhaseSlopes>>(),
                                  state[2].cast<std::vector<double>>(),
                                  state[3].cast<std::vector<double>>()};
          }));
}

}  // namespace

void bind_sensitivity(py::module_& module) {
  bind_lever(module);
  bind_replay_slopes(module);
  bind_forecast_slopes(module);
  module.def("replay_slopes", &replay_slopes, py::arg("kettle"), py::arg("coefficients"),
             py::kw_only(), py::arg("plan"), py::arg("levers"), py::arg("options") = Options(),
             py::call_guard<py::gil_scoped_release>(),
             "As replay, with the slopes of the readings by each lever, by dual numbers.");
  module.def("simulate_slopes", &simulate_slopes, py::arg("kettle"), py::arg("coefficients"),
             py::kw_only(), py::arg("recipe"), py::arg("start"), py::arg("levers"),
             py::arg("options") = Options(), py::call_guard<py::gil_scoped_release>(),
             "As simulate, with the slopes of what phases report by each lever, by dual numbers.");
}

}  // namespace kettlecast::python
