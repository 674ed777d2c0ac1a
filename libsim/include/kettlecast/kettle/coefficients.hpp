#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// The coefficients of a kettle: what its type plate does not say and logged runs can tell.
/// coefficients.cpp is the one place that holds default, bounds, prior and source of each.
namespace kettlecast {

/// Index of each coefficient; the order is that of `coefficient_cards()`.
enum class Coefficient : std::size_t {
  floor_efficiency,
  elements_heat_capacity,
  elements_lag,
  floor_capacity_factor,
  floor_resistance_factor,
  floor_film_factor,
  floor_boiling_factor,
  floor_contact_resistance,
  floor_loss,
  jacket_efficiency,
  jacket_heat_capacity,
  jacket_conductance,
  jacket_film_factor,
  wall_film_factor,
  wall_loss,
  evaporation_factor,
  evaporation_lid_factor,
  piece_film_factor,
  piece_coating_factor,
  juice_rate,
  solids_thickening,
  liquid_turnover,
  liquid_mixing_turns,
  agitator_heat_capacity,
  agitator_power_factor,
  floor_sensor_position,
  floor_sensor_lag,
  floor_sensor_offset,
  probe_lag,
  probe_offset,
  probe_height,
  room_offset,
  pour_delay,
  addition_temperature_offset,
  addition_mass_factor,
  count_
};

inline constexpr std::size_t coefficient_count = static_cast<std::size_t>(Coefficient::count_);

/// Everything known about one coefficient before a kettle is fitted.
struct CoefficientCard {
  std::string_view name;  ///< "node.quantity"
  std::string_view unit;  ///< unit of all numbers below
  double value;           ///< default
  double lower, upper;    ///< bounds
  double spread;          ///< prior standard deviation; of the logarithm if `positive`
  bool positive;          ///< a scale or rate: fitted and spread on a logarithmic scale
  std::string_view meaning;
  std::string_view source;
  bool of_run = false;  ///< of one batch, not of the kettle: hands, room and scales of a day
};

/// The cards of all coefficients, in the order of `Coefficient`.
const std::array<CoefficientCard, coefficient_count>& coefficient_cards();

/// Index of the coefficient of this name.
/// @throws UnknownName, listing the nearest names
Coefficient coefficient_named(const std::string& name);

/// One value per coefficient, in the unit of its card.
class Coefficients {
 public:
  /// Defaults of all cards.
  Coefficients();

  double operator[](Coefficient which) const { return values_[static_cast<std::size_t>(which)]; }
  double value(const std::string& name) const { return (*this)[coefficient_named(name)]; }

  /// A copy with one value changed.
  /// @throws UnknownName; InvalidArgument if the value lies outside the bounds of the card
  Coefficients with(const std::string& name, double value) const;

  const std::array<double, coefficient_count>& values() const { return values_; }
  bool operator==(const Coefficients& other) const { return values_ == other.values_; }

 private:
  std::array<double, coefficient_count> values_;
};

}  // namespace kettlecast
