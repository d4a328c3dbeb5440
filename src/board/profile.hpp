// Building the curves of a board from its stations.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "curve.hpp"

namespace wetout::board {

struct Stations {
  std::vector<double> x, y;
};

/// Exponent of Lamé's curve X^p + Y^p = 1 through the station nearest to a closing round end, with
/// the end at (1, 0) and the widest station at (0, 1). An ellipse gives 2, which is also the most;
/// sharper ends give less.
double round_end_power(double x_of_unit, double y_of_unit);

/// First and last index of the greatest value (they differ on a plateau).
std::pair<std::size_t, std::size_t> summit(const std::vector<double>& y);

/// A curve that rises to its summit and falls after it, level there. `round_tail` and `round_nose`
/// say that the end closes like a root where its value is zero.
Curve rise_and_fall(const Stations& stations, std::size_t first_top, std::size_t last_top,
                    bool round_tail, bool round_nose);

/// How a curve goes on outside its stations.
enum class Beyond { level, straight };

/// A curve monotone between neighbours.
Curve monotone(const Stations& stations, Beyond beyond);

}  // namespace wetout::board
