#include <chrono>
#include <utility>

#include "gaps.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/time/print.hpp"

namespace wetout::climate {
namespace {

using std::chrono::hours;

constexpr hours day{24};
constexpr hours longest{366 * 24};

base::Result<Extended> refused(const Weather& weather, base::Problem problem) {
  problem.file = weather.source;
  return base::fail(std::move(problem));
}

}  // namespace

base::Result<Extended> extended(const Weather& weather, time::Instant until) {
  const time::Instant end = weather.last();
  if (until <= end) return Extended{weather, end};
  if (weather.first() > end - day) {
    return refused(weather, {.code = "weather.too_short",
                             .message = "the weather is too short to go on from",
                             .found = time::rfc3339(weather.first(), time::Zone()) + " to " +
                                      time::rfc3339(end, time::Zone()),
                             .expected = "24 hours or more"});
  }
  if (until > end + longest) {
    return refused(weather, {.code = "weather.too_far",
                             .message = "the weather ends long before",
                             .found = "its end is " + time::rfc3339(end, time::Zone()),
                             .expected = "an end at most a year before " +
                                         time::rfc3339(until, time::Zone())});
  }
  Extended out{weather, end};
  std::vector<WeatherPoint>& points = out.weather.points;
  std::vector<WeatherPoint> last_day;
  for (const WeatherPoint& point : points) {
    if (point.at > end - day) last_day.push_back(point);
  }
  for (auto shift = std::chrono::seconds(day); points.back().at < until; shift += day) {
    for (WeatherPoint point : last_day) {
      point.at += shift;
      points.push_back(point);
      if (point.at >= until) break;
    }
  }
  out.weather.notices.push_back({.code = "weather.repeated",
                                 .text = "beyond its end the last day of the weather is repeated"});
  find_gaps(out.weather);
  return out;
}

}  // namespace wetout::climate
