// What the readers of weather take for a gap and how they draw whole degrees
// (docs/formats/weather.md).
#pragma once

#include "wetout/base/cited.hpp"

namespace wetout::climate {

struct WeatherDefaults {
  using S = base::Standing;
  using Value = base::Default<double>;

  /// A gap is a span without a value that is longer than the first two, or than the last; minutes
  /// but for the first.
  Value gap_spacings{
      "weather.gap_spacings", 1.5, 1.1, 3.0, {"", "times the usual spacing", S::assumed}};
  Value gap_least{"weather.gap_least", 90.0, 60.0, 180.0, {"", "an hour is missing", S::assumed}};
  Value gap_most{"weather.gap_most", 360.0, 180.0, 720.0, {"", "a morning is missing", S::assumed}};

  /// Length of the straight lines that a smoothed course is made of, minutes.
  Value smooth_step{
      "weather.smooth_step", 15.0, 5.0, 30.0, {"", "bends between whole hours", S::assumed}};
};

/// Calls f(default, unit word) for each value.
template <class D, class F>
void visit(D& defaults, F&& f) requires requires {
  defaults.gap_spacings;
}
{
  f(defaults.gap_spacings, "times");
  f(defaults.gap_least, "min");
  f(defaults.gap_most, "min");
  f(defaults.smooth_step, "min");
}

}  // namespace wetout::climate
