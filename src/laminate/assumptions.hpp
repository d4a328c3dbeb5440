// The coats of a plan, and which defaults they hang on.
#pragma once

#include <cstddef>
#include <vector>

#include "coat_need.hpp"
#include "wetout/resin/working_time.hpp"

namespace wetout::laminate {

/// What stays the same while defaults are moved.
struct PlanRun {
  const PlanInput& input;
  const std::vector<std::size_t>& order;  ///< of the coats, as they go on
  const Geometry& geometry;
  const resin::WorkingTimes& times;
};

/// Coats in file order.
struct Outcome {
  std::vector<CoatState> needs;  ///< before batching
  std::vector<CoatState> coats;
};

/// All problems of all coats.
base::Result<Outcome> compute(const PlanRun& run, const Defaults& values);

/// Moves each default by 1 % of its range, both ways, and lists those that move a coat. Only the
/// cure's are not moved: the clocks say themselves what they hang on.
std::vector<Assumption> assumptions_of(const PlanRun& run, const Defaults& values,
                                       const Outcome& outcome);

}  // namespace wetout::laminate
