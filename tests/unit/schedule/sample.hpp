// Weather, room and resin for the tests, in code so that single values are easily changed.
#pragma once

#include <chrono>
#include <cmath>
#include <numbers>

#include "wetout/schedule/limits.hpp"

namespace wetout::schedule::sample {

using time::Instant;
using units::Temperature;

inline const Instant midnight = std::chrono::sys_days{std::chrono::year{2026} / 6 / 14};

inline Instant hours_on(double hours) {
  return midnight + std::chrono::seconds(std::llround(hours * 3600.0));
}

/// `days` of hourly points; `air(h)`, `dew(h)` in celsius.
template <class Air, class Dew>
climate::Weather weather(int days, Air air, Dew dew) {
  climate::Weather weather;
  for (int h = 0; h <= 24 * days; ++h) {
    climate::WeatherPoint point;
    point.at = hours_on(h);
    point.air = Temperature::celsius(air(h));
    point.dew_point = Temperature::celsius(std::min(dew(h), air(h)));
    weather.points.push_back(point);
  }
  return weather;
}

/// A day around 21 C, warmest at 15 h.
inline double daily(double h, double mean = 21.0, double swing = 5.0) {
  return mean + swing * std::cos((h - 15.0) * std::numbers::pi / 12.0);
}

inline climate::Weather fair(int days = 3) {
  return weather(
      days, [](double h) { return daily(h); }, [](double) { return 9.0; });
}

inline Conditions outdoors(const climate::Weather& weather,
                           climate::Guard guard = climate::Guard::none) {
  climate::Room room;
  room.kind = climate::RoomKind::outdoors;
  return *conditions(weather, room, units::minutes(0.5), guard, weather.first());
}

inline FilmRules rules() {
  FilmRules rules;
  rules.lowest = Temperature::celsius(15);
  rules.highest = Temperature::celsius(30);
  rules.humidity_most = 0.8;
  rules.margin_least = units::TempDelta::kelvin(3);
  rules.core_rise_most = units::TempDelta::kelvin(1);
  return rules;
}

inline OpenFilm film(double start_h, double wet_out_h = 0.5, double gel_h = 4.0,
                     double tack_free_h = 6.0) {
  return {hours_on(start_h), hours_on(start_h + wet_out_h), hours_on(start_h + gel_h),
          hours_on(start_h + tack_free_h)};
}

}  // namespace wetout::schedule::sample
