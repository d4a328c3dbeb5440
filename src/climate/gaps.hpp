// Where weather is not known.
#pragma once

#include "wetout/climate/weather.hpp"

namespace wetout::climate {

/// Finds gaps and humidity_gaps of weather.points by weather.gap_over, and says them in notices,
/// instead of those that stand there.
void find_gaps(Weather& weather);

}  // namespace wetout::climate
