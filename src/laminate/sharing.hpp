// What a coat needs shared out equally into a number of cups, and weighed.
#pragma once

#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/resin/weigh.hpp"

namespace wetout::laminate {

struct Shared {
  std::vector<resin::Weighed> mixes;  ///< equal but for the last
  units::Milligrams losses;           ///< with what is left in the cups
  units::Milligrams margin;
};

/// `need` before batching. More cups lose more, so everything is computed anew for each `n`.
units::Milligrams losses_in(const CoatNeed& need, int n, const Defaults& settings);
units::Milligrams margin_on(const CoatNeed& need, units::Milligrams losses,
                            const Defaults& settings);

/// `request`: everything but the target. Problems: "pour.step_too_coarse", at `key`.
base::Result<Shared> share_out(const CoatNeed& need, int n, const Defaults& settings,
                               resin::WeighRequest request, const std::string& key);

}  // namespace wetout::laminate
