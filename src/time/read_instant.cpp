#include <fmt/format.h>

#include <optional>
#include <string>

#include "calendar.hpp"
#include "cursor.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::seconds;

base::Problem problem(std::string_view code, std::string message, std::string_view found,
                      std::string hint = "") {
  base::Problem out;
  out.code = code;
  out.message = std::move(message);
  out.found = base::shown(found);
  out.expected = "a time, e.g. \"2026-06-14 18:30\" or \"2026-06-14T18:30:00-07:00\"";
  out.hint = std::move(hint);
  return out;
}

struct ClockParts {
  int hour = 0;
  int minute = 0;
  int second = 0;
};

std::optional<ClockParts> take_clock(Cursor& cursor) {
  ClockParts out;
  const std::optional<int> hour = cursor.number(2);
  if (!hour || !cursor.take(':')) return std::nullopt;
  const std::optional<int> minute = cursor.number(2);
  if (!minute) return std::nullopt;
  out.hour = *hour;
  out.minute = *minute;
  if (!cursor.take(':')) return out;
  const std::optional<int> second = cursor.number(2);
  if (!second) return std::nullopt;
  out.second = *second;
  if (cursor.take('.')) {
    if (cursor.count_digits() == 0) return std::nullopt;
    cursor.skip_digits();
  }
  return out;
}

// "Z", "+02:00", "-07:00"; the outer optional is empty when it is malformed.
std::optional<std::optional<seconds>> take_offset(Cursor& cursor) {
  if (cursor.take_any("Zz")) return seconds{0};
  const bool west = cursor.take('-');
  if (!west && !cursor.take('+')) return std::optional<seconds>();
  const std::optional<int> hour = cursor.number(2);
  if (!hour || *hour > 23 || !cursor.take(':')) return std::nullopt;
  const std::optional<int> minute = cursor.number(2);
  if (!minute || *minute > 59) return std::nullopt;
  const seconds offset = std::chrono::hours(*hour) + minutes(*minute);
  return west ? -offset : offset;
}

// A leap second stands at 23:59:60 UTC at the end of a month.
bool may_be_leap_second(Instant instant) {
  const auto day = std::chrono::floor<days>(instant);
  return instant == day && unsigned{Date(day).day()} == 1;
}

base::Result<Instant> in_zone(WallTime wall, const Zone& zone, std::string_view text) {
  const int year = static_cast<int>(Date(std::chrono::floor<days>(wall)).year());
  if (year < 1970 || year > 2037) {
    return base::fail(problem("time.beyond",
                              "the rules of time zones are known from 1970 to 2037 only", text,
                              "write the offset from UTC, such as -07:00"));
  }
  const WallReading reading = zone.read(wall);
  if (reading.kind == WallReading::Kind::once) return reading.first;
  const bool skipped = reading.kind == WallReading::Kind::skipped;
  std::string message =
      skipped ? "this time does not exist in " + zone.name() + ": clocks are put forward over it"
              : "this time exists twice in " + zone.name() + ": clocks are put back over it";
  return base::fail(problem(skipped ? "time.skipped" : "time.twice", std::move(message), text,
                            "write \"" + rfc3339(reading.first, zone) + "\" or \"" +
                                rfc3339(reading.second, zone) + "\""));
}

}  // namespace

base::Result<Instant> read_instant(std::string_view text, const Zone& zone) {
  const auto bad = [&](std::string message, std::string hint = "") {
    return base::fail(problem("time.bad", std::move(message), text, std::move(hint)));
  };
  Cursor cursor(text);
  cursor.skip_blanks();
  const std::optional<DateParts> date = take_date(cursor);
  if (!date) return bad("this does not begin with a date");
  if (const std::string wrong = wrong_date(*date); !wrong.empty()) return bad(wrong);
  if (!cursor.take_any("Tt ")) {
    return bad("the time of day is missing",
               fmt::format("write \"{} 18:30\"", print(to_date(*date))));
  }
  cursor.skip_blanks();
  const std::optional<ClockParts> clock = take_clock(cursor);
  if (!clock)
    return bad("the time of day cannot be read", "write hours and minutes, such as 08:30");
  if (clock->hour > 23 || clock->minute > 59 || clock->second > 60) {
    return bad("there is no such time of day",
               clock->hour == 24 ? "midnight is 00:00 of the next day" : "");
  }
  const std::optional<std::optional<seconds>> offset = take_offset(cursor);
  if (!offset) return bad("the offset from UTC cannot be read", "write it as -07:00, or Z for UTC");
  cursor.skip_blanks();
  if (!cursor.at_end()) return bad("something stands after the time");

  const WallTime wall = std::chrono::local_days(to_date(*date)) + std::chrono::hours(clock->hour) +
                        minutes(clock->minute) + seconds(clock->second);
  const base::Result<Instant> out =
      *offset ? base::Result<Instant>(Instant(wall.time_since_epoch() - **offset))
              : in_zone(wall, zone, text);
  if (out && clock->second == 60 && !may_be_leap_second(*out)) {
    return bad("a second 60 only exists at the end of a month in UTC");
  }
  return out;
}

}  // namespace wetout::time
