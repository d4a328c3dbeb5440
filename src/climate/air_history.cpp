// Weather as courses over time.
#include <math.h>  // pchip.hpp of Boost 1.74 leaves it out

#include <boost/math/interpolators/pchip.hpp>
#include <span>
#include <utility>
#include <vector>

#include "wetout/base/check.hpp"
#include "wetout/climate/humid_air.hpp"
#include "wetout/climate/weather.hpp"

namespace wetout::climate {
namespace {

using Points = std::vector<time::HistoryPoint>;

constexpr std::size_t fewest_for_cubic = 4;

double seconds_after(time::Instant from, time::Instant at) {
  return static_cast<double>((at - from).count());
}

// A monotone cubic (fritsch1984) through the points of a run without gaps, cut into straight lines.
void smooth_run(std::span<const time::HistoryPoint> run, std::chrono::seconds step, Points& out) {
  if (run.size() < fewest_for_cubic) {
    out.insert(out.end(), run.begin(), run.end());
    return;
  }
  std::vector<double> x;
  std::vector<double> y;
  for (const time::HistoryPoint& point : run) {
    x.push_back(seconds_after(run.front().at, point.at));
    y.push_back(point.value);
  }
  const boost::math::interpolators::pchip<std::vector<double>> cubic(std::move(x), std::move(y));
  out.push_back(run.front());
  for (std::size_t i = 1; i < run.size(); ++i) {
    const std::chrono::seconds span = run[i].at - run[i - 1].at;
    const long parts = (span + step - std::chrono::seconds(1)) / step;  // rounded up
    for (long part = 1; part < parts; ++part) {
      const time::Instant at = run[i - 1].at + span * part / parts;
      out.push_back({at, cubic(seconds_after(run.front().at, at))});
    }
    out.push_back(run[i]);
  }
}

Points smoothed(const Points& points, std::chrono::seconds step, const std::vector<Gap>& gaps) {
  Points out;
  const std::span<const time::HistoryPoint> all(points);
  std::size_t from = 0;
  for (const Gap& gap : gaps) {
    std::size_t until = from;
    while (until < all.size() && all[until].at <= gap.from) ++until;
    if (until > from) smooth_run(all.subspan(from, until - from), step, out);
    from = until;
  }
  if (from < all.size()) smooth_run(all.subspan(from), step, out);
  return out;
}

time::History history(Points points) {
  base::Result<time::History> out = time::History::of(std::move(points));
  base::promise(out.has_value(), "weather that readers made is a history");
  return std::move(*out);
}

}  // namespace

time::History air_history(const Weather& weather) {
  Points points;
  points.reserve(weather.points.size());
  for (const WeatherPoint& point : weather.points) {
    points.push_back({point.at, point.air.in_kelvin()});
  }
  if (weather.whole_degree_air) points = smoothed(points, weather.smooth_step, weather.gaps);
  return history(std::move(points));
}

std::optional<time::History> dew_point_history(const Weather& weather) {
  Points points;
  for (const WeatherPoint& point : weather.points) {
    if (point.dew_point) {
      points.push_back({point.at, point.dew_point->in_kelvin()});
    } else if (point.relative_humidity) {
      points.push_back({point.at, dew_point(point.air, *point.relative_humidity).in_kelvin()});
    }
  }
  if (points.empty()) return std::nullopt;
  if (weather.whole_degree_dew_point) {
    points = smoothed(points, weather.smooth_step, weather.humidity_gaps);
  }
  return history(std::move(points));
}

}  // namespace wetout::climate
