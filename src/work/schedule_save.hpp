// Keeping a schedule in the log, and what changed since the one before.
#pragma once

#include <string>

#include "scheduling.hpp"
#include "wetout/work/schedule.hpp"

namespace wetout::work {

struct ScheduleToSave {
  const Workshop& workshop;
  const Scheduling& s;
  time::Instant now;
  const std::string& weather_bytes;
  const ScheduleRequest& request;
  ScheduleAnswer& answer;  ///< document: but for number, saved and changes
};

/// Saves unless it is a dry run or the last schedule of the same jobs says the same. Fills in what
/// changed since the last one that holds the first of the jobs, and names other boards of the log
/// that are being worked on. Throws joblog::StoreError.
void save_schedule(ScheduleToSave& save);

}  // namespace wetout::work
