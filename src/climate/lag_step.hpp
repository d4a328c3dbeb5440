// One straight stretch of air and what follows it.
#pragma once

#include <optional>
#include <vector>

#include "wetout/climate/lag.hpp"

namespace wetout::climate {

/// Air that goes straight from `from` to `to` in `length_s` (infinite: it stays at `from`).
struct Stretch {
  double start_s = 0.0;
  double length_s = 0.0;
  double from = 0.0;  ///< kelvin
  double to = 0.0;

  [[nodiscard]] double slope() const { return to == from ? 0.0 : (to - from) / length_s; }
};

/// Adds the pieces of the stretch to `pieces` (when there is one) and returns the value at its end.
double follow(const Stretch& air, double lag_s, std::optional<double> floor, double start,
              std::vector<Lagged::Piece>* pieces);

}  // namespace wetout::climate
