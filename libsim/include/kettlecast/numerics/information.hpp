#pragma once

#include "kettlecast/base/record.hpp"

/// Criteria by which models of different size are compared; only differences between models of the
/// same data mean something.
namespace kettlecast {

/// Whether the standard errors of the data were given or are taken from the residuals.
enum class ErrorsOfData {
  known,     ///< the cost is in units of them
  estimated  ///< one more parameter of the model
};

/// Information criteria, smaller is better [-].
struct Information {
  double akaike = 0.0;            ///< AIC
  double akaike_corrected = 0.0;  ///< AICc; infinite with too few data for so many parameters
  double bayes = 0.0;             ///< BIC

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("akaike", &Information::akaike);
    visit("akaike_corrected", &Information::akaike_corrected);
    visit("bayes", &Information::bayes);
  }
  bool operator==(const Information& other) const { return equal_records(*this, other); }
};

/// Information criteria of a least-squares fit.
///
///     AIC = D + 2 K,  AICc = AIC + 2 K (K + 1) / (n - K - 1),  BIC = D + K log n
///     known errors:      D = 2 cost,                K = parameters
///     estimated errors:  D = n log(2 cost / n),     K = parameters + 1
///
/// Source: Burnham, Anderson, Model selection and multimodel inference (2002), sections 2.2, 2.4
/// and 6.4.1. AICc is infinite for n <= K + 1.
///
/// @param cost        half the sum of the squared residuals of the data, without priors [-]
/// @param count       of data, or how many independent ones they are worth, > 0 [-]
/// @param parameters  fitted, >= 0
/// @param errors      of the data
/// @throws InvalidArgument if a number is out of range; a cost of 0 needs known errors
Information information_of(double cost, double count, int parameters,
                           ErrorsOfData errors = ErrorsOfData::known);

}  // namespace kettlecast
