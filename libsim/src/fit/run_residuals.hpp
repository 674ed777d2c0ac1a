#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "kettlecast/fit/map_fit.hpp"
#include "kettlecast/numerics/least_squares.hpp"

/// Residuals of logged runs as a function of scaled coefficients; not public.
namespace kettlecast {

/// Keeps what it found at the last point, where the search and the Jacobian often ask again.
class RunResiduals {
 public:
  RunResiduals(const Kettle& kettle, const std::vector<RunPlan>& plans,
               const std::vector<Observed>& observed, const FitSettings& settings,
               const EnsembleOptions& options);

  Eigen::Index data_count() const { return count_; }
  /// Number of coefficients, those of all runs and those of each.
  Eigen::Index coefficient_count() const;

  /// Scaled values at the start, the same for every run.
  Eigen::VectorXd start() const;
  /// Lowest or highest scaled values allowed.
  Eigen::VectorXd lower() const;
  Eigen::VectorXd upper() const;

  /// All coefficients of a run at a point.
  Coefficients coefficients(const Eigen::VectorXd& x, std::size_t run) const;

  std::vector<Replay> replays(const Eigen::VectorXd& x) const;

  /// Data, then priors.
  Eigen::VectorXd at(const Eigen::VectorXd& x);
  /// As `at`, but without finite values where a run cannot be integrated.
  Eigen::VectorXd tried(const Eigen::VectorXd& x);
  Eigen::MatrixXd jacobian(const Eigen::VectorXd& x) const;

  /// Residuals and slopes for a search.
  LeastSquaresProblem problem();
  /// How to search: within the bounds, with the tolerances and the loss of the settings.
  LeastSquaresOptions search() const;

 private:
  /// One task of a Jacobian: a run, some coefficients of it and their columns.
  struct Block {
    std::size_t run;
    std::vector<std::string> names;
    std::vector<Eigen::Index> columns;
  };
  std::vector<Block> blocks() const;
  void place(const Block& block, const Coefficients& here, const ReplaySlopes& found,
             Eigen::MatrixXd& jacobian) const;
  double floor_factor(const Observed& run) const;
  double probe_factor(const Observed& run) const;
  Eigen::VectorXd for_all(const std::vector<double>& shared,
                          const std::vector<double>& per_run) const;
  Eigen::Index first_of(std::size_t run) const;

  const Kettle& kettle_;
  const std::vector<RunPlan>& plans_;
  const std::vector<Observed>& observed_;
  const FitSettings& settings_;
  const EnsembleOptions& options_;
  Eigen::Index count_ = 0;
  std::vector<Eigen::Index> first_row_;  ///< of each run
  Eigen::VectorXd last_x_;
  Eigen::VectorXd last_;
};

}  // namespace kettlecast
