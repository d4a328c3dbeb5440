// The modes of a chain of cells: shapes in which warmth only fades, each at its own speed.
// Conduction in a body that is the product of two chains is then exact for any length of time, for
// its two directions do not mind each other.
#pragma once

#include <cstddef>
#include <vector>

#include "wetout/resin/reacting_body.hpp"

namespace wetout::resin {

/// dt/dt = L t, t measured from the air, with L = shape diag(-fading) weight and weight = shape^-1.
struct Modes {
  std::vector<double> fading;  ///< 1/s, at least 0
  std::vector<double> shape;   ///< by rows: cell, mode
  std::vector<double> weight;  ///< by rows: mode, cell
  [[nodiscard]] std::size_t size() const { return fading.size(); }
};

Modes modes_of(const Chain& chain);

}  // namespace wetout::resin
