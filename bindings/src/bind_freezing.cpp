#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/transfer/freezing_time.hpp"

namespace kettlecast::python {
namespace {

using Piece = PieceInFluid<double>;
using Factors = PhaseChangeFactors<double>;
using Groups = PhaseChangeGroups<double>;

const py::arg shape("shape");
const Named film = named("film", 1e-6, 1e9, "W/(m2 K)");
const Named volume_heat = named("heat", 1.0, 1e12, "J/m3");
const Named difference = named("difference", 1e-9, 1e4, "K");
const Limits biot{1e-6, 1e9, "-"};

/// Factors of fitted equations, and the time that they give.
void define_factors(py::module_& module, const std::string& name,
                    Factors (*factors)(Shape, const Groups&), const std::string& source) {
  define(
      module, (name + "_factors").c_str(),
      [=](Shape kind, double plank, double stefan, double biot_number) {
        const Factors found = factors(kind, {plank, stefan, biot_number});
        return std::pair(found.p, found.r);
      },
      ("P and R [-] from Pk, Ste and Bi = h D / k [-]. " + source).c_str(), shape, named("plank"),
      named("stefan"), named("biot", biot.lower, biot.upper, biot.unit));
  define(
      module, (name + "_time").c_str(),
      [=](Shape kind, double size, double outside, double conductivity, double heat, double cold,
          double plank, double stefan) {
        const double ratio = outside * size / conductivity;
        require_between("freezing." + name + "_time", "film size / conductivity", ratio, biot.lower,
                        biot.upper, biot.unit);
        return phase_change_time(Piece{kind, size, outside, conductivity},
                                 factors(kind, {plank, stefan, ratio}), heat, cold);
      },
      ("Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], heat [J/m3], difference "
       "[K], Pk and Ste [-]. " +
       source)
          .c_str(),
      shape, named("size"), film, named("conductivity"), volume_heat, difference, named("plank"),
      named("stefan"));
}

double pham_time(Shape kind, double size, double outside, double conductivity, double unfrozen,
                 double frozen, double latent, double initial, double final_centre,
                 double surroundings) {
  const char* where = "freezing.pham_time";
  const FreezingSpan<double> span{initial, final_centre, surroundings};
  require_between(where, "final_centre", final_centre, surroundings, constants::ice_point, "K");
  require_between(where, "initial", initial, pham_mean_freezing_temperature(span), 373.15, "K");
  return pham_freezing_time(Piece{kind, size, outside, conductivity}, {unfrozen, frozen, latent},
                            span);
}

}  // namespace

void bind_freezing(py::module_& module) {
  auto transfer = transfer_of(module);
  auto freezing = transfer.def_submodule("freezing", "Times in which pieces freeze or thaw.");
  define(freezing, "film_through_package", &film_through_package<double>,
         "Film coefficient [W/(m2 K)] seen through a package [m], [W/(m K)]; resistances in "
         "series.",
         film, named("thickness"), named("conductivity"));
  define(
      freezing, "plank_time",
      [](Shape kind, double size, double outside, double conductivity, double heat, double cold) {
        return phase_change_time(Piece{kind, size, outside, conductivity},
                                 plank_factors<double>(kind), heat, cold);
      },
      "Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], latent heat [J/m3], "
      "difference [K]. Plank (1913).",
      shape, named("size"), film, named("conductivity"), volume_heat, difference);
  define_factors(freezing, "cleland_earle", &cleland_earle_factors<double>,
                 "Freezing to -10 degC. Cleland & Earle (1977, 1979), in ASHRAE Refrigeration.");
  define_factors(freezing, "thawing", &thawing_factors<double>,
                 "Thawing to 0 degC. Cleland et al. (1987), from memory.");
  define(freezing, "pham_time", &pham_time,
         "Time to freeze [s]: size [m], film [W/(m2 K)], conductivity frozen [W/(m K)], rho cp "
         "unfrozen and frozen [J/(m3 K)], latent heat [J/m3], temperatures [K]. Pham (1986), from "
         "memory.",
         shape, named("size"), film, named("conductivity"), named("unfrozen"), named("frozen"),
         named("latent"), named("initial", 150.0, 373.15, "K"),
         named("final_centre", 150.0, 273.15, "K"), named("surroundings", 150.0, 273.15, "K"));
}

}  // namespace kettlecast::python
