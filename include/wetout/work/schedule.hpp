// `schedule`: when to start each step of one or several boards.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct ScheduleProgress {
  double elapsed_s = 0.0;
  bool found = false;               ///< something that fits
  std::optional<std::string> text;  ///< how good it is, for people
};

struct ScheduleRequest {
  std::vector<std::string> jobs;                 ///< each of the log, or a job file
  std::optional<std::filesystem::path> weather;  ///< else the shop's
  /// As typed: a time, or a time of day alone (the next coming one). Else now, and 14 days on or
  /// the weather's end.
  std::optional<std::string> from, until;
  std::vector<std::string> fixed;  ///< "coat/step=time", with several boards "job/coat/step=time"
  std::vector<std::string> hours;  ///< schedule::read_hours_instead
  std::string guard = "normal";    ///< "none", "normal", "wide"
  std::string prefer = "finish";   ///< "finish", "slack", "visits"
  int alternatives = 0;
  double time_limit_s = 10.0;
  std::optional<std::filesystem::path> calendar;  ///< written there too, as iCalendar
  /// Seconds since the call, whether to stop with the best so far, and what to tell meanwhile. The
  /// library has no clock of its own.
  std::function<double()> elapsed_s;
  std::function<bool()> interrupted;
  std::function<void(const ScheduleProgress&)> progress;
};

struct ScheduleAnswer {
  report::ScheduleDocument document;
  units::System units = units::System::us;  ///< of the shop
  time::Zone zone;                          ///< of the shop
  bool unchanged = false;                   ///< the last schedule already said so: not saved again
  bool interrupted = false;                 ///< with nothing to show
  bool calendar_written = false;
};

/// A file is planned first, and its plan saved, unless the workshop is on a dry run. A schedule is
/// saved unless nothing fits, nothing changed or it is a dry run. Where nothing fits that is no
/// problem: the document says why, and what would help.
/// Problems: those of plan(), files, climate::place(), schedule::set_up(); "schedule.shops_differ",
/// "schedule.job_twice", "step.unknown", "step.ambiguous", "fix.bad", "time.order",
/// "weather.outside", "weather.not_named", "hours.bad"; those of files::write_made(), of which all
/// that can be known before are told before. Throws joblog::StoreError.
base::Result<ScheduleAnswer> schedule(const Workshop& workshop, const ScheduleRequest& request);

}  // namespace wetout::work
