#pragma once

#include <string>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/transfer/agitated.hpp"
#include "kettlecast/transfer/impeller.hpp"

/// Which source prints which constants of agitated.hpp.
namespace kettlecast {

/// Surface that heats or cools the stirred liquid.
enum class FilmSurface { wall, floor, coil };

/// Where constants are printed; sources differ by 10-40 % and are never mixed.
enum class FilmSource { penney, geankoplis, geankoplis_baffled, kern };

/// Constants of one agitator at one surface by one source.
struct FilmCard {
  FilmSource source;
  FilmSurface surface;
  Impeller impeller;
  AgitatedRegimes<3> regimes;
};

namespace film_cards_detail {
inline constexpr double never = 1e300;  // Reynolds number that no agitator reaches

/// The same constants as three regimes, those that do not exist never reached.
constexpr AgitatedRegimes<3> spread(const AgitatedConstants& only) {
  return {{{only, only, only}}, {{never, never}}};
}
/// Two regimes as three, the last never reached.
constexpr AgitatedRegimes<3> spread(const AgitatedRegimes<2>& two) {
  return {{{two.constants[0], two.constants[1], two.constants[1]}}, {{two.joins[0], never}}};
}
/// Three regimes as they are.
constexpr AgitatedRegimes<3> spread(const AgitatedRegimes<3>& three) { return three; }

/// A card from constants of any number of regimes.
template <class Constants>
constexpr FilmCard card(FilmSource source, FilmSurface surface, Impeller impeller,
                        const Constants& constants) {
  return {source, surface, impeller, spread(constants)};
}
constexpr auto penney = FilmSource::penney;
constexpr auto geankoplis = FilmSource::geankoplis;
constexpr auto wall = FilmSurface::wall;
constexpr auto floor = FilmSurface::floor;
constexpr auto coil = FilmSurface::coil;
}  // namespace film_cards_detail

/// Every set of constants, by source and surface.
///
/// Source: those of the constants in agitated.hpp.
/// Range:  those of the constants in agitated.hpp.
inline constexpr std::array<FilmCard, 21> film_cards = [] {
  using namespace film_cards_detail;
  namespace by_uhl = geankoplis_wall_film;
  return std::array<FilmCard, 21>{
      card(penney, wall, Impeller::anchor, wall_film::anchor),
      card(penney, wall, Impeller::helical_ribbon, wall_film::helical_ribbon),
      card(penney, wall, Impeller::disc_turbine, wall_film::disc_turbine),
      card(penney, wall, Impeller::flat_turbine, wall_film::flat_turbine),
      card(penney, wall, Impeller::pitched_turbine, wall_film::pitched_turbine),
      card(penney, wall, Impeller::hydrofoil, wall_film::hydrofoil),
      card(penney, wall, Impeller::propeller, wall_film::propeller),
      card(penney, floor, Impeller::disc_turbine, floor_film::disc_turbine),
      card(penney, floor, Impeller::flat_turbine, floor_film::flat_turbine),
      card(penney, floor, Impeller::pitched_turbine, floor_film::pitched_turbine),
      card(penney, floor, Impeller::hydrofoil, floor_film::hydrofoil),
      card(penney, coil, Impeller::disc_turbine, coil_film::disc_turbine),
      card(penney, coil, Impeller::propeller, coil_film::propeller),
      card(geankoplis, wall, Impeller::paddle, by_uhl::paddle),
      card(geankoplis, wall, Impeller::pitched_turbine, by_uhl::pitched_turbine),
      card(geankoplis, wall, Impeller::disc_turbine, by_uhl::disc_turbine),
      card(geankoplis, wall, Impeller::anchor, by_uhl::anchor),
      card(geankoplis, wall, Impeller::helical_ribbon, by_uhl::helical_ribbon),
      card(FilmSource::geankoplis_baffled, wall, Impeller::disc_turbine,
           by_uhl::baffled_disc_turbine),
      card(FilmSource::kern, wall, Impeller::paddle, kern_paddle_film::wall),
      card(FilmSource::kern, coil, Impeller::paddle, kern_paddle_film::coil),
  };
}();

/// Constants printed by a source for an agitator at a surface.
///
/// @throws InvalidArgument  if the source prints none
inline const AgitatedRegimes<3>& film_constants(FilmSource source, FilmSurface surface,
                                                Impeller impeller) {
  std::string printed;
  for (const FilmCard& card : film_cards) {
    if (card.source != source || card.surface != surface) continue;
    if (card.impeller == impeller) return card.regimes;
    printed += (printed.empty() ? "" : ", ") + std::string(name_of(card.impeller));
  }
  throw InvalidArgument(std::string("film_constants: this source has none for ") +
                        name_of(impeller) + " at this surface; it has them for " +
                        (printed.empty() ? "no impeller" : printed));
}

/// Constants that hold at a Reynolds number, the join itself counted to the upper regime.
inline const AgitatedConstants& constants_at(const AgitatedRegimes<3>& regimes, double reynolds) {
  std::size_t i = 0;
  while (i < 2 && reynolds >= regimes.joins[i]) ++i;
  return regimes.constants[i];
}

}  // namespace kettlecast
