#pragma once

#include <functional>
#include <vector>

#include "kettlecast/network/piece_shells.hpp"
#include "kettlecast/numerics/integrator.hpp"

/// One kilogram of pieces in a fluid of constant temperature, with the flows of the kettle model.
class PieceRun {
 public:
  PieceRun(const kettlecast::PieceShells& shells, double film, double fluid, double from)
      : shells_(shells),
        film_(film),
        fluid_(fluid),
        integrator_([this](const auto& x, auto& dxdt, double) { rates(x, dxdt); },
                    components(shells.count), {}) {
    const double share = 1.0 / static_cast<double>(shells.count);
    state_.assign(shells.count, shells.freezing.specific_enthalpy(from) * share);
    dxdt_.resize(shells.count);
  }
  PieceRun(const PieceRun&) = delete;
  PieceRun& operator=(const PieceRun&) = delete;

  void advance(double until) {
    integrator_.advance(time_, until, state_, {}, [](double, double, const auto&) {});
    time_ = until;
  }

  /// Time at which `value()` first crosses zero, `limit` if it does not.
  double until(const std::function<double()>& value, kettlecast::Crossing crossing, double limit) {
    const kettlecast::Watch watch{[&](double, const kettlecast::State& x) {
                                    const kettlecast::State kept = state_;
                                    state_ = x;
                                    const double found = value();
                                    state_ = kept;
                                    return found;
                                  },
                                  crossing};
    kettlecast::State x = state_;
    time_ = integrator_.advance(time_, limit, x, {watch}, [](double, double, const auto&) {}).time;
    state_ = x;
    return time_;
  }

  std::vector<double> temperatures() const {
    std::vector<double> found;
    for (double enthalpy : state_) found.push_back(temperature(enthalpy));
    return found;
  }
  double mean() const {  // of the enthalpy, as a temperature
    double sum = 0.0;
    for (double enthalpy : state_) sum += enthalpy;
    return kettlecast::shell_temperature(shells_, sum, shells_.water_share);
  }
  double surface() const {
    return kettlecast::piece_surface_temperature(shells_, temperature(state_.back()), film_,
                                                 fluid_);
  }
  double core() const { return kettlecast::core_temperature(shells_, temperatures(), surface()); }
  const kettlecast::State& state() const { return state_; }

 private:
  static kettlecast::Components components(std::size_t count) {
    return {std::vector<std::string>(count, "shell"), std::vector<double>(count, 1e5)};
  }
  double temperature(double enthalpy) const {
    return kettlecast::shell_temperature(shells_, enthalpy * static_cast<double>(shells_.count),
                                         shells_.water_share);
  }
  void rates(const kettlecast::State& x, kettlecast::State& dxdt) const {
    dxdt.assign(shells_.count, 0.0);
    std::vector<double> t;
    for (double enthalpy : x) t.push_back(temperature(enthalpy));
    for (std::size_t k = 0; k + 1 < shells_.count; ++k) {
      const double conductivity = 0.5 * (kettlecast::shell_conductivity(shells_, t[k]) +
                                         kettlecast::shell_conductivity(shells_, t[k + 1]));
      const double flow = shells_.links[k] * conductivity * (t[k + 1] - t[k]);
      dxdt[k] += flow;
      dxdt[k + 1] -= flow;
    }
    const double inside =
        shells_.surface_resistance / kettlecast::shell_conductivity(shells_, t.back());
    dxdt.back() += shells_.area * (fluid_ - t.back()) / (1.0 / film_ + inside);
  }

  const kettlecast::PieceShells& shells_;
  double film_, fluid_, time_ = 0.0;
  kettlecast::State state_, dxdt_;
  kettlecast::Integrator integrator_;
};
