// Printing times. English names of days and months, independent of the locale.
#pragma once

#include <string>

#include "wetout/time/read.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::time {

/// "2026-06-14T18:30:00-07:00". UTC itself ends in "Z"; a zone that happens to be at UTC, such as
/// Europe/London in winter, in "+00:00". An offset with seconds (local mean time, long ago) cannot
/// be written in RFC 3339 and is printed in UTC. Years 0001 to 9999; others are a bug.
std::string rfc3339(Instant instant, const Zone& zone);

/// "14:32", seconds dropped.
std::string clock_time(Instant instant, const Zone& zone);

/// "Sun 14 Jun 2026 14:32".
std::string print_wall(Instant instant, const Zone& zone);

/// "2026-06-14".
std::string print(Date date);

/// "18:00-22:00".
std::string print(const DaySpan& span);

}  // namespace wetout::time
