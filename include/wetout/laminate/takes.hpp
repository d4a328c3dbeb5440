// What coats take at other losses and speeds than the shop's: how records are compared with plans.
#pragma once

#include <span>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/make_plan.hpp"

namespace wetout::laminate {

struct Taking {
  units::Milligrams resin;                ///< kept and lost, but for what stays in cups
  std::optional<units::Duration> spread;  ///< attended time of one person; of an install: none
};

/// For each case the coats of `input` in file order, with `cases` in place of the shop's losses and
/// `pace` in place of its speeds: what every coat takes before anyone thinks of cups and margins.
/// Problems as make_plan() has them of board and coats.
base::Result<std::vector<std::vector<Taking>>> takings(const PlanInput& input,
                                                       std::span<const Losses> cases,
                                                       const Spreading& pace,
                                                       const Defaults& values = defaults());

}  // namespace wetout::laminate
