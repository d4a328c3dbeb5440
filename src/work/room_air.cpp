#include "room_air.hpp"

#include <algorithm>
#include <chrono>
#include <string>
#include <string_view>
#include <utility>

#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/climate/weather_defaults.hpp"
#include "wetout/files/weather_file.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

// Beyond the weather its last day is repeated for so long: until slow resins are fully cured.
constexpr auto repeated = std::chrono::hours(21 * 24);

std::string_view word(climate::RoomKind kind) {
  switch (kind) {
    case climate::RoomKind::outdoors:
      return "outdoors";
    case climate::RoomKind::unheated:
      return "unheated";
    case climate::RoomKind::heated:
      return "heated";
  }
  return "";
}

// Of what concerns the air alone.
bool is_of_air(const base::Notice& notice) {
  for (const std::string_view code : {"weather.gap", "weather.missing_air", "weather.repeated",
                                      "weather.placed", "weather.leap_day", "weather.ends_early"}) {
    if (notice.code == code) return true;
  }
  return false;
}

int year_of(time::Instant at) {
  const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(at));
  return static_cast<int>(day.year());
}

template <class T>
laminate::Assumption assumption(const base::Default<T>& value, std::string unit) {
  return {std::string(value.name),
          value.value,
          std::move(unit),
          std::string(base::to_string(value.source.standing)),
          std::string(value.source.locator),
          {"room"}};
}

base::Problem outside(const climate::Weather& weather, time::Instant start, bool named,
                      const time::Zone& zone) {
  return {.code = "weather.outside",
          .message = named ? "the weather does not reach the start"
                           : "the weather does not reach the present time",
          .key = named ? "--start" : "--weather",
          .found = time::print_wall(start, zone),
          .expected = time::print_wall(weather.first(), zone) + " to " +
                      time::print_wall(weather.last(), zone),
          .hint = named ? "" : "name a start inside it with --start"};
}

struct Sensible {
  std::vector<time::HistoryPoint> points;
  bool whole = true;
};

// From the start on, as far as the models hold.
Sensible sensible_part(const time::History& air, time::Instant start) {
  const auto holds = [](double kelvin) {
    return senseless_air(units::Temperature::kelvin(kelvin), "").empty();
  };
  Sensible part;
  const double first = air.at(start);
  if (!holds(first)) return {{}, false};
  part.points.push_back({start, first});
  for (const time::HistoryPoint& point : air.points()) {
    if (point.at <= start) continue;
    part.whole = holds(point.value);
    if (!part.whole) break;
    part.points.push_back(point);
  }
  return part;
}

}  // namespace

base::Result<RoomHistory> room_air(const OneResin& resin, const std::filesystem::path& file,
                                   std::optional<time::Instant> start_named) {
  climate::WeatherOptions options;
  options.zone = resin.zone;
  auto weather = files::read_weather(file, options);
  if (!weather) return tl::unexpected(weather.error());
  const time::Instant start = start_named.value_or(resin.now);
  if (weather->typical_year) {
    weather = climate::place(*weather, year_of(start), 2);
    if (!weather) return tl::unexpected(weather.error());
  }
  if (start < weather->first() || start > weather->last()) {
    return base::fail(outside(*weather, start, start_named.has_value(), resin.zone));
  }
  report::CureWeather about{weather->source, time::rfc3339(weather->first(), resin.zone),
                            time::rfc3339(weather->last(), resin.zone),
                            std::string(word(resin.shop.room.kind))};
  time::Instant known_until = weather->last();
  // Less than a day of weather has no day to repeat: its last air holds.
  if (auto longer = climate::extended(*weather, std::max(known_until, start + repeated))) {
    known_until = longer->repeated_from;
    weather = std::move(longer->weather);
  }
  const auto outdoors = climate::air_history(*weather);
  const auto room = climate::RoomAir::of(resin.shop.room, outdoors, std::nullopt);
  if (!room) return tl::unexpected(room.error());
  Sensible part = sensible_part(room->air_history(), start);
  if (part.points.empty()) {
    const auto air = units::Temperature::kelvin(room->air_history().at(start));
    base::Problem problem = senseless_air(air, "cure.beyond_sense").front();
    problem.message = "at the start the room is outside what the models hold for";
    problem.key = "--weather";
    problem.expected = "0 C to 40 C";
    return base::fail(std::move(problem));
  }
  base::Notices notices;
  if (!part.whole) {
    known_until = std::min(known_until, part.points.back().at);
    notices.push_back({.code = "weather.beyond_sense",
                       .text = "later the room is outside what the models hold for: its air "
                               "before is held",
                       .subject = weather->source});
  }
  std::copy_if(weather->notices.begin(), weather->notices.end(), std::back_inserter(notices),
               is_of_air);
  std::vector<laminate::Assumption> assumptions;
  if (!resin.shop.room.lag && resin.shop.room.kind != climate::RoomKind::outdoors) {
    assumptions.push_back(assumption(climate::ClimateDefaults{}.room_lag, "h"));
  }
  if (weather->whole_degree_air) {
    assumptions.push_back(assumption(climate::WeatherDefaults{}.smooth_step, "min"));
  }
  auto air = time::History::of(std::move(part.points));
  if (!air) return tl::unexpected(air.error());
  return RoomHistory{std::move(*air),    start,
                     known_until,        std::move(about),
                     std::move(notices), std::move(assumptions)};
}

}  // namespace wetout::work
