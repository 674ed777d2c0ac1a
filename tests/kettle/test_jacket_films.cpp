// The steam of a jacket and the films behind it.
#include "batch.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double psi = 6894.757293;  // [Pa], 1 lbf/in2 (NIST SP 811)

Kettle steam_at(double gauge, double air = 0.0, double pressure = 101325.0) {
  Kettle kettle = batch::stew_kettle();
  kettle.jacket.kind = JacketKind::steam;
  kettle.jacket.steam_pressure = gauge;
  kettle.jacket.air_share = air;
  kettle.surroundings.pressure = pressure;
  return kettle;
}

double celsius(double kelvin) { return kelvin - constants::ice_point; }

}  // namespace

TEST_CASE("steam in a jacket has the temperature of saturation at its pressure") {
  check_absolute(celsius(steam_temperature(steam_at(5.0 * psi))),
                 published(108.3912853, "degC", "IAPWS-IF97, 5 psig and 1 atm"), 0.01);
  check_absolute(celsius(steam_temperature(steam_at(15.0 * psi))),
                 published(120.9546665, "degC", "IAPWS-IF97, 15 psig and 1 atm"), 0.01);
  check_absolute(celsius(steam_temperature(steam_at(30.0 * psi))),
                 published(134.4437875, "degC", "IAPWS-IF97, 30 psig and 1 atm"), 0.01);
}

TEST_CASE("a gauge counts from the pressure of the room") {
  // 15 psig in a room of 10 psi less is as hot as 5 psig at the sea.
  check_absolute(celsius(steam_temperature(steam_at(15.0 * psi, 0.0, 101325.0 - 10.0 * psi))),
                 published(108.3912853, "degC", "IAPWS-IF97 at 135.80 kPa"), 0.01);
}

TEST_CASE("air takes its part of the pressure from the steam") {
  // Dalton: a tenth of air in 150.89 kPa leaves the steam the 135.80 kPa of 5 psig.
  const double total = (101325.0 + 5.0 * psi) / 0.9;
  check_absolute(celsius(steam_temperature(steam_at(total - 101325.0, 0.1))),
                 published(108.3912853, "degC", "Dalton's law, IAPWS-IF97 at 135.80 kPa"), 0.01);
  sweep::falling(0.0, 0.5, [](double air) { return steam_temperature(steam_at(1e5, air)); });
}

TEST_CASE("a film of steam in a jacket is as good as handbooks say, and worse with air") {
  const double steam = steam_temperature(steam_at(15.0 * psi));
  const double pure = steam_film_coefficient(steam_at(15.0 * psi), steam, steam - 10.0);
  // Kern takes 8500 for any jacket; tables of film condensation of steam on plates give 4000 to
  // 17000 W/(m2 K) (Perry's, from memory).
  CHECK(pure > 4000.0);
  CHECK(pure < 17000.0);
  double last = pure;
  for (double air : {0.005, 0.02, 0.1, 0.3}) {
    const double film = steam_film_coefficient(steam_at(15.0 * psi, air), steam, steam - 10.0);
    CHECK(film < last);
    last = film;
  }
  // Half a per cent of air halves the coefficient: Othmer (1929), from memory; by mass or volume
  // the fit in use is meant to give the size only.
  CHECK(steam_film_coefficient(steam_at(15.0 * psi, 0.02), steam, steam - 10.0) < 0.5 * pure);
}

TEST_CASE("films of jackets never jump") {
  const Kettle kettle = steam_at(15.0 * psi);
  const auto steam = [&](double wall) { return steam_film_coefficient(kettle, 394.0, wall); };
  sweep::positive(280.0, 420.0, steam);
  sweep::without_jump(280.0, 420.0, 0.05, steam);
  for (double glycol : {0.0, 0.4}) {
    const auto flowing = [&](double flow) {
      return jacket_flow_coefficient(kettle, JacketFlow{flow, 280.0, glycol}, 290.0, 330.0);
    };
    sweep::positive(0.0, 5.0, flowing);
    sweep::rising(0.0, 5.0, flowing);
    sweep::without_jump(0.0, 5.0, 0.05, flowing);
    const auto warm = [&](double wall) {
      return jacket_flow_coefficient(kettle, JacketFlow{0.2, 280.0, glycol}, 300.0, wall);
    };
    sweep::positive(260.0, 400.0, warm);
    sweep::without_jump(260.0, 400.0, 0.05, warm);
  }
}
