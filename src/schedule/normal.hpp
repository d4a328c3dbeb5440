// The standard normal distribution.
#pragma once

#include <cmath>
#include <numbers>

namespace wetout::schedule {

inline double normal_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

}  // namespace wetout::schedule
