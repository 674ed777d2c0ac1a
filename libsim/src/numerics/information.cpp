#include "kettlecast/numerics/information.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {

Information information_of(double cost, double count, int parameters, ErrorsOfData errors) {
  constexpr double largest = std::numeric_limits<double>::max();
  constexpr double smallest = std::numeric_limits<double>::min();
  const bool known = errors == ErrorsOfData::known;
  require_between("information_of", "cost", cost, known ? 0.0 : smallest, largest, "");
  require_between("information_of", "count", count, smallest, largest, "");
  if (parameters < 0) {
    throw InvalidArgument("information_of: parameters must be 0 or more, got " +
                          std::to_string(parameters));
  }
  const double size = parameters + (known ? 0.0 : 1.0);
  const double deviance = known ? 2.0 * cost : count * std::log(2.0 * cost / count);
  const double spare = count - size - 1.0;
  Information found;
  found.akaike = deviance + 2.0 * size;
  found.akaike_corrected = spare > 0.0 ? found.akaike + 2.0 * size * (size + 1.0) / spare
                                       : std::numeric_limits<double>::infinity();
  found.bayes = deviance + size * std::log(count);
  return found;
}

}  // namespace kettlecast
