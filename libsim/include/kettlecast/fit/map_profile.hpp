#pragma once

#include <string>
#include <vector>

#include "kettlecast/fit/map_fit.hpp"

/// Intervals of single coefficients from the cost itself, all others fitted again.
namespace kettlecast {

/// One end of the interval of a scaled coefficient.
struct ProfileSideOfFit {
  bool found = false;      ///< whether the cost rises as far as asked
  bool unbounded = false;  ///< whether the data and the prior let it go on to its bound
  double value = 0.0;      ///< scaled: the end if found, else as far as it was followed [-]
  std::string reason;      ///< in words, unless found

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("found", &ProfileSideOfFit::found);
    visit("unbounded", &ProfileSideOfFit::unbounded);
    visit("value", &ProfileSideOfFit::value);
    visit("reason", &ProfileSideOfFit::reason);
  }
  bool operator==(const ProfileSideOfFit& other) const { return equal_records(*this, other); }
};

/// Both ends, and the points of the profile on the way, from low to high.
struct ProfileOfFit {
  ProfileSideOfFit lower, upper;
  std::vector<double> values;  ///< scaled coefficient [-]
  std::vector<double> rises;   ///< of the cost above its minimum [-]
};

/// Which coefficient, around which point, up to which rise.
struct ProfileQuestion {
  std::vector<double> scaled;  ///< where map_fit ended, shape (n) [-]
  std::size_t parameter = 0;   ///< index into `scaled`
  double rise = 1.35;          ///< of the cost at the ends, > 0: half a quantile of chi-square [-]
};

/// Profile interval of one fitted coefficient; a side that cannot be found is told, not thrown.
///
/// Source: numerics/profile.hpp. Other arguments as for map_fit.
///
/// @throws InvalidArgument as map_fit, for a parameter that does not exist or a rise not above 0
ProfileOfFit map_profile(const Kettle& kettle, const std::vector<RunPlan>& plans,
                         const std::vector<Observed>& observed, const FitSettings& settings,
                         const ProfileQuestion& question, const EnsembleOptions& options);

}  // namespace kettlecast
