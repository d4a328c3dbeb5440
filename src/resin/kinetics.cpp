#include "wetout/resin/kinetics.hpp"

#include <cmath>

#include "wetout/resin/defaults.hpp"

namespace wetout::resin {

double rate_constant(const Kinetics& kinetics, units::Temperature at) {
  const double e_over_r = kinetics.energy_j_per_mol / gas_constant_j_per_mol_k.value;
  return kinetics.k_per_s *
         std::exp(e_over_r * (1.0 / kinetics.reference.in_kelvin() - 1.0 / at.in_kelvin()));
}

double chemical_rate(double conversion, double r, double m, double n) {
  return (r + std::pow(conversion, m)) * std::pow(1.0 - conversion, n);
}

units::Temperature glass_transition(const Glass& glass, double conversion) {
  const double rise = (glass.cured - glass.uncured).in_kelvin() * glass.lambda * conversion /
                      (1.0 - (1.0 - glass.lambda) * conversion);
  return glass.uncured + units::TempDelta::kelvin(rise);
}

double conversion_at(const Glass& glass, units::Temperature tg) {
  const double share = (tg - glass.uncured).in_kelvin() / (glass.cured - glass.uncured).in_kelvin();
  return share / (glass.lambda + (1.0 - glass.lambda) * share);
}

double vitrification_factor(const Glass& glass, double conversion, units::Temperature at) {
  const double above = (glass_transition(glass, conversion) - at).in_kelvin();
  return stopping_factor((above - glass.delay_kelvin) / glass.width_kelvin);
}

double gel_point(double f, double g, double ratio) {
  return 1.0 / std::sqrt(ratio * (f - 1.0) * (g - 1.0));
}

}  // namespace wetout::resin
