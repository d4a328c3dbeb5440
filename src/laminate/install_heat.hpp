// Whether resin between a box and foam gets too hot for the foam.
#pragma once

#include "coat_need.hpp"
#include "wetout/resin/working_time.hpp"

namespace wetout::laminate {

resin::FillSurroundings fill_surroundings(const Defaults& settings);

/// Of an install coat with an epoxy: the peak of its fill, and when that is above what the foam
/// takes, what would do: a slower hardener of the shop, or two fills.
base::Result<void> check_fill(const PlanInput& input, const CoatSpec& coat,
                              const Defaults& settings, const resin::WorkingTimes& times,
                              CoatState& state);

}  // namespace wetout::laminate
