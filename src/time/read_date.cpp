// Dates and the spans of working hours.
#include <fmt/format.h>

#include <string>

#include "calendar.hpp"
#include "cursor.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

constexpr std::string_view one_day = "a date, e.g. \"2026-06-14\"";
constexpr std::string_view some_days =
    "a date or a range of dates, e.g. \"2026-06-21\" or \"2026-07-03/2026-07-05\"";

base::Problem problem(std::string_view code, std::string message, std::string_view found,
                      std::string_view expected, std::string hint = "") {
  base::Problem out;
  out.code = code;
  out.message = std::move(message);
  out.found = base::shown(found);
  out.expected = expected;
  out.hint = std::move(hint);
  return out;
}

std::string_view trimmed(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

base::Result<Date> whole_date(std::string_view part, std::string_view typed,
                              std::string_view expected) {
  Cursor cursor(trimmed(part));
  const std::optional<DateParts> parts = take_date(cursor);
  if (!parts) {
    return base::fail(problem("date.bad", "this is not a date", typed, expected));
  }
  if (!cursor.at_end()) {
    return base::fail(problem("date.bad", "something stands after the date", typed, expected));
  }
  if (const std::string wrong = wrong_date(*parts); !wrong.empty()) {
    return base::fail(problem("date.bad", wrong, typed, expected));
  }
  return to_date(*parts);
}

// "8:00", "18:30", "24:00".
std::optional<std::chrono::minutes> take_clock(Cursor& cursor) {
  const std::optional<int> hour = cursor.number(cursor.count_digits() == 1 ? 1 : 2);
  if (!hour || !cursor.take(':')) return std::nullopt;
  const std::optional<int> minute = cursor.number(2);
  if (!minute || *minute > 59 || *hour > 24 || (*hour == 24 && *minute > 0)) return std::nullopt;
  return std::chrono::hours(*hour) + std::chrono::minutes(*minute);
}

}  // namespace

base::Result<Date> read_date(std::string_view text) { return whole_date(text, text, one_day); }

base::Result<DateRange> read_date_range(std::string_view text) {
  const std::size_t slash = text.find('/');
  const base::Result<Date> first = whole_date(text.substr(0, slash), text, some_days);
  if (!first) return base::fail(first.error());
  if (slash == std::string_view::npos) return DateRange{*first, *first};
  const base::Result<Date> last = whole_date(text.substr(slash + 1), text, some_days);
  if (!last) return base::fail(last.error());
  if (*last < *first) {
    return base::fail(problem("date.bad", "the range runs backwards", text, some_days,
                              "write \"" + print(*last) + "/" + print(*first) + "\""));
  }
  return DateRange{*first, *last};
}

base::Result<DaySpan> read_day_span(std::string_view text) {
  constexpr std::string_view expected = "hours of one day, e.g. \"18:00-22:00\"";
  Cursor cursor(trimmed(text));
  const std::optional<std::chrono::minutes> from = take_clock(cursor);
  cursor.skip_blanks();
  const bool dash = cursor.take('-') || cursor.take("\u2013") || cursor.take("to ");
  cursor.skip_blanks();
  const std::optional<std::chrono::minutes> until = take_clock(cursor);
  if (!from || !dash || !until || !cursor.at_end()) {
    return base::fail(problem("span.bad", "these are not the hours of a day", text, expected,
                              "from 00:00 to 24:00, hours and minutes on both sides"));
  }
  if (*until <= *from) {
    return base::fail(
        problem("span.bad", "the span must end after it begins", text, expected,
                "past midnight, write two spans: one until 24:00, one from 00:00 on the next day"));
  }
  return DaySpan{*from, *until};
}

}  // namespace wetout::time
