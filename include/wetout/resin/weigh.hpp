// From the mass a batch needs to what the scale will show.
#pragma once

#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/units/milligrams.hpp"

namespace wetout::resin {

struct WeighRequest {
  units::Milligrams target;             ///< A + B + additives, at least
  double hardener_per_resin = 0.0;      ///< by mass
  double tolerance = 0.0;               ///< share of part B
  std::vector<double> additive_shares;  ///< of A + B, each on top
  units::Milligrams step;               ///< of the scale; every running total is a multiple
  double raise_limit = 2.0;             ///< times the target
};

struct Weighed {
  units::Milligrams part_a;
  units::Milligrams part_b;
  std::vector<units::Milligrams> additives;  ///< each at least one step
  units::Milligrams total;                   ///< never below the target
  double off_ratio = 0.0;  ///< part B over what part A wants, minus 1; |off_ratio| <= tolerance
};

/// The least mass on the scale's grid that is enough and holds the ratio. A batch too small for its
/// step is raised until it does; above `raise_limit` times the target it is refused
/// ("pour.step_too_coarse"), naming the step that would do.
base::Result<Weighed> weigh(const WeighRequest& request);

}  // namespace wetout::resin
