#include "wetout/climate/room.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "shown_number.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::climate {
namespace {

using units::Temperature;

constexpr Temperature lowest_minimum = Temperature::celsius(-20);
constexpr Temperature highest_minimum = Temperature::celsius(60);
constexpr units::Duration longest_lag = units::days(7);

// Comparisons are written so that a NaN is refused.
base::Problems problems_of(const Room& room) {
  base::Problems problems;
  if (room.kind == RoomKind::heated && !room.heater) {
    problems.push_back({.code = "room.no_minimum",
                        .message = "a heated room needs its heater and the temperature it holds",
                        .expected = R"(heater = { kind = "electric", minimum = "18 C" })"});
  }
  if (room.heater &&
      !(room.heater->minimum >= lowest_minimum && room.heater->minimum <= highest_minimum)) {
    problems.push_back({.code = "room.minimum",
                        .message = "a heater holds from -20 C to 60 C",
                        .found = shown_number(room.heater->minimum.in_celsius(), 2) + " C",
                        .expected = "a temperature, e.g. \"18 C\""});
  }
  if (room.lag && !(*room.lag >= units::Duration{} && *room.lag <= longest_lag)) {
    problems.push_back({.code = "room.lag",
                        .message = "a room's lag is from 0 to 7 days",
                        .found = shown_number(units::in_hours(*room.lag), 3) + " h",
                        .expected = "a time, e.g. \"2.5 h\""});
  }
  if (room.humidity_max && !(*room.humidity_max > 0.0 && *room.humidity_max <= 1.0)) {
    problems.push_back({.code = "room.humidity",
                        .message = "a dehumidifier holds more than 0 % and at most 100 %",
                        .found = shown_number(100.0 * *room.humidity_max, 2) + " %",
                        .expected = "a relative humidity, e.g. \"55 %\""});
  }
  return problems;
}

std::optional<Temperature> minimum_of(const Room& room) {
  if (room.kind != RoomKind::heated || !room.heater) return std::nullopt;
  return room.heater->minimum;
}

/// The highest dew point that the room's air can have, within 1e-4 K along each of its lines.
time::History most_dew_point(const time::History& air, double humidity_max) {
  if (humidity_max >= 1.0) return air;
  // The dew point bends against the air by less than 0.002 per kelvin.
  constexpr double widest_kelvin = 0.5;
  std::vector<time::HistoryPoint> points;
  const auto add = [&](time::Instant at) {
    const Temperature t = Temperature::kelvin(air.at(at));
    points.push_back({at, dew_point(t, humidity_max).in_kelvin()});
  };
  const auto given = air.points();
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (i > 0) {
      const std::int64_t length = (given[i].at - given[i - 1].at).count();
      const double change = std::abs(given[i].value - given[i - 1].value);
      const auto parts = std::min<std::int64_t>(
          length, static_cast<std::int64_t>(std::ceil(change / widest_kelvin)));
      for (std::int64_t part = 1; part < parts; ++part) {
        add(given[i - 1].at + std::chrono::seconds(length * part / parts));
      }
    }
    add(given[i].at);
  }
  return *time::History::of(std::move(points));
}

}  // namespace

bool fouls_the_air(const Room& room) {
  return room.kind == RoomKind::heated && room.heater &&
         room.heater->kind == HeaterKind::unvented_gas;
}

units::Duration room_lag(const Room& room, const ClimateDefaults& defaults) {
  if (room.kind == RoomKind::outdoors) return {};
  return room.lag.value_or(units::hours(defaults.room_lag.value));
}

base::Result<RoomAir> RoomAir::of(const Room& room, const time::History& outdoor_air_kelvin,
                                  std::optional<time::History> outdoor_dew_point_kelvin,
                                  const ClimateDefaults& defaults) {
  base::Problems problems = problems_of(room);
  if (!problems.empty()) return base::fail(std::move(problems));
  return RoomAir(Lagged::settled(outdoor_air_kelvin, room_lag(room, defaults), minimum_of(room)),
                 std::move(outdoor_dew_point_kelvin),
                 room.kind == RoomKind::outdoors ? 1.0 : room.humidity_max.value_or(1.0));
}

std::optional<Temperature> RoomAir::dew_point(time::Instant at) const {
  if (!outdoor_dew_point_) return std::nullopt;
  const Temperature outdoors = Temperature::kelvin(outdoor_dew_point_->at(at));
  return std::min(outdoors, climate::dew_point(air(at), humidity_max_));
}

std::optional<double> RoomAir::humidity(time::Instant at) const {
  const std::optional<Temperature> dew = dew_point(at);
  if (!dew) return std::nullopt;
  return relative_humidity(air(at), *dew);
}

std::optional<time::History> RoomAir::dew_point_history(units::TempDelta tolerance) const {
  if (!outdoor_dew_point_) return std::nullopt;
  return lower_of(*outdoor_dew_point_, most_dew_point(air_history(tolerance), humidity_max_));
}

}  // namespace wetout::climate
