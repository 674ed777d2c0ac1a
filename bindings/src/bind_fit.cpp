#include <pybind11/native_enum.h>

#include "arrays.hpp"
#include "bind.hpp"
#include "kettlecast/fit/map_fit.hpp"
#include "kettlecast/fit/map_profile.hpp"
#include "kettlecast/fit/scaled.hpp"
#include "kettlecast/numerics/information.hpp"
#include "record.hpp"
#include "signals.hpp"

namespace kettlecast::python {
namespace {

py::tuple map_fit_state(const MapFit& fit) {
  return py::make_tuple(fit.of_runs, fit.scaled, fit.residuals, fit.jacobian, fit.replays, fit.cost,
                        fit.evaluations, fit.converged, fit.message, fit.starts_at_best,
                        fit.minimum_costs);
}

MapFit map_fit_from(const py::tuple& state) {
  MapFit fit;
  fit.of_runs = state[0].cast<std::vector<Coefficients>>();
  fit.scaled = state[1].cast<std::vector<double>>();
  fit.residuals = state[2].cast<std::vector<double>>();
  fit.jacobian = state[3].cast<std::vector<double>>();
  fit.replays = state[4].cast<std::vector<Replay>>();
  fit.cost = state[5].cast<double>();
  fit.evaluations = state[6].cast<int>();
  fit.converged = state[7].cast<bool>();
  fit.message = state[8].cast<std::string>();
  fit.starts_at_best = state[9].cast<int>();
  fit.minimum_costs = state[10].cast<std::vector<double>>();
  return fit;
}

void bind_result(py::module_& module) {
  py::class_<MapFit>(module, "MapFit", "Where a fit ended; owns its arrays.")
      .def_readonly("of_runs", &MapFit::of_runs)
      .def_property_readonly("scaled", [](const MapFit& fit) { return array_from(fit.scaled); })
      .def_property_readonly("residuals",
                             [](const MapFit& fit) { return array_from(fit.residuals); })
      .def_property_readonly("jacobian",
                             [](const MapFit& fit) {
                               return array_from(fit.jacobian,
                                                 {static_cast<py::ssize_t>(fit.residuals.size()),
                                                  static_cast<py::ssize_t>(fit.scaled.size())});
                             })
      .def_readonly("replays", &MapFit::replays)
      .def_readonly("cost", &MapFit::cost)
      .def_readonly("evaluations", &MapFit::evaluations)
      .def_readonly("converged", &MapFit::converged)
      .def_readonly("message", &MapFit::message)
      .def_readonly("starts_at_best", &MapFit::starts_at_best)
      .def(py::pickle(&map_fit_state, &map_fit_from))
      .def_property_readonly("minimum_costs",
                             [](const MapFit& fit) { return array_from(fit.minimum_costs); });
}

void bind_residuals(py::module_& module) {
  module.def(
      "map_residuals",
      [](const Kettle& kettle, const std::vector<RunPlan>& plans,
         const std::vector<Observed>& observed, const FitSettings& settings,
         const std::vector<std::vector<double>>& points, const Options& options) {
        return map_residuals(kettle, plans, observed, settings, points, {options, 0, poll_signals});
      },
      py::arg("kettle"), py::arg("plans"), py::kw_only(), py::arg("observed"), py::arg("settings"),
      py::arg("points"), py::arg("options") = Options(), py::call_guard<py::gil_scoped_release>(),
      "Weighted residuals of the data at several scaled points; empty where a run cannot be made.");
}

void bind_profile(py::module_& module) {
  bind_record<ProfileSideOfFit>(module, "ProfileSide", "One end of a profile interval, scaled.");
  py::class_<ProfileOfFit>(module, "ProfileOfFit", "A profile interval and its points, scaled.")
      .def_readonly("lower", &ProfileOfFit::lower)
      .def_readonly("upper", &ProfileOfFit::upper)
      .def_property_readonly("values",
                             [](const ProfileOfFit& one) { return array_from(one.values); })
      .def_property_readonly("rises",
                             [](const ProfileOfFit& one) { return array_from(one.rises); });
  module.def(
      "map_profile",
      [](const Kettle& kettle, const std::vector<RunPlan>& plans,
         const std::vector<Observed>& observed, const FitSettings& settings,
         const std::vector<double>& scaled, std::size_t parameter, double rise,
         const Options& options) {
        return map_profile(kettle, plans, observed, settings, {scaled, parameter, rise},
                           {options, 0, poll_signals});
      },
      py::arg("kettle"), py::arg("plans"), py::kw_only(), py::arg("observed"), py::arg("settings"),
      py::arg("scaled"), py::arg("parameter"), py::arg("rise"), py::arg("options") = Options(),
      py::call_guard<py::gil_scoped_release>(),
      "Profile interval of one fitted coefficient; a side that is not found is told.");
}

void bind_scaled(py::module_& module) {
  module.def("to_scaled", &to_scaled, py::arg("coefficients"), py::arg("names"),
             "Distances from the defaults in prior spreads, of the logarithm for scales.");
  module.def("from_scaled", &from_scaled, py::arg("base"), py::arg("names"), py::kw_only(),
             py::arg("point"), "A copy with scaled values set, moved into the bounds.");
  module.def("scaled_slopes", &scaled_slopes, py::arg("coefficients"), py::arg("names"),
             "Change of each value per change of its scaled value.");
}

void bind_information(py::module_& module) {
  bind_record<Information>(module, "Information",
                           "Criteria by which models of the same data are compared.");
  module.def(
      "information_of",
      [](double cost, double count, int parameters, bool estimated) {
        return information_of(cost, count, parameters,
                              estimated ? ErrorsOfData::estimated : ErrorsOfData::known);
      },
      py::arg("cost"), py::kw_only(), py::arg("count"), py::arg("parameters"),
      py::arg("estimated") = false, "AIC, AICc and BIC of a least-squares fit.");
}

}  // namespace

void bind_fit(py::module_& module) {
  py::native_enum<Loss>(module, "Loss", "enum.Enum", "How a squared residual counts.")
      .value("linear", Loss::linear)
      .value("soft_l1", Loss::soft_l1)
      .value("huber", Loss::huber)
      .finalize();
  bind_record<Observed>(module, "Observed", "What a run showed at the output times of its plan.");
  bind_record<FitSettings>(module, "FitSettings", "What to fit and how residuals count.");
  bind_result(module);
  bind_scaled(module);
  bind_profile(module);
  bind_residuals(module);
  bind_information(module);
  module.def(
      "map_fit",
      [](const Kettle& kettle, const std::vector<RunPlan>& plans,
         const std::vector<Observed>& observed, const FitSettings& settings,
         const Options& options) {
        return map_fit(kettle, plans, observed, settings, {options, 0, poll_signals});
      },
      py::arg("kettle"), py::arg("plans"), py::kw_only(), py::arg("observed"), py::arg("settings"),
      py::arg("options") = Options(), py::call_guard<py::gil_scoped_release>(),
      "Fits coefficients to observed runs on several threads; Ctrl-C stops it.");
}

}  // namespace kettlecast::python
