#include "weather_rules.hpp"

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace wetout::fuzz {
namespace {

using climate::Gap;
using climate::Weather;
using climate::WeatherPoint;

void rule(bool holds, const char* text) {
  if (holds) return;
  std::fprintf(stderr, "broken rule: %s\n", text);
  std::abort();
}

bool within(double value, double low, double high) {
  constexpr double rounding = 1e-6;
  return std::isfinite(value) && value >= low - rounding && value <= high + rounding;
}

void check_gaps(const std::vector<Gap>& gaps, const Weather& weather) {
  for (std::size_t i = 0; i < gaps.size(); ++i) {
    rule(gaps[i].from < gaps[i].until, "a gap has a length");
    rule(gaps[i].from >= weather.first() && gaps[i].until <= weather.last(),
         "a gap lies in the weather");
    rule(i == 0 || gaps[i - 1].until <= gaps[i].from, "gaps do not overlap");
  }
}

void check_point(const WeatherPoint& point) {
  rule(within(point.air.in_celsius(), -70.0, 70.0), "air is in range");
  rule(!point.dew_point || within(point.dew_point->in_celsius(), -70.0, 70.0),
       "dew point is in range");
  rule(!point.dew_point || *point.dew_point <= point.air, "dew point is not above the air");
  rule(!point.relative_humidity ||
           (*point.relative_humidity >= 0.001 && within(*point.relative_humidity, 0.001, 1.1)),
       "humidity is in range");
  rule(!point.wind_m_s || within(*point.wind_m_s, 0.0, 120.0), "wind is in range");
  rule(!point.sun_w_m2 || within(*point.sun_w_m2, 0.0, 2000.0), "sun is in range");
}

void check_history(const time::History& history, const Weather& weather) {
  rule(history.first() >= weather.first() && history.last() <= weather.last(),
       "a history lies in the weather");
  // 0.1 % at -70 C is a dew point of 165 K.
  rule(within(history.lowest(), 165.0, 343.15) && within(history.highest(), 165.0, 343.15),
       "a history is in range");
}

void check_weather(const Weather& weather) {
  rule(weather.points.size() >= 2, "weather has two points");
  for (std::size_t i = 0; i < weather.points.size(); ++i) {
    check_point(weather.points[i]);
    rule(i == 0 || weather.points[i - 1].at < weather.points[i].at, "instants rise");
  }
  check_gaps(weather.gaps, weather);
  check_gaps(weather.humidity_gaps, weather);
  for (const base::Notice& notice : weather.notices) {
    rule(!notice.code.empty() && !notice.text.empty(), "a notice says something");
  }
  const time::History air = climate::air_history(weather);
  check_history(air, weather);
  rule(air.first() == weather.first() && air.last() == weather.last(), "air is known throughout");
  if (const auto dew = climate::dew_point_history(weather)) check_history(*dew, weather);
}

void check_problems(const base::Problems& problems) {
  rule(!problems.empty() && problems.size() <= 21, "a refusal has 1 to 21 problems");
  for (const base::Problem& problem : problems) {
    rule(!problem.code.empty() && !problem.message.empty(), "a problem says something");
    rule(problem.file == source_name, "a problem names the file");
    rule(problem.line >= 0 && problem.column >= 0, "a problem has a place");
    rule(problem.source_line.size() <= 1000, "a problem is short");
  }
}

}  // namespace

void check_answer(const base::Result<Weather>& answer) {
  if (!answer) {
    check_problems(answer.error());
    return;
  }
  check_weather(*answer);
  const time::Instant until = answer->last() + std::chrono::hours(30);
  if (const auto more = climate::extended(*answer, until)) {
    check_weather(more->weather);
    rule(more->weather.last() >= until, "extended weather reaches its end");
  } else {
    check_problems(more.error());
  }
  if (const auto placed = climate::place(*answer, 2027, 2)) {
    check_weather(*placed);
  } else {
    check_problems(placed.error());
  }
}

}  // namespace wetout::fuzz
