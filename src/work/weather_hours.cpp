#include "weather_hours.hpp"

#include <algorithm>
#include <chrono>
#include <optional>

#include "wetout/climate/humid_air.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using climate::WeatherPoint;
using time::Instant;
using units::Temperature;

bool is_inside(const std::vector<climate::Gap>& gaps, Instant at) {
  return std::any_of(gaps.begin(), gaps.end(),
                     [&](const climate::Gap& gap) { return gap.from < at && at < gap.until; });
}

// Wind or sun: straight between neighbours that are not further apart than a gap.
class Shown {
 public:
  Shown(const climate::Weather& weather, std::optional<double> WeatherPoint::*member)
      : apart_(weather.gap_over) {
    for (const WeatherPoint& point : weather.points) {
      if (point.*member) points_.push_back({point.at, *(point.*member)});
    }
  }

  [[nodiscard]] std::optional<double> at(Instant at) const {
    const auto next = std::lower_bound(
        points_.begin(), points_.end(), at,
        [](const time::HistoryPoint& point, Instant instant) { return point.at < instant; });
    if (next == points_.end()) return std::nullopt;
    if (next->at == at) return next->value;
    if (next == points_.begin()) return std::nullopt;
    const time::HistoryPoint& before = *(next - 1);
    if (next->at - before.at > apart_) return std::nullopt;
    const double share = std::chrono::duration<double>(at - before.at) /
                         std::chrono::duration<double>(next->at - before.at);
    return before.value + share * (next->value - before.value);
  }

 private:
  std::chrono::seconds apart_;
  std::vector<time::HistoryPoint> points_;
};

// The first whole hour of the wall clock at an instant or after it.
Instant next_hour(Instant at, const time::Zone& zone) {
  const time::WallTime wall = zone.wall(at);
  return at + (std::chrono::ceil<std::chrono::hours>(wall) - wall);
}

}  // namespace

std::vector<report::WeatherHour> weather_hours(const climate::Weather& weather,
                                               const schedule::Conditions& conditions, Instant from,
                                               Instant to, const time::Zone& zone) {
  const time::History air = climate::air_history(weather);
  const auto dew = climate::dew_point_history(weather);
  const Shown wind(weather, &WeatherPoint::wind_m_s), sun(weather, &WeatherPoint::sun_w_m2);
  const auto kelvin = [](const time::History& history, Instant at) {
    return Temperature::kelvin(history.at(at));
  };
  std::vector<report::WeatherHour> hours;
  for (Instant at = next_hour(from, zone); at <= to;
       at = next_hour(at + std::chrono::seconds(1), zone)) {
    report::WeatherHour hour;
    hour.time = time::rfc3339(at, zone);
    hour.wind_m_s = wind.at(at);
    hour.sun_w_m2 = sun.at(at);
    const bool known = !is_inside(conditions.gaps, at);
    if (known) {
      hour.air = kelvin(air, at);
      hour.room = kelvin(conditions.air, at);
      hour.core = kelvin(conditions.core, at);
    }
    if (dew && !is_inside(conditions.humidity_gaps, at)) {
      hour.dew_point = kelvin(*dew, at);
      if (known) {
        hour.humidity = climate::relative_humidity(*hour.air, *hour.dew_point);
        hour.room_dew_point = kelvin(*conditions.dew_point, at);
        hour.room_humidity = climate::relative_humidity(*hour.room, *hour.room_dew_point);
        hour.dew_margin = std::min(*hour.room, *hour.core) - *hour.room_dew_point;
      }
    }
    hours.push_back(std::move(hour));
  }
  return hours;
}

}  // namespace wetout::work
