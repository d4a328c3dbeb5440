// How times printed for one temperature hold at another.
#pragma once

#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// exp(E/R (1/to - 1/from)): what a time at `from` is multiplied with to hold at `to`.
double arrhenius_factor(double energy_kj_mol, units::Temperature from, units::Temperature to);

/// The temperature at which a time printed for `from` has grown to `factor` times itself.
units::Temperature temperature_for_factor(double energy_kj_mol, units::Temperature from,
                                          double factor);

}  // namespace wetout::resin
