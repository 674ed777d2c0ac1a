#include "kettlecast/properties/consistency.hpp"

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

void check_thickening(const Consistency& liquid, const std::string& where) {
  require_between(where, "thickening_factor", liquid.thickening_factor, 1.0, 1e6, "");
  require_between(where, "thickening_rate", liquid.thickening_rate, 0.0, 10.0, "1/s");
  require_between(where, "thickens_from", liquid.thickens_from, 273.15, 423.15, "K");
  // A narrower step would be a jump to the integrator.
  require_between(where, "thickens_until", liquid.thickens_until, liquid.thickens_from + 0.5,
                  473.15, "K");
  if (liquid.thickening_factor > 1.0 && liquid.thickening_rate == 0.0) {
    throw InvalidArgument(where + ": a thickening_factor needs a thickening_rate above 0 1/s");
  }
}

}  // namespace

void check(const Consistency& liquid) {
  const std::string where = "Consistency";
  require_between(where, "consistency", liquid.consistency, 0.0, 1e5, "Pa s^n");
  require_between(where, "flow_index", liquid.flow_index, 0.05, 2.0, "");
  require_between(where, "reference_temperature", liquid.reference_temperature, 253.15, 473.15,
                  "K");
  require_between(where, "activation_energy", liquid.activation_energy, 0.0, 1.5e5, "J/mol");
  require_between(where, "reference_solids", liquid.reference_solids, 0.0, 1.0, "kg/kg");
  require_between(where, "solids_exponent", liquid.solids_exponent, 0.0, 40.0, "");
  const bool own_law = liquid.flow_index != 1.0 || liquid.activation_energy != 0.0;
  if (liquid.consistency == 0.0 && own_law) {
    throw InvalidArgument(where +
                          ": with consistency 0 Pa s^n (like water) flow_index stays 1 and "
                          "activation_energy 0 J/mol");
  }
  check_thickening(liquid, where);
}

}  // namespace kettlecast
