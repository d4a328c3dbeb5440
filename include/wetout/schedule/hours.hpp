// When a person works: hours of the week on the wall clock, and what they are on real days.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "wetout/time/read.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::schedule {

struct WeekHours {
  std::array<std::vector<time::DaySpan>, 7> days = {};  ///< Monday first; empty: a day off
  std::vector<time::DateRange> off = {};                ///< whatever the day says
};

struct Person {
  std::string id;
  WeekHours hours;
};

/// Something that boards share: stands, rack places.
struct SharedThing {
  std::string id;
  int count = 1;
};

/// Attended work happens within one of these.
struct WorkingSpan {
  time::Instant from;
  time::Instant until;  ///< not included

  friend bool operator==(const WorkingSpan&, const WorkingSpan&) = default;
};

/// The hours of real days between two instants, cut to them, in order; spans that touch are one. On
/// a day with a change of clocks a span has the length it really has: an hour that is skipped is
/// not worked, an hour that comes twice is worked twice.
std::vector<WorkingSpan> working_spans(const WeekHours& hours, const time::Zone& zone,
                                       time::Instant from, time::Instant until);

}  // namespace wetout::schedule
