// Schedules and events whose content follows from a number.
#pragma once

#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

/// A schedule of two steps for each job, made from `n` and the jobs; its result also names the
/// number it got.
NewSchedule sample_schedule(int n, const std::vector<ScheduledJob>& jobs = {{"sandpiper", 1}});

/// Empty when schedule `number` of the log holds exactly sample_schedule(n, jobs).
std::string difference(const Log& log, std::int64_t number, const NewSchedule& expected);

/// Three events: a mix with its parts, what was left of it, and the end of the step.
NewEvents sample_events(int n, const std::string& slug = "sandpiper");

/// Empty when the log holds exactly these events of the job, in this order and with numbers that
/// follow each other, anywhere among its others.
std::string difference(const Log& log, const NewEvents& expected);

}  // namespace wetout::joblog::testing
