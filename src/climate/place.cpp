#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <utility>

#include "gaps.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/time/print.hpp"

namespace wetout::climate {
namespace {

namespace chrono = std::chrono;

// EPW counts 24:00 of a day where others count 00:00 of the next.
time::Instant label_of(time::Instant wall, WeatherKind kind) {
  return kind == WeatherKind::epw ? wall - chrono::seconds(1) : wall;
}

struct DayOfYear {
  chrono::month_day day;
  chrono::seconds since_midnight;
};

DayOfYear day_of(time::Instant wall, WeatherKind kind) {
  const auto day = chrono::floor<chrono::days>(label_of(wall, kind));
  const chrono::year_month_day date(day);
  return {date.month() / date.day(), wall - day};
}

constexpr chrono::month_day leap_day = chrono::February / 29;
constexpr chrono::month_day day_before = chrono::February / 28;
constexpr chrono::month_day day_after = chrono::March / 1;

base::Result<Weather> refused(const Weather& weather, std::string code, std::string message,
                              std::string found, std::string expected) {
  return base::fail({.code = std::move(code),
                     .message = std::move(message),
                     .file = weather.source,
                     .found = std::move(found),
                     .expected = std::move(expected)});
}

base::Result<Weather> too_long(const Weather& weather) {
  return refused(weather, "weather.more_than_a_year",
                 "weather of more than a year cannot be placed on another",
                 time::rfc3339(weather.first(), time::Zone()) + " to " +
                     time::rfc3339(weather.last(), time::Zone()),
                 "a year or less");
}

struct Placed {
  Weather weather;
  bool repeated_28th = false;
  bool left_out_29th = false;
};

void place_on(int year, const Weather& weather, const std::vector<DayOfYear>& days,
              bool has_leap_day, bool spans_leap_day, Placed& out) {
  const bool leap = chrono::year(year).is_leap();
  for (std::size_t i = 0; i < days.size(); ++i) {
    const auto put = [&](chrono::month_day day) {
      WeatherPoint point = weather.points[i];
      point.at =
          chrono::sys_days(chrono::year(year) / day) + days[i].since_midnight - weather.day_offset;
      out.weather.points.push_back(point);
    };
    if (days[i].day == leap_day && !leap) {
      out.left_out_29th = true;
      continue;
    }
    put(days[i].day);
    if (days[i].day == day_before && leap && spans_leap_day && !has_leap_day) {
      put(leap_day);
      out.repeated_28th = true;
    }
  }
}

}  // namespace

base::Result<Weather> place(const Weather& weather, int first_year, int years) {
  if (years < 1 || years > 10 || first_year < 1970 || first_year > 2037 ||
      first_year + years - 1 > 2037) {
    return refused(weather, "weather.bad_year", "weather cannot be placed on these years",
                   years == 1 ? fmt::format("{}", first_year)
                              : fmt::format("{} and {} more", first_year, years - 1),
                   "1 to 10 years from 1970 to 2037");
  }
  if (weather.last() - weather.first() > chrono::days(366)) {
    return too_long(weather);
  }
  std::vector<DayOfYear> days;
  days.reserve(weather.points.size());
  for (const WeatherPoint& point : weather.points) {
    days.push_back(day_of(point.at + weather.day_offset, weather.kind));
  }
  const auto has = [&](chrono::month_day day) {
    return std::any_of(days.begin(), days.end(), [&](const DayOfYear& d) { return d.day == day; });
  };
  const bool spans_leap_day = has(day_before) && has(day_after);
  const bool has_leap_day = has(leap_day);

  Placed out{weather};
  out.weather.typical_year = false;
  out.weather.points.clear();
  for (int year = first_year; year < first_year + years; ++year) {
    place_on(year, weather, days, has_leap_day, spans_leap_day, out);
  }
  std::vector<WeatherPoint>& points = out.weather.points;
  std::stable_sort(points.begin(), points.end(),
                   [](const WeatherPoint& a, const WeatherPoint& b) { return a.at < b.at; });
  // A year with both of its midnights meets itself once in each year; more is another year's days.
  const std::size_t before = points.size();
  points.erase(
      std::unique(points.begin(), points.end(),
                  [](const WeatherPoint& a, const WeatherPoint& b) { return a.at == b.at; }),
      points.end());
  if (before - points.size() > static_cast<std::size_t>(years)) return too_long(weather);
  if (points.size() < 2) {
    return refused(weather, "weather.too_short", "the weather has no days in these years",
                   "29 February only", "weather of other days");
  }
  base::Notices& notices = out.weather.notices;
  notices.push_back({.code = "weather.placed",
                     .text = "a past or typical year was placed on the dates of the plan: a "
                             "climate, not a forecast"});
  if (out.repeated_28th) {
    notices.push_back({.code = "weather.leap_day",
                       .text = "29 February is not in the weather: the day before was repeated"});
  }
  if (out.left_out_29th) {
    notices.push_back(
        {.code = "weather.leap_day", .text = "29 February of the weather was left out"});
  }
  find_gaps(out.weather);
  return std::move(out.weather);
}

}  // namespace wetout::climate
