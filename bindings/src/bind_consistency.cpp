#include <limits>

#include "bind.hpp"
#include "kettlecast/properties/consistency.hpp"
#include "kettlecast/properties/mixture.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

constexpr double endless = std::numeric_limits<double>::max();

void require_temperature(const char* where, double temperature) {
  require_between(where, "temperature", temperature, 253.15, 473.15, "K");
}

double viscosity_of(const Consistency& liquid, double temperature, double shear_rate,
                    double thickened, double dry_share) {
  const char* where = "apparent_viscosity";
  check(liquid);
  require_temperature(where, temperature);
  require_between(where, "shear_rate", shear_rate, 0.0, 1e6, "1/s");
  require_between(where, "thickened", thickened, 0.0, 1.0, "");
  require_between(where, "dry_share", dry_share, 0.0, 1.0, "kg/kg");
  return apparent_viscosity(liquid, temperature, shear_rate, thickened, dry_share);
}

double speed_of(const Consistency& liquid, double temperature, double thickened) {
  check(liquid);
  require_temperature("thickening_speed", temperature);
  require_between("thickening_speed", "thickened", thickened, 0.0, 1.0, "");
  return thickening_speed(liquid, temperature, thickened);
}

double mixture_of(const std::vector<double>& viscosities, const std::vector<double>& masses) {
  const char* where = "mixed_viscosity";
  if (viscosities.empty() || viscosities.size() != masses.size()) {
    throw InvalidArgument(std::string(where) +
                          ": viscosities and masses must be equally many, at least one");
  }
  double total = 0.0;
  for (std::size_t i = 0; i < masses.size(); ++i) {
    require_between(where, "viscosities", viscosities[i], 1e-9, endless, "Pa s");
    require_between(where, "masses", masses[i], 0.0, 1e9, "kg");
    total += masses[i];
  }
  require_between(where, "sum of the masses", total, 1e-12, endless, "kg");
  return mixed_viscosity(viscosities, masses);
}

}  // namespace

void bind_consistency(py::module_& module) {
  bind_record<Consistency>(
      module, "Consistency",
      "How thick a liquid is, and how it thickens; the default is like water.");
  module.def("check", py::overload_cast<const Consistency&>(&check), py::arg("consistency"),
             "Raises InvalidArgument, naming the key, if no liquid is like this.");
  auto properties = module.def_submodule("properties", "Material properties in SI units.");
  auto thick = properties.def_submodule("consistency", "Viscosity of thick liquids.");
  thick.def("apparent_viscosity", &viscosity_of, py::arg("consistency"), py::arg("temperature"),
            py::arg("shear_rate"), py::arg("thickened"), py::arg("dry_share"),
            "Viscosity [Pa s] at a temperature [K], shear rate [1/s], thickened share [-] and dry "
            "share [kg/kg]; Ostwald's power law with Arrhenius' term.");
  thick.def("thickening_speed", &speed_of, py::arg("consistency"), py::arg("temperature"),
            py::arg("thickened"),
            "Growth of the thickened share [1/s] at a temperature [K]; first order.");
  thick.def("mixed_viscosity", &mixture_of, py::arg("viscosities"), py::arg("masses"),
            "Viscosity of liquids poured together [Pa s], mean of the logarithms by mass [kg]; "
            "Arrhenius.");
}

}  // namespace kettlecast::python
