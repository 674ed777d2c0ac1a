#include "kettlecast/base/errors.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <sstream>

namespace kettlecast {
namespace {

std::string number(double value) {
  std::ostringstream text;
  text.precision(6);
  text << value;
  return text.str();
}

std::string list_of(const std::vector<std::string>& names) {
  std::string text;
  for (const auto& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

std::size_t edit_distance(const std::string& left, const std::string& right) {
  std::vector<std::size_t> row(right.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= left.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= right.size(); ++j) {
      const std::size_t replaced = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({replaced, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row.back();
}

std::string failure_text(const std::string& reason, double time, const std::string& component,
                         const std::string& phase) {
  std::string text = "integration failed at " + number(time) + " s";
  if (!phase.empty()) text += " in phase \"" + phase + "\"";
  if (!component.empty()) text += " (" + component + ")";
  return text + ": " + reason;
}

}  // namespace

UnknownName::UnknownName(const std::string& where, const std::string& name,
                         const std::vector<std::string>& known)
    : std::out_of_range(where + ": \"" + name +
                        "\" is not known; nearest: " + list_of(nearest_names(name, known))) {}

IntegrationFailure::IntegrationFailure(const std::string& why, double when,
                                       const std::string& which, const std::string& where)
    : std::runtime_error(failure_text(why, when, which, where)),
      reason(why),
      time(when),
      component(which),
      phase(where) {}

void require_between(const std::string& where, const std::string& key, double value, double lower,
                     double upper, const std::string& unit) {
  if (std::isfinite(value) && value >= lower && value <= upper) return;
  const std::string suffix = unit.empty() ? "" : " " + unit;
  throw InvalidArgument(where + ": " + key + " must be between " + number(lower) + " and " +
                        number(upper) + suffix + ", got " + number(value) + suffix);
}

std::vector<std::string> nearest_names(const std::string& name,
                                       const std::vector<std::string>& known, std::size_t count) {
  std::vector<std::string> sorted = known;
  std::stable_sort(sorted.begin(), sorted.end(), [&](const auto& left, const auto& right) {
    return edit_distance(name, left) < edit_distance(name, right);
  });
  if (sorted.size() > count) sorted.resize(count);
  return sorted;
}

}  // namespace kettlecast
