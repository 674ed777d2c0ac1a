#include <pybind11/native_enum.h>

#include "arrays.hpp"
#include "bind.hpp"
#include "kettlecast/ensemble/many.hpp"
#include "record.hpp"
#include "signals.hpp"

namespace kettlecast::python {
namespace {

void bind_books(py::module_& module) {
  bind_record<Options>(module, "Options", "How to integrate and what to record.");
  bind_record<Start>(module, "Start", "Temperatures at the start of a run [K].");
  bind_record<Balance>(module, "Balance", "Heat and mass books of a run.");
}

void bind_phase_report(py::module_& module) {
  py::native_enum<EndReason>(module, "EndReason", "enum.Enum", "How a phase ended.")
      .value("held", EndReason::held)
      .value("elapsed", EndReason::elapsed)
      .value("signal", EndReason::signal)
      .value("mass_lost", EndReason::mass_lost)
      .value("timed_out", EndReason::timed_out)
      .finalize();
  bind_record<PhaseReport>(module, "PhaseReport", "What happened in one phase; SI units.");
  bind_record<ForecastTask>(module, "ForecastTask", "One forecast of an ensemble.");
  bind_record<EnsembleMember>(module, "EnsembleMember", "What became of one of an ensemble.");
}

py::tuple forecast_state(const Forecast& forecast) {
  return py::make_tuple(forecast.phases, forecast.trace.names, forecast.trace.values,
                        forecast.balance, forecast.duration, forecast.product_mass, forecast.steps);
}

Forecast forecast_from(const py::tuple& state) {
  Forecast forecast;
  forecast.phases = state[0].cast<std::vector<PhaseReport>>();
  forecast.trace.names = state[1].cast<std::vector<std::string>>();
  forecast.trace.values = state[2].cast<std::vector<double>>();
  forecast.balance = state[3].cast<Balance>();
  forecast.duration = state[4].cast<double>();
  forecast.product_mass = state[5].cast<double>();
  forecast.steps = state[6].cast<long>();
  return forecast;
}

}  // namespace

void bind_forecast(py::module_& module) {
  bind_books(module);
  bind_phase_report(module);
  py::class_<Forecast>(module, "ForecastResult", "Result of a forecast; owns its arrays.")
      .def_readonly("phases", &Forecast::phases)
      .def_readonly("balance", &Forecast::balance)
      .def_readonly("duration", &Forecast::duration, "Of the whole run [s].")
      .def_readonly("product_mass", &Forecast::product_mass, "At the end [kg].")
      .def_readonly("steps", &Forecast::steps)
      .def_property_readonly("trace_names",
                             [](const Forecast& forecast) { return forecast.trace.names; })
      .def_property_readonly(
          "trace",
          [](const Forecast& forecast) {
            return array_from(forecast.trace.values,
                              {static_cast<py::ssize_t>(forecast.trace.rows()),
                               static_cast<py::ssize_t>(forecast.trace.columns())});
          },
          "Signals over time, shape (rows, columns), SI units.")
      .def(py::pickle(&forecast_state, &forecast_from));
  module.def("simulate", &simulate, py::arg("kettle"), py::arg("coefficients"), py::kw_only(),
             py::arg("recipe"), py::arg("start"), py::arg("options") = Options(),
             py::call_guard<py::gil_scoped_release>(),
             "Runs a recipe in closed loop. Raises InvalidArgument or IntegrationFailure.");
  module.def(
      "simulate_many",
      [](const std::vector<ForecastTask>& tasks, const Options& options, unsigned threads) {
        return simulate_many(tasks, {options, threads, poll_signals});
      },
      py::arg("tasks"), py::kw_only(), py::arg("options") = Options(), py::arg("threads") = 0,
      py::call_guard<py::gil_scoped_release>(),
      "Forecasts many tasks on several threads. Ctrl-C stops it.");
}

}  // namespace kettlecast::python
