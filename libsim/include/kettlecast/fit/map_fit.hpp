#pragma once

#include <string>
#include <vector>

#include "kettlecast/base/record.hpp"
#include "kettlecast/ensemble/many.hpp"
#include "kettlecast/numerics/robust_loss.hpp"

/// Maximum-a-posteriori fit of the coefficients of one kettle to logged runs.
namespace kettlecast {

/// What a run showed at the output times of its plan.
struct Observed {
  std::size_t plan = 0;               ///< index into the plans
  std::vector<double> floor_reading;  ///< [K]; empty: not logged
  std::vector<double> probe_reading;  ///< [K]
  /// Each reading counts as so many independent ones [-].
  double floor_weight = 1.0, probe_weight = 1.0;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("plan", &Observed::plan);
    visit("floor_reading", &Observed::floor_reading);
    visit("probe_reading", &Observed::probe_reading);
    visit("floor_weight", &Observed::floor_weight);
    visit("probe_weight", &Observed::probe_weight);
  }
  bool operator==(const Observed& other) const { return equal_records(*this, other); }
};

/// What to fit, from where, and how residuals count.
struct FitSettings {
  std::vector<std::string> names;    ///< of the coefficients with one value for all runs
  std::vector<std::string> per_run;  ///< of those with a value of its own in every run
  Coefficients start;                ///< all coefficients; those not fitted stay as they are
  double floor_error = 1.0;          ///< residual of the floor sensor that counts as one [K]
  double probe_error = 0.4;          ///< residual of the probe that counts as one [K]
  Loss loss = Loss::soft_l1;
  int max_evaluations = 60;  ///< of the residuals outside of Jacobians [-]
  double tolerance = 1e-5;   ///< smallest share of cost or of the coefficients worth a step [-]
  double damping = 1.0;  ///< of the first step, per squared prior spread; less near the best [-]
  int starts = 1;  ///< searches: the first from `start`, the others from within the priors [-]
  int seed = 1;    ///< of the starts within the priors

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("names", &FitSettings::names);
    visit("per_run", &FitSettings::per_run);
    visit("start", &FitSettings::start);
    visit("floor_error", &FitSettings::floor_error);
    visit("probe_error", &FitSettings::probe_error);
    visit("loss", &FitSettings::loss);
    visit("max_evaluations", &FitSettings::max_evaluations);
    visit("tolerance", &FitSettings::tolerance);
    visit("damping", &FitSettings::damping);
    visit("starts", &FitSettings::starts);
    visit("seed", &FitSettings::seed);
  }
  bool operator==(const FitSettings& other) const { return equal_records(*this, other); }
};

/// Where a fit ended. Scaled coefficients are those of fit/scaled.hpp: first those of all runs,
/// then those of the first run, of the second...
struct MapFit {
  std::vector<Coefficients> of_runs;  ///< best found, for each observed run
  std::vector<double> scaled;         ///< the fitted ones, scaled, shape (n) [-]
  std::vector<double> residuals;  ///< weighted, of the data alone: floor then probe of each run [-]
  std::vector<double> jacobian;   ///< of these by the scaled coefficients, row-major, shape (m, n)
  std::vector<Replay> replays;    ///< of each observed run
  double cost = 0.0;              ///< half the sum of the losses of data and priors [-]
  int evaluations = 0;            ///< of the residuals outside of Jacobians [-]
  bool converged = false;
  std::string message;                ///< why the search ended
  int starts_at_best = 1;             ///< searches that ended in the best minimum [-]
  std::vector<double> minimum_costs;  ///< cost of each distinct minimum found, rising [-]
};

/// Fits coefficients to what runs showed: bounded least squares over replays.
///
///     residuals = { sqrt(weight) (model - log) / error  for all readings,  scaled coefficients }
///
/// The second part are the priors. Slopes come from dual numbers; the replays of a Jacobian run on
/// several threads, and a run knows nothing of the coefficients of another one. Coefficients at
/// which a run cannot be integrated are stepped back from. Further starts are a Latin hypercube
/// over two prior spreads either way, within the bounds.
///
/// @param kettle    as on its type plate
/// @param plans     what drove the runs
/// @param observed  what they showed
/// @param settings  names, start, errors, loss, limits
/// @param options   of the replays; threads; poll for an interrupt
/// @returns best coefficients; not converging is told by `converged` and `message`
/// @throws InvalidArgument if there is nothing to fit, a name stands twice or readings do not match
///         their plan, UnknownName, and what replays throw at the start
MapFit map_fit(const Kettle& kettle, const std::vector<RunPlan>& plans,
               const std::vector<Observed>& observed, const FitSettings& settings,
               const EnsembleOptions& options);

/// Weighted residuals of the data at several points, as in `MapFit::residuals`.
///
/// @param points  scaled coefficients as in `MapFit::scaled`, shape (n) each; moved into the bounds
/// @returns shape (m) each; empty where a run cannot be integrated
/// @throws InvalidArgument as map_fit, or for a point of another shape
std::vector<std::vector<double>> map_residuals(const Kettle& kettle,
                                               const std::vector<RunPlan>& plans,
                                               const std::vector<Observed>& observed,
                                               const FitSettings& settings,
                                               const std::vector<std::vector<double>>& points,
                                               const EnsembleOptions& options);

}  // namespace kettlecast
