// What was recorded of a board, as facts for its schedule.
#pragma once

#include <vector>

#include "wetout/joblog/events.hpp"
#include "wetout/schedule/setting.hpp"
#include "wetout/schedule/steps.hpp"
#include "wetout/time/history.hpp"

namespace wetout::work {

struct RecordedWork {
  std::vector<schedule::Fact> facts;
  std::vector<time::HistoryPoint> air;  ///< of the room, in kelvin, by time
};

/// A step has been done when its start, its mixing or its end was recorded; where only one end of
/// it is known, the other follows from its attended time. What was taken back does not count.
RecordedWork recorded_work(const std::vector<joblog::EventRow>& events,
                           const schedule::BoardSteps& steps);

}  // namespace wetout::work
