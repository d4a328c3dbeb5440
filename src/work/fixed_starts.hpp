// Starts that somebody fixed on the command line.
#pragma once

#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/schedule/set_up.hpp"

namespace wetout::work {

/// "step=time" each, put into the boards of `asked`. The step may be named by its beginning, and
/// without its job where there is one; a coat alone is its wet. A time of day alone is the next
/// coming one. Problems have the key "--fix": "fix.bad", "fix.outside" (what is planned),
/// "step.unknown", "step.ambiguous", those of time::read_near() and schedule::steps_of().
base::Problems read_fixed_starts(const std::vector<std::string>& texts, time::Instant now,
                                 const schedule::StepDefaults& defaults, schedule::Asked& asked);

}  // namespace wetout::work
