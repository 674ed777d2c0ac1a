#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/network/size_classes.hpp"
#include "kettlecast/transfer/conduction_time.hpp"
#include "kettlecast/transfer/cooling_factors.hpp"
#include "kettlecast/transfer/freezing_time.hpp"

namespace kettlecast::python {
namespace {

const py::arg shape("shape");

void bind_groups(py::module_& module) {
  define(module, "biot_number", &biot_number<double>,
         "h L / k [-] of a film [W/(m2 K)], half thickness or radius [m], conductivity [W/(m K)].",
         named("film"), named("length"), named("conductivity"));
  define(module, "fourier_number", &fourier_number<double>,
         "a t / L^2 [-] of a diffusivity [m2/s], a time [s], half thickness or radius [m].",
         named("diffusivity"), named("time"), named("length"));
  define(module, "fourier_time", &fourier_time<double>,
         "Time [s] of a Fourier number [-], diffusivity [m2/s], half thickness or radius [m].",
         named("fourier"), named("diffusivity"), named("length"));
  define(module, "surface_per_volume", &surface_per_volume<double>,
         "[1/m] of a thickness or diameter [m].", shape, named("size"));
  define(module, "lumped_change", &lumped_change<double>,
         "Change left of an even body [-]: film [W/(m2 K)], [1/m], rho cp [J/(m3 K)], time [s].",
         named("film"), named("surface_per_volume"), named("heat_capacity"), named("time"));
}

void bind_modes(py::module_& module) {
  define(module, "eigenvalue", &conduction_eigenvalue,
         "Root lambda_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4.", shape,
         named("biot"), named("number") = 1);
  define(
      module, "amplitude",
      [](Shape kind, double biot, int number) {
        return mode_amplitude(kind, conduction_eigenvalue(kind, biot, number));
      },
      "Amplitude A_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4.", shape,
      named("biot"), named("number") = 1);
  define(module, "cooling_time_factor", &cooling_time_factor,
         "f a / L^2 [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing Times.",
         shape, named("biot"));
  define(module, "cooling_lag_factor", &cooling_lag_factor,
         "j of the centre [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing "
         "Times.",
         shape, named("biot"));
}

void bind_changes(py::module_& module) {
  const auto of_place = [&](const char* name, const char* third,
                            double (*change)(Shape, double, double, double), const char* text) {
    define(module, name, change, text, shape, named("biot"), named(third), named("position"));
  };
  of_place("remaining_change", "fourier", &remaining_change,
           "(Tf - T)/(Tf - T0) [-] at a position, 0 centre, 1 surface, by the series. Carslaw & "
           "Jaeger (1959).");
  of_place("one_term_change", "fourier", &one_term_change,
           "Change left [-] by the first term alone, for Fo > 0.2. Carslaw & Jaeger (1959).");
  of_place("fourier_to_reach", "change", &fourier_to_reach,
           "Fourier number [-] at which that change is left at a position, by the series.");
  of_place("one_term_fourier", "change", &one_term_fourier,
           "Fourier number [-] at which the first term alone leaves that change.");
  define(module, "mean_remaining_change", &mean_remaining_change,
         "Mean change left over the volume [-], by the series. Carslaw & Jaeger (1959).", shape,
         named("biot"), named("fourier"));
  define(module, "mean_fourier_to_reach", &mean_fourier_to_reach,
         "Fourier number [-] at which that mean change is left, by the series.", shape,
         named("biot"), named("change"));
}

void bind_thick(py::module_& module) {
  const auto time = named("time", 1e-30, 1e15, "s");
  const auto diffusion_depths = named("depth", 0.0, 1e12, "-");
  define(module, "diffusion_depth", &diffusion_depth<double>,
         "x / (2 sqrt(a t)) [-] of a depth [m], diffusivity [m2/s], time [s].", named("depth"),
         named("diffusivity"), time);
  define(module, "semi_infinite_fixed_surface", &semi_infinite_fixed_surface<double>,
         "Share of the change of the surface [-] at a diffusion depth [-]. Carslaw & Jaeger 2.5.",
         diffusion_depths);
  define(module, "semi_infinite_film", &semi_infinite_film<double>,
         "Share of the change of a fluid [-] at a diffusion depth [-] and h sqrt(a t)/k [-]. "
         "Carslaw & Jaeger 2.7.",
         diffusion_depths, named("film", 0.0, 1e12, "-"));
  define(module, "semi_infinite_depth", &semi_infinite_depth,
         "Diffusion depth [-] that a share of the change of a fixed surface has reached. Carslaw & "
         "Jaeger 2.5.",
         named("share", 1e-12, 1.0, "-"));
  define(module, "semi_infinite_flux", &semi_infinite_flux<double>,
         "Flux [W/m2] into a surface held a difference [K] above. Carslaw & Jaeger 2.5.",
         named("difference"), named("conductivity"), named("diffusivity"), time);
  define(module, "semi_infinite_heat", &semi_infinite_heat<double>,
         "Heat [J/m2] since a surface was held a difference [K] above. Carslaw & Jaeger 2.5.",
         named("difference"), named("conductivity"), named("diffusivity"), time);
  define(module, "semi_infinite_flux_rise", &semi_infinite_flux_rise<double>,
         "Rise [K] at a depth [m] under a constant flux [W/m2]. Carslaw & Jaeger 2.9.",
         named("flux"), named("depth"), named("conductivity"), named("diffusivity"), time);
}

}  // namespace

void bind_conduction(py::module_& module) {
  auto transfer = transfer_of(module);
  auto conduction =
      transfer.def_submodule("conduction", "Transient conduction in slab, cylinder and sphere.");
  bind_groups(conduction);
  bind_modes(conduction);
  bind_changes(conduction);
  bind_thick(conduction);
  auto pieces = transfer.def_submodule("pieces", "Spreads of piece sizes.");
  const auto spread = [&](const char* name, std::vector<SizeClass> (*classes)(double, double),
                          const char* text) {
    define(
        pieces, name,
        [=](double mean_size, double variation) {
          std::vector<std::pair<double, double>> found;
          for (const auto& one : classes(mean_size, variation)) {
            found.emplace_back(one.size, one.mass_share);
          }
          return found;
        },
        text, named("mean_size"), named("variation"));
  };
  spread("lognormal_size_classes", &lognormal_size_classes,
         "Sizes [m] and mass shares [-] for a lognormal spread by mass, variation 0 to 1 [-].");
  spread("normal_size_classes", &normal_size_classes,
         "Sizes [m] and mass shares [-] for a normal spread by mass, variation 0 to 0.3 [-].");
}

}  // namespace kettlecast::python
