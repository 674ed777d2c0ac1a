#include "kettlecast/fit/map_profile.hpp"

#include <algorithm>
#include <utility>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/profile.hpp"
#include "run_residuals.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

ProfileSideOfFit side_of(const ProfileSide& side) {
  const bool unbounded = side.end == ProfileEnd::at_bound || side.end == ProfileEnd::no_rise;
  return {side.end == ProfileEnd::found, unbounded, side.value, side.reason};
}

void add_points(const ProfileSide& side, Index parameter,
                std::vector<std::pair<double, double>>& points) {
  for (const auto& point : side.points) points.emplace_back(point.x[parameter], point.rise);
}

}  // namespace

ProfileOfFit map_profile(const Kettle& kettle, const std::vector<RunPlan>& plans,
                         const std::vector<Observed>& observed, const FitSettings& settings,
                         const ProfileQuestion& question, const EnsembleOptions& options) {
  RunResiduals residuals(kettle, plans, observed, settings, options);
  const auto count = static_cast<Index>(question.scaled.size());
  if (count != residuals.coefficient_count()) {
    throw InvalidArgument("map_profile: scaled must hold " +
                          std::to_string(residuals.coefficient_count()) + " values, got " +
                          std::to_string(count));
  }
  const VectorXd at = Eigen::Map<const VectorXd>(question.scaled.data(), count);
  const auto problem = residuals.problem();
  ProfileOptions profile;
  profile.rise = question.rise;
  profile.search = residuals.search();
  profile.tolerance = 0.01;  // an end within a hundredth of the interval is as good as any
  profile.farthest = 30.0;
  const auto parameter = static_cast<Index>(question.parameter);
  const auto found =
      profile_interval(problem, minimise(problem, at, profile.search), parameter, profile);
  std::vector<std::pair<double, double>> points;
  add_points(found.lower, parameter, points);
  add_points(found.upper, parameter, points);
  std::sort(points.begin(), points.end());
  ProfileOfFit result{side_of(found.lower), side_of(found.upper), {}, {}};
  for (const auto& [value, rise] : points) {
    result.values.push_back(value);
    result.rises.push_back(rise);
  }
  return result;
}

}  // namespace kettlecast
