// A schedule as a calendar for phone and computer: iCalendar, RFC 5545 (docs/formats/calendar.md).
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// A step of an earlier schedule that takes place no more.
struct CancelledStep {
  std::string id;            ///< "job/coat/step"
  time::Instant start, end;  ///< as it was last planned
};

/// What the schedule itself does not know.
struct CalendarFacts {
  /// By job: what it can be told from every other by, even after a rename. A job that is not here
  /// is told by its id.
  std::map<std::string, std::string, std::less<>> identities;
  std::vector<CancelledStep> cancelled;
};

/// One event for each step, with alarms before a visit begins, at each look at a film and before a
/// window closes; CRLF lines. A step keeps its UID from one schedule to the next, and SEQUENCE is
/// the number of the schedule: importing a later file moves what moved and cancels what is
/// cancelled. Times are UTC, so that summer time cannot shift them; texts say them as on a wall of
/// `zone`. An empty timeline makes a calendar without events.
std::string to_calendar(const ScheduleDocument& document, const CalendarFacts& facts,
                        units::System system, const time::Zone& zone);

}  // namespace wetout::report
