#include "wetout/time/read_near.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string>

#include "cursor.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

using std::chrono::days;
using std::chrono::seconds;

constexpr std::string_view expected =
    "a time, e.g. \"18:30\", \"2026-06-14 18:30\" or \"2026-06-14T18:30:00-07:00\"";

base::Problem problem(std::string message, std::string_view found, std::string hint = "") {
  return {.code = "time.bad",
          .message = std::move(message),
          .found = base::shown(found),
          .expected = std::string(expected),
          .hint = std::move(hint)};
}

// "8:30", "18:30", "18:30:15"; nothing where no time of day stands alone.
std::optional<seconds> clock_alone(std::string_view text) {
  Cursor cursor(text);
  cursor.skip_blanks();
  const std::optional<int> hour = cursor.number(cursor.count_digits() == 1 ? 1 : 2);
  if (!hour || !cursor.take(':')) return std::nullopt;
  const std::optional<int> minute = cursor.number(2);
  if (!minute) return std::nullopt;
  std::optional<int> second = 0;
  if (cursor.take(':')) second = cursor.number(2);
  cursor.skip_blanks();
  if (!second || !cursor.at_end() || *minute > 59 || *second > 59) return std::nullopt;
  return std::chrono::hours(*hour) + std::chrono::minutes(*minute) + seconds(*second);
}

bool begins_with_clock(std::string_view text) {
  Cursor cursor(text);
  cursor.skip_blanks();
  const std::size_t digits = cursor.count_digits();
  cursor.skip_digits();
  return (digits == 1 || digits == 2) && cursor.take(':');
}

// "6:30 pm", "6pm".
bool is_twelve_hours(std::string_view text) {
  while (text.ends_with(' ') || text.ends_with('.')) text.remove_suffix(1);
  if (text.empty() || (text.back() != 'm' && text.back() != 'M')) return false;
  text.remove_suffix(1);
  if (text.ends_with('.')) text.remove_suffix(1);
  return !text.empty() && std::string_view("apAP").find(text.back()) != std::string_view::npos;
}

// Whether this wall time lies on the side, and how often.
int times_on_side(WallTime wall, const Zone& zone, Instant now, Side side) {
  const auto is_on_side = [&](auto at, auto present) {
    return side == Side::past ? at <= present : at >= present;
  };
  const WallReading reading = zone.read(wall);
  switch (reading.kind) {
    case WallReading::Kind::once:
      return is_on_side(reading.first, now) ? 1 : 0;
    case WallReading::Kind::twice:
      return (is_on_side(reading.first, now) ? 1 : 0) + (is_on_side(reading.second, now) ? 1 : 0);
    case WallReading::Kind::skipped:
      // The clock has gone over it, or will, as soon as it shows more.
      return is_on_side(wall, zone.wall(now)) ? 1 : 0;
  }
  base::broken_promise("kind of reading outside its list");
}

base::Result<Instant> with_date(std::chrono::local_days day, seconds clock, const Zone& zone) {
  const long s = clock.count();
  base::Result<Instant> instant = read_instant(
      fmt::format("{} {:02}:{:02}:{:02}", print(Date(day)), s / 3600, s / 60 % 60, s % 60), zone);
  return instant;
}

}  // namespace

base::Result<Instant> read_near(std::string_view text, const Zone& zone, Instant now, Side side) {
  const std::optional<seconds> clock = clock_alone(text);
  if (!clock) {
    if (is_twelve_hours(text)) {
      return base::fail(problem("hours are counted from 00 to 23 here", text,
                                "half past six in the evening is 18:30"));
    }
    if (begins_with_clock(text)) {
      return base::fail(problem("the time of day cannot be read", text,
                                "write hours and minutes, such as 08:30"));
    }
    base::Result<Instant> instant = read_instant(text, zone);
    if (instant) return instant;
    base::Problems problems = instant.error();
    for (base::Problem& one : problems) one.expected = expected;
    return base::fail(std::move(problems));
  }
  if (*clock >= days(1)) {
    return base::fail(problem("there is no such time of day", text,
                              *clock == days(1) ? "midnight is 00:00" : ""));
  }
  // A clock that is put back over midnight may show tomorrow's time already, or yesterday's again.
  const auto today = std::chrono::floor<days>(zone.wall(now));
  const int away = side == Side::past ? -1 : 1;
  for (int day = -away; day != 3 * away; day += away) {
    const auto date = today + days(day);
    const WallTime wall = date + *clock;
    const int times = times_on_side(wall, zone, now, side);
    if (times == 0) continue;
    const WallReading reading = zone.read(wall);
    if (reading.kind == WallReading::Kind::twice && times == 1) {
      return side == Side::past ? reading.first : reading.second;
    }
    return with_date(date, *clock, zone);
  }
  base::broken_promise("every time of day comes within two days");
}

}  // namespace wetout::time
