#include <pybind11/stl.h>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/network/size_classes.hpp"
#include "kettlecast/transfer/conduction_time.hpp"
#include "kettlecast/transfer/cooling_factors.hpp"
#include "kettlecast/transfer/freezing_time.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
using Pair = std::pair<double, double>;

void check_shape(const char* where, Shape shape) {
  if (shape == Shape::none) {
    throw InvalidArgument(std::string(where) + ": shape none given, a solid one is needed");
  }
}

void check_body(const char* where, Shape shape, double biot) {
  check_shape(where, shape);
  require_between(where, "biot", biot, 1e-6, 1e6, "-");
}

void check_positive(const char* where, const char* key, double value) {
  require_between(where, key, value, 1e-300, 1e300, "SI unit");
}

void bind_groups(py::module_& module) {
  module.def(
      "biot_number",
      [](double film, double length, double conductivity) {
        check_positive("biot_number", "conductivity", conductivity);
        return biot_number(film, length, conductivity);
      },
      py::arg("film"), py::arg("length"), py::arg("conductivity"),
      "h L / k [-] of a film [W/(m2 K)], half thickness or radius [m], conductivity [W/(m K)].");
  module.def(
      "fourier_number",
      [](double diffusivity, double time, double length) {
        check_positive("fourier_number", "length", length);
        return fourier_number(diffusivity, time, length);
      },
      py::arg("diffusivity"), py::arg("time"), py::arg("length"),
      "a t / L^2 [-] of a diffusivity [m2/s], a time [s], half thickness or radius [m].");
  module.def(
      "fourier_time",
      [](double fourier, double diffusivity, double length) {
        check_positive("fourier_time", "diffusivity", diffusivity);
        return fourier_time(fourier, diffusivity, length);
      },
      py::arg("fourier"), py::arg("diffusivity"), py::arg("length"),
      "Time [s] of a Fourier number [-], diffusivity [m2/s], half thickness or radius [m].");
  module.def(
      "surface_per_volume",
      [](Shape shape, double size) {
        check_shape("surface_per_volume", shape);
        check_positive("surface_per_volume", "size", size);
        return surface_per_volume(shape, size);
      },
      py::arg("shape"), py::arg("size"), "[1/m] of a thickness or diameter [m].");
  module.def(
      "lumped_change",
      [](double film, double surface_per_volume, double heat_capacity, double time) {
        check_positive("lumped_change", "heat_capacity", heat_capacity);
        return lumped_change(film, surface_per_volume, heat_capacity, time);
      },
      py::arg("film"), py::arg("surface_per_volume"), py::arg("heat_capacity"), py::arg("time"),
      "Change left of an even body [-]: film [W/(m2 K)], [1/m], rho cp [J/(m3 K)], time [s].");
}

void bind_modes(py::module_& module) {
  module.def(
      "eigenvalue",
      [](Shape shape, double biot, int number) {
        check_body("eigenvalue", shape, biot);
        require_between("eigenvalue", "number", number, 1, 10000, "-");
        return conduction_eigenvalue(shape, biot, number);
      },
      py::arg("shape"), py::arg("biot"), py::arg("number") = 1,
      "Root lambda_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4.");
  module.def(
      "amplitude",
      [](Shape shape, double biot, int number) {
        check_body("amplitude", shape, biot);
        require_between("amplitude", "number", number, 1, 10000, "-");
        return mode_amplitude(shape, conduction_eigenvalue(shape, biot, number));
      },
      py::arg("shape"), py::arg("biot"), py::arg("number") = 1,
      "Amplitude A_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4.");
  module.def(
      "cooling_time_factor",
      [](Shape shape, double biot) {
        check_body("cooling_time_factor", shape, biot);
        return cooling_time_factor(shape, biot);
      },
      py::arg("shape"), py::arg("biot"),
      "f a / L^2 [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing Times.");
  module.def(
      "cooling_lag_factor",
      [](Shape shape, double biot) {
        check_body("cooling_lag_factor", shape, biot);
        return cooling_lag_factor(shape, biot);
      },
      py::arg("shape"), py::arg("biot"),
      "j of the centre [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing "
      "Times.");
}

using Change = double (*)(Shape, double, double, double);

/// A function of shape, Biot number, Fourier number or change, and position.
void define(py::module_& module, const char* name, const char* third, Change change,
            const char* text) {
  const bool inverse = std::string(third) == "change";
  module.def(
      name,
      [=](Shape shape, double biot, double value, double position) {
        check_body(name, shape, biot);
        require_between(name, third, value, inverse ? 1e-12 : 0.0, inverse ? 1.0 - 1e-12 : 1e6,
                        "-");
        require_between(name, "position", position, 0.0, 1.0, "-");
        return change(shape, biot, value, position);
      },
      py::arg("shape"), py::arg("biot"), py::arg(third), py::arg("position"), text);
}

void bind_changes(py::module_& module) {
  define(module, "remaining_change", "fourier", &remaining_change,
         "(Tf - T)/(Tf - T0) [-] at a position, 0 centre, 1 surface, by the series. Carslaw & "
         "Jaeger (1959).");
  define(module, "one_term_change", "fourier", &one_term_change,
         "Change left [-] by the first term alone, for Fo > 0.2. Carslaw & Jaeger (1959).");
  define(module, "fourier_to_reach", "change", &fourier_to_reach,
         "Fourier number [-] at which that change is left at a position, by the series.");
  define(module, "one_term_fourier", "change", &one_term_fourier,
         "Fourier number [-] at which the first term alone leaves that change.");
  module.def(
      "mean_remaining_change",
      [](Shape shape, double biot, double fourier) {
        check_body("mean_remaining_change", shape, biot);
        require_between("mean_remaining_change", "fourier", fourier, 0.0, 1e6, "-");
        return mean_remaining_change(shape, biot, fourier);
      },
      py::arg("shape"), py::arg("biot"), py::arg("fourier"),
      "Mean change left over the volume [-], by the series. Carslaw & Jaeger (1959).");
  module.def(
      "mean_fourier_to_reach",
      [](Shape shape, double biot, double change) {
        check_body("mean_fourier_to_reach", shape, biot);
        require_between("mean_fourier_to_reach", "change", change, 1e-12, 1.0 - 1e-12, "-");
        return mean_fourier_to_reach(shape, biot, change);
      },
      py::arg("shape"), py::arg("biot"), py::arg("change"),
      "Fourier number [-] at which that mean change is left, by the series.");
}

void bind_thick(py::module_& module) {
  module.def(
      "diffusion_depth",
      [](double depth, double diffusivity, double time) {
        check_positive("diffusion_depth", "diffusivity", diffusivity);
        check_positive("diffusion_depth", "time", time);
        return diffusion_depth(depth, diffusivity, time);
      },
      py::arg("depth"), py::arg("diffusivity"), py::arg("time"),
      "x / (2 sqrt(a t)) [-] of a depth [m], diffusivity [m2/s], time [s].");
  module.def("semi_infinite_fixed_surface", &semi_infinite_fixed_surface<double>, py::arg("depth"),
             "Share of the change of the surface [-] at a diffusion depth [-]. Carslaw & Jaeger "
             "2.5.");
  module.def("semi_infinite_film", &semi_infinite_film<double>, py::arg("depth"), py::arg("film"),
             "Share of the change of a fluid [-] at a diffusion depth [-] and h sqrt(a t)/k [-]. "
             "Carslaw & Jaeger 2.7.");
  module.def(
      "semi_infinite_depth",
      [](double share) {
        require_between("semi_infinite_depth", "share", share, 1e-12, 1.0, "-");
        return semi_infinite_depth(share);
      },
      py::arg("share"),
      "Diffusion depth [-] that a share of the change of a fixed surface has reached. Carslaw & "
      "Jaeger 2.5.");
  const auto of_difference =
      [&](const char* name,
          double (*function)(const double&, const double&, const double&, const double&),
          const char* text) {
        module.def(
            name,
            [=](double difference, double conductivity, double diffusivity, double time) {
              check_positive(name, "diffusivity", diffusivity);
              check_positive(name, "time", time);
              return function(difference, conductivity, diffusivity, time);
            },
            py::arg("difference"), py::arg("conductivity"), py::arg("diffusivity"), py::arg("time"),
            text);
      };
  of_difference("semi_infinite_flux", &semi_infinite_flux<double>,
                "Flux [W/m2] into a surface held a difference [K] above. Carslaw & Jaeger 2.5.");
  of_difference("semi_infinite_heat", &semi_infinite_heat<double>,
                "Heat [J/m2] since a surface was held a difference [K] above. Carslaw & Jaeger "
                "2.5.");
  module.def(
      "semi_infinite_flux_rise",
      [](double flux, double depth, double conductivity, double diffusivity, double time) {
        check_positive("semi_infinite_flux_rise", "conductivity", conductivity);
        check_positive("semi_infinite_flux_rise", "diffusivity", diffusivity);
        check_positive("semi_infinite_flux_rise", "time", time);
        return semi_infinite_flux_rise(flux, depth, conductivity, diffusivity, time);
      },
      py::arg("flux"), py::arg("depth"), py::arg("conductivity"), py::arg("diffusivity"),
      py::arg("time"),
      "Rise [K] at a depth [m] under a constant flux [W/m2]. Carslaw & Jaeger 2.9.");
}

}  // namespace

void bind_conduction(py::module_& module) {
  auto transfer = module.def_submodule("transfer", "Heat transfer correlations in SI units.");
  auto conduction =
      transfer.def_submodule("conduction", "Transient conduction in slab, cylinder and sphere.");
  bind_groups(conduction);
  bind_modes(conduction);
  bind_changes(conduction);
  bind_thick(conduction);
  auto pieces = transfer.def_submodule("pieces", "Spreads of piece sizes.");
  const auto spread = [&](const char* name, std::vector<SizeClass> (*classes)(double, double),
                          const char* text) {
    pieces.def(
        name,
        [=](double mean_size, double variation) {
          std::vector<Pair> found;
          for (const auto& one : classes(mean_size, variation)) {
            found.emplace_back(one.size, one.mass_share);
          }
          return found;
        },
        py::arg("mean_size"), py::arg("variation"), text);
  };
  spread("lognormal_size_classes", &lognormal_size_classes,
         "Sizes [m] and mass shares [-] for a lognormal spread by mass, variation 0 to 1 [-].");
  spread("normal_size_classes", &normal_size_classes,
         "Sizes [m] and mass shares [-] for a normal spread by mass, variation 0 to 0.3 [-].");
}

}  // namespace kettlecast::python
