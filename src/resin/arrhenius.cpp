#include "wetout/resin/arrhenius.hpp"

#include <cmath>

#include "wetout/resin/defaults.hpp"

namespace wetout::resin {

double arrhenius_factor(double energy_kj_mol, units::Temperature from, units::Temperature to) {
  const double e_over_r = energy_kj_mol * 1e3 / gas_constant_j_per_mol_k.value;
  return std::exp(e_over_r * (1.0 / to.in_kelvin() - 1.0 / from.in_kelvin()));
}

units::Temperature temperature_for_factor(double energy_kj_mol, units::Temperature from,
                                          double factor) {
  const double e_over_r = energy_kj_mol * 1e3 / gas_constant_j_per_mol_k.value;
  return units::Temperature::kelvin(1.0 / (1.0 / from.in_kelvin() + std::log(factor) / e_over_r));
}

}  // namespace wetout::resin
