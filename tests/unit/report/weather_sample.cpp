#include "weather_sample.hpp"

#include <fmt/format.h>

#include <cmath>

namespace wetout::report::sample {
namespace {

using schedule::Limit;
using schedule::State;
using units::Temperature;

std::string at(int day, int minute) {
  return fmt::format("2026-10-{:02}T{:02}:{:02}:00Z", day + minute / 1440, minute % 1440 / 60,
                     minute % 60);
}

WorstStart worst(std::string start, double value, double guarded, double limit, std::string unit) {
  return {.start = start,
          .at = start,
          .value = value,
          .guarded = guarded,
          .limit = limit,
          .unit = std::move(unit),
          .breaks_at_kelvin = -0.5};
}

// From the end of the one before to `minute` of the first day.
void add(WeatherDocument& document, int minute, State ok, std::optional<Limit> limit,
         std::string reason, std::vector<WorstStart> worst = {}) {
  const std::string from = document.windows.empty() ? document.from : document.windows.back().to;
  document.windows.push_back(
      {from, at(24, minute), ok, limit, std::move(reason), std::move(worst)});
}

void add_hours(WeatherDocument& document, int from_hour, int to_hour, bool known) {
  for (int h = from_hour; h <= to_hour; ++h) {
    WeatherHour hour;
    hour.time = at(24, h * 60);
    if (known && (h < 20 || h > 22)) {
      const double warmth = std::cos((h - 15) * 0.2617994);
      hour.air = Temperature::celsius(12 + 6 * warmth);
      hour.humidity = 0.7 - 0.1 * warmth;
      hour.dew_point = Temperature::celsius(7.25);
      hour.room = Temperature::celsius(14 + 4 * warmth);
      hour.core = Temperature::celsius(13.9 + 4 * warmth);
      hour.dew_margin = *hour.core - *hour.dew_point;
      hour.room_dew_point = hour.dew_point;
      hour.room_humidity = 0.6;
      hour.wind_m_s = 4.6;
      hour.sun_w_m2 = std::max(0.0, 410 * warmth);
    }
    document.series.push_back(hour);
  }
}

}  // namespace

WeatherDocument weather() {
  WeatherDocument document;
  document.program = "wetout 0.1.0";
  document.made = at(24, 7 * 60 + 12);
  document.source = "weather/october.csv";
  document.place = "a shed by the sea";
  document.from = at(24, 7 * 60 + 15);
  document.to = at(26, 0);
  document.hours = 40.75;
  document.gaps = {{at(24, 19 * 60), at(24, 23 * 60), "air"},
                   {at(24, 19 * 60), at(24, 23 * 60), "humidity"}};
  add_hours(document, 8, 48, true);
  using enum State;
  add(document, 9 * 60 + 5, refuse, Limit::core_rise, "core warming",
      {worst(at(24, 8 * 60), 2.4, 2.4, 1, "K")});
  add(document, 12 * 60, good, {}, "good");
  add(document, 13 * 60 + 35, notice, Limit::humidity, "humid",
      {worst(at(24, 13 * 60), 0.61, 0.655, 0.6, "share")});
  add(document, 15 * 60, refuse, Limit::humidity, "too humid",
      {worst(at(24, 14 * 60), 0.79, 0.83, 0.8, "share")});
  add(document, 16 * 60 + 10, refuse, Limit::warm, "too warm",
      {worst(at(24, 15 * 60), 33.7, 34.02, 34, "C")});
  add(document, 23 * 60, refuse, Limit::weather, std::string(weather_gap));
  add(document, 28 * 60, refuse, Limit::dew_margin, "too near the dew point",
      {worst(at(24, 23 * 60 + 30), 3.9, 2.7, 3, "K"), worst(at(25, 2 * 60), 2.1, 0.9, 3, "K")});
  add(document, 30 * 60, refuse, Limit::cold, "too cold",
      {worst(at(25, 5 * 60), 12.5, 11.9, 16, "C")});
  add(document, 31 * 60, notice, Limit::cold, "cool", {worst(at(25, 6 * 60), 17.9, 17.3, 18, "C")});
  add(document, 33 * 60 + 20, good, {}, "good");
  add(document, 34 * 60, refuse, Limit::dew_margin, "too near the dew point",
      {worst(at(25, 9 * 60 + 30), 3.6, 2.5, 3, "K")});
  add(document, 35 * 60, refuse, Limit::foul_air, "unvented heater");
  add(document, 48 * 60, refuse, Limit::weather, "weather ends");
  document.resin = "slow";
  document.name = "A resin with slow hardener";
  document.first_resin = true;
  document.wet_out = units::minutes(30);
  document.guard = {climate::Guard::normal, at(24, 0), units::TempDelta::kelvin(0.58),
                    units::TempDelta::kelvin(1)};
  document.room = {climate::RoomKind::heated, units::hours(2.5), Temperature::celsius(12),
                   climate::HeaterKind::electric, 0.65};
  document.core = {climate::FoamKind::xps, units::millimetres(60), units::minutes(11.9)};
  using base::Standing;
  document.limits = {
      {Limit::cold, refuse, 16.0, {}, "C", Standing::sheet, {}},
      {Limit::cold, notice, 18.0, {}, "C", Standing::assumed, {}},
      {Limit::warm, refuse, {}, 34.0, "C", Standing::sheet, {}},
      {Limit::dew_margin, refuse, 3.0, {}, "K", Standing::practice, {}},
      {Limit::humidity, refuse, {}, 0.8, "share", Standing::assumed, units::hours(1)},
      {Limit::humidity, notice, {}, 0.6, "share", Standing::assumed, units::hours(1)},
      {Limit::core_rise, refuse, {}, 0.5, "K", Standing::assumed, {}}};
  document.assumptions = {{"guard.now", 0.5, "K", "assumed", "error of the next hours", {"guard"}}};
  document.notices = {{.code = "weather.gap",
                       .text = "the air is not known for some of the time",
                       .subject = {},
                       .value = 4,
                       .limit = {},
                       .unit = "h"}};
  return document;
}

WeatherDocument bare_weather() {
  WeatherDocument document = weather();
  document.place.clear();
  document.placed = true;
  document.kind = climate::WeatherKind::epw;
  document.gaps.clear();
  document.series.clear();
  add_hours(document, 8, 48, false);
  document.windows = {{document.from, document.to, State::good, {}, "good", {}}};
  document.first_resin = false;
  document.guard = {climate::Guard::none, at(24, 0), {}, {}};
  document.room = {climate::RoomKind::outdoors, {}, {}, {}, {}};
  document.limits.clear();
  document.assumptions.clear();
  document.notices.clear();
  return document;
}

}  // namespace wetout::report::sample
