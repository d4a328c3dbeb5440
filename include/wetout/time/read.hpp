// Reading times, dates and spans as people and other programs write them. Problems carry code,
// message, found, expected, hint; the caller adds file, line, key.
#pragma once

#include <chrono>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::time {

using Date = std::chrono::year_month_day;

/// RFC 3339 with its offset as it stands ("2026-06-14T18:30:00-07:00", "...Z"), or a wall time of
/// `zone` ("2026-06-14 18:30", "2026-06-14T18:30:00"). Seconds may be left out, fractions of a
/// second are dropped, the leap second 23:59:60 UTC at the end of a month is the second after it.
/// Codes: "time.bad"; "time.skipped" and "time.twice" for a wall time that does not exist or exists
/// twice, with both readings in the hint; "time.beyond" for a wall time outside 1970 to 2037,
/// where the rules of zones are not known well enough.
base::Result<Instant> read_instant(std::string_view text, const Zone& zone);

/// "2026-06-14". Code "date.bad".
base::Result<Date> read_date(std::string_view text);

struct DateRange {
  Date first;
  Date last;  ///< included

  friend bool operator==(const DateRange&, const DateRange&) = default;
};

/// "2026-07-03/2026-07-05", both included, or a single day "2026-06-21". Code "date.bad".
base::Result<DateRange> read_date_range(std::string_view text);

/// A part of a day on the wall clock, as minutes from midnight.
struct DaySpan {
  std::chrono::minutes from{0};
  std::chrono::minutes until{0};  ///< after `from`, at most 24 h

  friend bool operator==(const DaySpan&, const DaySpan&) = default;
};

/// "18:00-22:00"; "24:00" may end it. Code "span.bad".
base::Result<DaySpan> read_day_span(std::string_view text);

}  // namespace wetout::time
