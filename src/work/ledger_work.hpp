// Work that was recorded but not booked: from start to done.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::work {

struct WorkedStep {
  std::string step;  ///< "bottom-lam/wet"
  joblog::Instant done;
  std::int64_t minutes = 0;
};

/// Steps that somebody attends, whose start and end were recorded, the last of each that count, and
/// for which no work was booked. More than 12 h are not an attended step: it was forgotten to say
/// that it was done. In the order of the events.
std::vector<WorkedStep> worked_steps(const std::vector<joblog::EventRow>& events,
                                     const std::vector<joblog::JobWork>& booked);

}  // namespace wetout::work
