// The date part that every reader shares.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "cursor.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {

struct DateParts {
  int year = 0;
  int month = 0;
  int day = 0;
};

/// "2026-06-14" in form; wrong_date() judges the rest.
std::optional<DateParts> take_date(Cursor& cursor);

/// Why the calendar has no such day, empty when it has.
std::string wrong_date(const DateParts& parts);

Date to_date(const DateParts& parts);

}  // namespace wetout::time
