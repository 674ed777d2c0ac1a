#include <pybind11/stl.h>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/transfer/freezing_time.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
using Pair = std::pair<double, double>;
using Piece = PieceInFluid<double>;
using Factors = PhaseChangeFactors<double>;
using Groups = PhaseChangeGroups<double>;
using FactorsOf = Factors (*)(Shape, const Groups&);

Piece checked_piece(const char* where, const Piece& piece) {
  if (piece.shape == Shape::none) {
    throw InvalidArgument(std::string(where) + ": shape none given, a solid one is needed");
  }
  require_between(where, "size", piece.size, 1e-6, 10.0, "m");
  require_between(where, "film", piece.film, 1e-6, 1e9, "W/(m2 K)");
  require_between(where, "conductivity", piece.conductivity, 1e-6, 1e4, "W/(m K)");
  return piece;
}

double checked_time(const char* where, const Piece& piece, const Factors& factors, double heat,
                    double difference) {
  checked_piece(where, piece);
  require_between(where, "heat", heat, 1.0, 1e12, "J/m3");
  require_between(where, "difference", difference, 1e-9, 1e4, "K");
  return phase_change_time(piece, factors, heat, difference);
}

Groups checked_groups(const char* where, Shape shape, const Groups& groups) {
  checked_piece(where, {shape, 1.0, 1.0, 1.0});
  require_between(where, "plank", groups.plank, 0.0, 10.0, "-");
  require_between(where, "stefan", groups.stefan, 0.0, 10.0, "-");
  require_between(where, "biot", groups.biot, 1e-6, 1e9, "-");
  return groups;
}

/// Factors of fitted equations, and the time that they give.
void define(py::module_& module, const std::string& name, FactorsOf factors,
            const std::string& source) {
  module.def((name + "_factors").c_str(),
             [=](Shape shape, double plank, double stefan, double biot) {
               const auto found = factors(shape, checked_groups((name + "_factors").c_str(), shape,
                                                                {plank, stefan, biot}));
               return Pair(found.p, found.r);
             },
             py::arg("shape"), py::arg("plank"), py::arg("stefan"), py::arg("biot"),
             ("P and R [-] from Pk, Ste and Bi = h D / k [-]. " + source).c_str());
  module.def(
      (name + "_time").c_str(),
      [=](Shape shape, double size, double film, double conductivity, double heat,
          double difference, double plank, double stefan) {
        const std::string where = name + "_time";
        const Piece piece = checked_piece(where.c_str(), {shape, size, film, conductivity});
        const Groups groups =
            checked_groups(where.c_str(), shape, {plank, stefan, film * size / conductivity});
        return checked_time(where.c_str(), piece, factors(shape, groups), heat, difference);
      },
      py::arg("shape"), py::arg("size"), py::arg("film"), py::arg("conductivity"), py::arg("heat"),
      py::arg("difference"), py::arg("plank"), py::arg("stefan"),
      ("Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], heat [J/m3], difference "
       "[K], Pk and Ste [-]. " +
       source)
          .c_str());
}

}  // namespace

void bind_freezing(py::module_& module) {
  auto transfer = module.def_submodule("transfer", "Heat transfer correlations in SI units.");
  auto freezing = transfer.def_submodule("freezing", "Times in which pieces freeze or thaw.");
  freezing.def(
      "film_through_package",
      [](double film, double thickness, double conductivity) {
        require_between("film_through_package", "film", film, 1e-6, 1e9, "W/(m2 K)");
        require_between("film_through_package", "thickness", thickness, 0.0, 1.0, "m");
        require_between("film_through_package", "conductivity", conductivity, 1e-6, 1e4, "W/(m K)");
        return film_through_package(film, thickness, conductivity);
      },
      py::arg("film"), py::arg("thickness"), py::arg("conductivity"),
      "Film coefficient [W/(m2 K)] seen through a package [m], [W/(m K)]; resistances in series.");
  freezing.def(
      "plank_time",
      [](Shape shape, double size, double film, double conductivity, double heat,
         double difference) {
        const Piece piece = checked_piece("plank_time", {shape, size, film, conductivity});
        return checked_time("plank_time", piece, plank_factors<double>(shape), heat, difference);
      },
      py::arg("shape"), py::arg("size"), py::arg("film"), py::arg("conductivity"), py::arg("heat"),
      py::arg("difference"),
      "Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], latent heat [J/m3], "
      "difference [K]. Plank (1913).");
  define(freezing, "cleland_earle", &cleland_earle_factors<double>,
         "Freezing to -10 degC. Cleland & Earle (1977, 1979), in ASHRAE Refrigeration.");
  define(freezing, "thawing", &thawing_factors<double>,
         "Thawing to 0 degC. Cleland et al. (1987), from memory.");
  freezing.def(
      "pham_time",
      [](Shape shape, double size, double film, double conductivity, double unfrozen, double frozen,
         double latent, double initial, double final_centre, double surroundings) {
        const char* where = "pham_time";
        const Piece piece = checked_piece(where, {shape, size, film, conductivity});
        const FreezingSpan<double> span{initial, final_centre, surroundings};
        require_between(where, "surroundings", surroundings, 150.0, 273.15, "K");
        require_between(where, "final_centre", final_centre, surroundings, 273.15, "K");
        const double freezing_at = pham_mean_freezing_temperature(span);
        require_between(where, "initial", initial, freezing_at, 373.15, "K");
        return pham_freezing_time(piece, {unfrozen, frozen, latent}, span);
      },
      py::arg("shape"), py::arg("size"), py::arg("film"), py::arg("conductivity"),
      py::arg("unfrozen"), py::arg("frozen"), py::arg("latent"), py::arg("initial"),
      py::arg("final_centre"), py::arg("surroundings"),
      "Time to freeze [s]: size [m], film [W/(m2 K)], conductivity frozen [W/(m K)], rho cp "
      "unfrozen and frozen [J/(m3 K)], latent heat [J/m3], temperatures [K]. Pham (1986), from "
      "memory.");
}

}  // namespace kettlecast::python
