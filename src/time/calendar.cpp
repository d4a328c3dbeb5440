#include "calendar.hpp"

#include <fmt/format.h>

namespace wetout::time {

std::optional<DateParts> take_date(Cursor& cursor) {
  const std::optional<int> year = cursor.number(4);
  if (!year || !cursor.take('-')) return std::nullopt;
  const std::optional<int> month = cursor.number(2);
  if (!month || !cursor.take('-')) return std::nullopt;
  const std::optional<int> day = cursor.number(2);
  if (!day) return std::nullopt;
  return DateParts{*year, *month, *day};
}

std::string wrong_date(const DateParts& parts) {
  if (parts.year < 1) return "years begin with 0001";
  if (parts.month < 1 || parts.month > 12) {
    return fmt::format("there is no month {:02}", parts.month);
  }
  const Date date = to_date(parts);
  if (date.ok()) return "";
  const unsigned last = static_cast<unsigned>(
      std::chrono::year_month_day_last(date.year() / date.month() / std::chrono::last).day());
  return fmt::format("{:04}-{:02} has {} days", parts.year, parts.month, last);
}

Date to_date(const DateParts& parts) {
  return {std::chrono::year(parts.year), std::chrono::month(static_cast<unsigned>(parts.month)),
          std::chrono::day(static_cast<unsigned>(parts.day))};
}

}  // namespace wetout::time
