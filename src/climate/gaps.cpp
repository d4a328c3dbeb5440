#include "gaps.hpp"

#include <vector>

namespace wetout::climate {
namespace {

bool has_humidity(const WeatherPoint& point) { return point.dew_point || point.relative_humidity; }

// Gaps between known instants, and at the ends of the weather.
std::vector<Gap> gaps_between(const std::vector<time::Instant>& known, const Weather& weather) {
  if (known.empty()) return {{weather.first(), weather.last()}};
  std::vector<Gap> out;
  time::Instant before = weather.first();
  const auto look = [&](time::Instant next) {
    if (next - before > weather.gap_over) out.push_back({before, next});
    before = next;
  };
  for (const time::Instant at : known) look(at);
  look(weather.last());
  return out;
}

double hours_of(const std::vector<Gap>& gaps) {
  double out = 0.0;
  for (const Gap& gap : gaps) out += static_cast<double>((gap.until - gap.from).count()) / 3600.0;
  return out;
}

std::vector<time::Instant> instants(const Weather& weather, bool of_humidity) {
  std::vector<time::Instant> out;
  out.reserve(weather.points.size());
  for (const WeatherPoint& point : weather.points) {
    if (!of_humidity || has_humidity(point)) out.push_back(point.at);
  }
  return out;
}

}  // namespace

void find_gaps(Weather& weather) {
  std::erase_if(weather.notices, [](const base::Notice& n) {
    return n.code == "weather.gap" || n.code == "weather.no_humidity" ||
           n.code == "weather.humidity_gap";
  });
  weather.gaps = gaps_between(instants(weather, false), weather);
  const std::vector<time::Instant> humid = instants(weather, true);
  weather.humidity_gaps = gaps_between(humid, weather);
  if (!weather.gaps.empty()) {
    weather.notices.push_back({.code = "weather.gap",
                               .text = "the air is not known for some of the time",
                               .value = hours_of(weather.gaps),
                               .unit = "h"});
  }
  if (humid.empty()) {
    weather.notices.push_back({.code = "weather.no_humidity",
                               .text = "the weather has no humidity: limits of dew point and "
                                       "humidity are not checked"});
  } else if (!weather.humidity_gaps.empty()) {
    weather.notices.push_back({.code = "weather.humidity_gap",
                               .text = "the humidity is not known for some of the time: limits of "
                                       "dew point and humidity are not checked there",
                               .value = hours_of(weather.humidity_gaps),
                               .unit = "h"});
  }
}

}  // namespace wetout::climate
