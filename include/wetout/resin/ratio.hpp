// The mixing ratio as printed and as the scale needs it.
#pragma once

#include "wetout/resin/product.hpp"

namespace wetout::resin {

/// The parts the sheet prints: by mass where both are given, for mass wins on the scale.
Parts printed_parts(const Product& product);

/// Mass of part B per mass of part A. Parts by volume are turned into mass by the liquid densities.
double hardener_per_resin(const Product& product);

/// Parts by volume turned to mass, over parts by mass, minus 1 (0 when only one is printed).
double parts_clash(const Product& product);

}  // namespace wetout::resin
