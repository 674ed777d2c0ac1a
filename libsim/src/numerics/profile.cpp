#include "kettlecast/numerics/profile.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/covariance.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double largest = std::numeric_limits<double>::max();
/// How often a step to a point that cannot be fitted is made shorter.
constexpr int most_shortened = 6;

void check(const LeastSquaresSummary& best, Index parameter, const ProfileOptions& options) {
  const std::string where = "profile_interval";
  if (parameter < 0 || parameter >= best.x.size()) {
    throw InvalidArgument(where + ": parameter must be between 0 and " +
                          std::to_string(best.x.size() - 1) + ", got " + std::to_string(parameter));
  }
  for (const auto& bounds : {options.search.lower, options.search.upper}) {
    if (bounds.size() != 0 && bounds.size() != best.x.size()) {
      throw InvalidArgument(where + ": bounds must have " + std::to_string(best.x.size()) +
                            " values like best.x, or none");
    }
  }
  require_between(where, "rise", options.rise, std::numeric_limits<double>::min(), largest, "");
  require_between(where, "first_step", options.first_step, 0.0, largest, "");
  require_between(where, "farthest", options.farthest, 1.0, largest, "");
  require_between(where, "tolerance", options.tolerance, 1e-12, 0.1, "");
  require_between(where, "max_searches", options.max_searches, 1, 1e6, "");
}

double first_step(const LeastSquaresProblem& problem, const VectorXd& x, Index parameter,
                  const ProfileOptions& options) {
  if (options.first_step > 0.0) return options.first_step;
  const double error = covariance_of(problem.jacobian(x)).standard_errors[parameter];
  const double half_width = error * std::sqrt(2.0 * options.rise);
  if (std::isfinite(half_width)) return half_width;
  return x[parameter] != 0.0 ? 0.1 * std::fabs(x[parameter]) : 0.1;
}

/// One side of one interval; `run` is the algorithm, the rest are its parts.
class Side {
 public:
  /// @param direction  1 or -1
  Side(const LeastSquaresProblem& problem, const LeastSquaresSummary& best, Index parameter,
       const ProfileOptions& options, double direction)
      : problem_(problem),
        best_(best),
        parameter_(parameter),
        options_(options),
        direction_(direction),
        bound_(direction * infinite) {
    const VectorXd& bounds = direction > 0.0 ? options.search.upper : options.search.lower;
    if (bounds.size() > 0) bound_ = bounds[parameter];
  }

  ProfileSide run() {
    inner_ = {best_.x, 0.0};
    try {
      expand(first_step(problem_, best_.x, parameter_, options_));
    } catch (const Error& error) {
      end(ProfileEnd::failed, value(inner_), error.message());
    }
    return side_;
  }

 private:
  double value(const ProfilePoint& point) const { return point.x[parameter_]; }

  /// Root of the rise above that at the end; a straight line through 0 there for a linear model.
  double beyond(const ProfilePoint& point) const {
    return std::sqrt(std::max(0.0, point.rise)) - std::sqrt(options_.rise);
  }

  bool close(const ProfilePoint& point) const {
    return std::fabs(beyond(point)) <= options_.tolerance * std::sqrt(options_.rise);
  }

  void end(ProfileEnd how, double where, const std::string& reason) {
    side_.end = how;
    side_.value = where;
    side_.reason = reason;
  }

  /// Steps outward until the cost has risen or the side ends without.
  void expand(double step) {
    const double reach = value(inner_) + direction_ * options_.farthest * step;
    const double limit = direction_ > 0.0 ? std::min(bound_, reach) : std::max(bound_, reach);
    int shortened = 0;
    while (direction_ * (limit - value(inner_)) > 0.0) {
      double target = value(inner_) + direction_ * step;
      // A rest that rounding would leave over is part of the step.
      if (direction_ * (limit - target) < 1e-9 * step) target = limit;
      const auto found = fitted(target);
      if (!found) {
        if (final_ || ++shortened > most_shortened) return;
        step = 0.5 * std::fabs(target - value(inner_));
        continue;
      }
      if (close(*found)) return end(ProfileEnd::found, value(*found), "");
      if (beyond(*found) > 0.0) return close_in(*found);
      step = next_step(*found);
      inner_ = *found;
    }
    if (limit == reach) {
      end(ProfileEnd::no_rise, direction_ * infinite,
          "the cost has not risen enough as far as " + std::to_string(reach));
    } else {
      end(ProfileEnd::at_bound, bound_, "the bound comes before the rise");
    }
  }

  /// A little beyond where the line through the last two points ends, at most twice as far.
  double next_step(const ProfilePoint& found) const {
    const double done = std::fabs(value(found) - value(inner_));
    const double gained = beyond(found) - beyond(inner_);
    if (gained <= 0.0) return 2.0 * done;
    return std::min(2.0, -1.1 * beyond(found) / gained) * done;
  }

  /// Secants between a point within and one beyond (Illinois).
  void close_in(ProfilePoint outer) {
    double at_inner = beyond(inner_), at_outer = beyond(outer);
    int same_side = 0;
    while (true) {
      const double share = at_inner / (at_inner - at_outer);
      const auto found = fitted(value(inner_) + share * (value(outer) - value(inner_)));
      if (!found) return;
      if (close(*found)) return end(ProfileEnd::found, value(*found), "");
      const bool is_inner = beyond(*found) < 0.0;
      same_side = is_inner ? std::max(same_side, 0) + 1 : std::min(same_side, 0) - 1;
      (is_inner ? inner_ : outer) = *found;
      (is_inner ? at_inner : at_outer) = beyond(*found);
      if (same_side >= 2) at_outer *= 0.5;
      if (same_side <= -2) at_inner *= 0.5;
    }
  }

  /// The others fitted with the value held; none if that failed, with the side ended.
  std::optional<ProfilePoint> fitted(double held) {
    if (static_cast<int>(side_.points.size()) + unusable_ >= options_.max_searches) {
      return stopped("the allowed number of searches is used up");
    }
    LeastSquaresOptions search = options_.search;
    if (search.lower.size() == 0) search.lower = VectorXd::Constant(best_.x.size(), -infinite);
    if (search.upper.size() == 0) search.upper = VectorXd::Constant(best_.x.size(), infinite);
    search.lower[parameter_] = search.upper[parameter_] = held;
    const auto found = minimise(problem_, inner_.x, search);
    if (!found.converged()) {
      ++unusable_;
      end(ProfileEnd::failed, value(inner_),
          "with the value held at " + std::to_string(held) + " the search stopped because " +
              in_words(found.reason));
      return {};
    }
    side_.points.push_back({found.x, found.cost - best_.cost});
    if (side_.points.back().rise < -options_.tolerance * options_.rise) {
      return stopped("a lower cost than the best was found with the value held at " +
                     std::to_string(held));
    }
    return side_.points.back();
  }

  std::optional<ProfilePoint> stopped(const std::string& reason) {
    final_ = true;
    end(ProfileEnd::failed, value(inner_), reason);
    return {};
  }

  const LeastSquaresProblem& problem_;
  const LeastSquaresSummary& best_;
  Index parameter_;
  const ProfileOptions& options_;
  double direction_;
  double bound_;
  ProfilePoint inner_;  // last point known to lie within
  ProfileSide side_;
  int unusable_ = 0;
  bool final_ = false;  // no shorter step can help
};

}  // namespace

ProfileInterval profile_interval(const LeastSquaresProblem& problem,
                                 const LeastSquaresSummary& best, Index parameter,
                                 const ProfileOptions& options) {
  check(best, parameter, options);
  return {Side(problem, best, parameter, options, -1.0).run(),
          Side(problem, best, parameter, options, 1.0).run()};
}

}  // namespace kettlecast
