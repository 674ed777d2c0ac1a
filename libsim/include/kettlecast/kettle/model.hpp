#pragma once

#include <array>
#include <vector>

#include "kettlecast/kettle/coefficients.hpp"
#include "kettlecast/kettle/kettle.hpp"
#include "kettlecast/kettle/layout.hpp"
#include "kettlecast/kettle/scene.hpp"

namespace kettlecast {

/// What acts on the kettle from outside at one instant; constant between break points, but for heat
/// under continuous control.
template <class T>
struct BasicInputs {
  T floor_heat = T(0.0);         ///< share of the nominal floor power [-]
  T jacket_heat = T(0.0);        ///< share of the jacket power or hot flow asked for [-]
  double jacket_limit = 373.15;  ///< the jacket heats while it is colder [K]
  double cooling = 0.0;          ///< share of the cold flow of the jacket asked for [-]
  double cool_limit = 0.0;       ///< the jacket cools while it is warmer [K]
  double agitator_speed = 0.0;   ///< [1/s]
  bool reversed = false;         ///< the agitator turns the other way
  Cover cover = Cover::open;
  std::vector<double> pour_rate;  ///< of each addition of the run, as stated [kg/s]
};

using Inputs = BasicInputs<double>;

/// How an addition differs from what was stated of it.
template <class T>
struct AdditionChange {
  T delay;        ///< later than stated [s]
  T temperature;  ///< warmer than stated [K]
  T mass_factor;  ///< mass relative to the one stated [-]
};

/// Temperatures at the start of a run [K].
struct Start {
  double floor = 295.15;  ///< floor and its elements
  double wall = 295.15;   ///< wall, jacket and agitator
  bool as_read = false;   ///< both are readings, with the offsets of floor sensor and probe in them

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("floor", &Start::floor);
    visit("wall", &Start::wall);
    visit("as_read", &Start::as_read);
  }
  bool operator==(const Start& other) const { return equal_records(*this, other); }
};

/// The right-hand side of the kettle: rates of change of all temperatures, masses and books.
///
/// Heat flows are positive from the first named node to the second. Order of evaluation: scene
/// (temperatures, volumes, areas), heaters, floor, wall and jacket, pieces, free surface and
/// boiling, juice, pours, sensors, balances. `T` is the scalar of state and coefficients.
/// Not safe for use by two threads at once: one model per run.
template <class T>
class KettleModel {
 public:
  using Inputs = BasicInputs<T>;

  /// @throws InvalidArgument if the kettle, an addition or the filling is impossible
  KettleModel(const Kettle& kettle, const std::array<T, coefficient_count>& coefficients,
              std::vector<Addition> additions);

  const Layout& layout() const { return layout_; }
  const Kettle& kettle() const { return kettle_; }
  const std::vector<Addition>& additions() const { return additions_; }
  /// How each addition differs from what was stated; the coefficients of the run to begin with.
  const std::vector<AdditionChange<T>>& changes() const { return changes_; }
  AdditionChange<T>& change(std::size_t addition) { return changes_[addition]; }

  /// Empty kettle at the given temperatures, all at rest, so that sensors are off by their offsets.
  std::vector<T> initial_state(const Start& start) const;

  /// Warms an empty kettle with its sensors [K].
  void warm(const T& by, std::vector<T>& x) const;

  /// Writes the rates of change at x; dxdt gets the size of the layout.
  void rates(const Inputs& inputs, const std::vector<T>& x, std::vector<T>& dxdt);

  /// Pours a mass [kg], as stated, of an addition into x at once.
  void pour(std::size_t addition, double mass, std::vector<T>& x);

  /// Heat content of kettle and product [J]; only differences have a meaning.
  T stored_energy(const std::vector<T>& x);

  /// Product in the kettle [kg].
  T product_mass(const std::vector<T>& x) const;

  /// Temperature of the floor where its sensor sits [K].
  T floor_sensor_temperature(const std::vector<T>& x) const;

  /// Height of the product over the floor, on the axis [m].
  T level(const std::vector<T>& x) { return scene_at(x).level; }

  /// Classes of pieces, in the order of the layout.
  const std::vector<PieceClass>& pieces() const { return pieces_; }

  /// Derived quantities at x; valid until the next call.
  const Scene<T>& scene_at(const std::vector<T>& x);

 private:
  struct Flows;
  /// A wetted surface, what is behind it up to its node, and the liquid it meets.
  struct HeatedSurface {
    T temperature;  ///< of its node [K]
    T liquid;       ///< [K]
    T film;         ///< [W/(m2 K)]
    T plate;        ///< resistance from node to surface [m2 K/W]
  };
  struct Flux {
    T convection, boiling;  ///< [W/m2]
  };

  T coefficient(Coefficient which) const { return values_[static_cast<std::size_t>(which)]; }
  T room_temperature() const {
    return kettle_.surroundings.temperature + coefficient(Coefficient::room_offset);
  }
  std::array<T, 6> node_capacities(const Scene<T>& scene) const;
  double wall_area_capacity() const;
  double jacket_filling() const;
  T jacketed_area(const Scene<T>& scene) const;
  T elements_conductance() const;
  T plate_conductance() const;

  void heat_floor(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  T jacket_supply(const Inputs& inputs, const T& temperature) const;
  T jacket_cooling(const Inputs& inputs, const T& temperature) const;
  T jacket_film(const Inputs& inputs, const T& jacket, const T& wall) const;
  T jacket_conductance(const Inputs& inputs, const T& jacket, const T& wall, const T& plate) const;
  /// Resistance from the face of the floor to the middle of its nearer layer [m2 K/W].
  T quarter_floor() const;
  void heat_jacket(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void heat_dry_wall(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void lose_from_wall(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void lose_from_bare_floor(const std::vector<T>& x, Flows& flows) const;
  Flux heated_surface_flux(const HeatedSurface& surface, const Flows& flows) const;
  void floor_to_liquid(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void floor_to_pieces(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void wall_to_liquid(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  T piece_film(const Inputs& inputs, const Flows& flows, std::size_t i, const T& coating) const;
  void liquid_to_pieces(const Inputs& inputs, Flows& flows) const;
  void within_pieces(Flows& flows) const;
  void evaporate_piece(std::size_t i, const T& flow, Flows& flows) const;
  void leave_surface(const Inputs& inputs, Flows& flows) const;
  void boil_off(Flows& flows) const;
  void release_juice(Flows& flows) const;
  void stir(const Inputs& inputs, Flows& flows) const;
  void thicken(Flows& flows) const;
  T poured_temperature(std::size_t addition) const {
    return additions_[addition].temperature + changes_[addition].temperature;
  }
  void pour_on(std::size_t addition, double stated, std::vector<T>& into) const;
  void pour_pieces(std::size_t i, const T& mass, std::vector<T>& into) const;
  void mix_layers(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const;
  void read_sensors(const std::vector<T>& x, Flows& flows) const;
  void balance_nodes(const std::vector<T>& x, Flows& flows) const;
  void balance_floor(const std::array<T, 6>& capacities, Flows& flows) const;

  Kettle kettle_;
  std::array<T, coefficient_count> values_;
  std::vector<Addition> additions_;
  std::vector<AdditionChange<T>> changes_;
  std::vector<PieceClass> pieces_;
  Layout layout_;
  SceneGeometry geometry_;
  double boiling_point_ = 373.15;      ///< of water in this room [K]
  double steam_temperature_ = 373.15;  ///< of the steam jacket [K]
  Scene<T> scene_;
};

}  // namespace kettlecast
