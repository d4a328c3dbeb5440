// When a person works: hours of the week on the wall clock, and what they are on real days.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/time/read.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::schedule {

struct WeekHours {
  std::array<std::vector<time::DaySpan>, 7> days = {};  ///< Monday first; empty: a day off
  std::vector<time::DateRange> off = {};                ///< whatever the day says
  /// Of single days, whatever the others say.
  std::map<time::Date, std::vector<time::DaySpan>> single = {};
};

/// Hours instead of the usual ones: of a date, of a day of the week, or of every day.
struct HoursInstead {
  std::optional<time::Date> date;
  std::optional<int> weekday;  ///< 0 is Monday
  std::vector<time::DaySpan> spans;
};
/// "2026-06-15 18:00-22:45", "sat 08:00-12:00 14:00-18:00", "18:00-22:00" (every day). Codes
/// "hours.bad", "span.bad", "span.overlap", "date.bad".
base::Result<HoursInstead> read_hours_instead(std::string_view text);
/// The other way.
std::string print(const HoursInstead& hours);

void put_instead(const HoursInstead& instead, WeekHours& hours);

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

/// Spans stay in order, and those that touch are one.
void add_span(std::vector<WorkingSpan>& spans, WorkingSpan more);

/// The hours of real days between two instants, cut to them, in order; spans that touch are one. On
/// a day with a change of clocks a span has the length it really has: an hour that is skipped is
/// not worked, an hour that comes twice is worked twice.
std::vector<WorkingSpan> working_spans(const WeekHours& hours, const time::Zone& zone,
                                       time::Instant from, time::Instant until);

}  // namespace wetout::schedule
