#include "kettlecast/fit/scaled.hpp"

#include <algorithm>
#include <cmath>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

const CoefficientCard& card_of(const std::string& name) {
  return coefficient_cards()[static_cast<std::size_t>(coefficient_named(name))];
}

double scaled(const CoefficientCard& card, double value) {
  const double distance = card.positive ? std::log(value / card.value) : value - card.value;
  return distance / card.spread;
}

double unscaled(const CoefficientCard& card, double distance) {
  const double change = distance * card.spread;
  const double value = card.positive ? card.value * std::exp(change) : card.value + change;
  return std::clamp(value, card.lower, card.upper);
}

}  // namespace

std::vector<double> to_scaled(const Coefficients& coefficients,
                              const std::vector<std::string>& names) {
  std::vector<double> point;
  for (const auto& name : names) point.push_back(scaled(card_of(name), coefficients.value(name)));
  return point;
}

Coefficients from_scaled(const Coefficients& base, const std::vector<std::string>& names,
                         const std::vector<double>& point) {
  if (names.size() != point.size()) {
    throw InvalidArgument("from_scaled: " + std::to_string(names.size()) +
                          " names need as many "
                          "scaled values, got " +
                          std::to_string(point.size()));
  }
  Coefficients changed = base;
  for (std::size_t i = 0; i < names.size(); ++i) {
    changed = changed.with(names[i], unscaled(card_of(names[i]), point[i]));
  }
  return changed;
}

std::vector<double> scaled_slopes(const Coefficients& coefficients,
                                  const std::vector<std::string>& names) {
  std::vector<double> slopes;
  for (const auto& name : names) {
    const auto& card = card_of(name);
    slopes.push_back(card.positive ? coefficients.value(name) * card.spread : card.spread);
  }
  return slopes;
}

ScaledBounds scaled_bounds(const std::vector<std::string>& names) {
  ScaledBounds bounds;
  for (const auto& name : names) {
    const auto& card = card_of(name);
    bounds.lower.push_back(scaled(card, card.lower));
    bounds.upper.push_back(scaled(card, card.upper));
  }
  return bounds;
}

}  // namespace kettlecast
