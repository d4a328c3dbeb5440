#include "wetout/time/print.hpp"

#include <fmt/format.h>

#include <array>
#include <cstddef>

#include "wetout/base/check.hpp"

namespace wetout::time {
namespace {

using std::chrono::days;
using std::chrono::floor;

struct Fields {
  Date date;
  unsigned weekday = 0;  // 0 is Sunday
  long hour = 0;
  long minute = 0;
  long second = 0;
};

Fields fields(WallTime wall) {
  const std::chrono::local_days day = floor<days>(wall);
  const long seconds = (wall - day).count();
  return {Date(day), std::chrono::weekday(day).c_encoding(), seconds / 3600, seconds / 60 % 60,
          seconds % 60};
}

}  // namespace

std::string rfc3339(Instant instant, const Zone& zone) {
  const long offset_s = zone.offset_at(instant).count();
  if (offset_s % 60 != 0) return rfc3339(instant, Zone());
  const Fields at = fields(zone.wall(instant));
  const int year = static_cast<int>(at.date.year());
  base::promise(year >= 1 && year <= 9999, "a time beyond the years of RFC 3339");
  std::string out =
      fmt::format("{}T{:02}:{:02}:{:02}", print(at.date), at.hour, at.minute, at.second);
  if (zone.name() == "UTC") return out + "Z";
  const long minutes = (offset_s < 0 ? -offset_s : offset_s) / 60;
  return out + fmt::format("{}{:02}:{:02}", offset_s < 0 ? '-' : '+', minutes / 60, minutes % 60);
}

std::string clock_time(Instant instant, const Zone& zone) {
  const Fields at = fields(zone.wall(instant));
  return fmt::format("{:02}:{:02}", at.hour, at.minute);
}

std::string print_wall(Instant instant, const Zone& zone) {
  constexpr auto weekdays =
      std::to_array<std::string_view>({"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"});
  constexpr auto months = std::to_array<std::string_view>(
      {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"});
  const Fields at = fields(zone.wall(instant));
  return fmt::format(
      "{} {} {} {} {:02}:{:02}", weekdays.at(at.weekday), static_cast<unsigned>(at.date.day()),
      months.at(static_cast<std::size_t>(static_cast<unsigned>(at.date.month())) - 1),
      static_cast<int>(at.date.year()), at.hour, at.minute);
}

std::string print(Date date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string print(const DaySpan& span) {
  const auto clock = [](std::chrono::minutes at) {
    return fmt::format("{:02}:{:02}", at.count() / 60, at.count() % 60);
  };
  return clock(span.from) + "-" + clock(span.until);
}

}  // namespace wetout::time
