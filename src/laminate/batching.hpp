// From what a coat needs to cups: how many, which, and what the scale shows.
#pragma once

#include <cstddef>

#include "coat_need.hpp"
#include "wetout/resin/working_time.hpp"

namespace wetout::laminate {

/// Fills in losses of the cups, margin, rounding, mix and the batches. The fewest batches whose
/// every cup is not filled above `cup.fill`, is emptied and is spread before it must not be used
/// any more; equal but for the last; the default cup before larger ones.
/// Problems: "plan.goes_off", "pour.step_too_coarse", "resin.no_time"; keys "coat[i]...".
base::Result<void> batch(const PlanInput& input, std::size_t index, const Defaults& settings,
                         const resin::WorkingTimes& times, CoatState& state);

}  // namespace wetout::laminate
