#include "wetout/time/history.hpp"

#include <algorithm>
#include <cmath>

#include "wetout/time/print.hpp"

namespace wetout::time {
namespace {

double seconds_between(Instant from, Instant to) {
  return static_cast<double>((to - from).count());
}

}  // namespace

base::Result<History> History::of(std::vector<HistoryPoint> points) {
  if (points.empty()) {
    return base::fail({.code = "history.empty",
                       .message = "a history needs at least one value",
                       .expected = "one or more instants with their values"});
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!std::isfinite(points[i].value)) {
      return base::fail({.code = "history.not_finite",
                         .message = "a value of the history is not a number",
                         .found = rfc3339(points[i].at, Zone()),
                         .expected = "a finite value at each instant"});
    }
    if (i > 0 && points[i].at <= points[i - 1].at) {
      return base::fail({.code = "history.order",
                         .message = "the instants of a history do not rise",
                         .found = rfc3339(points[i].at, Zone()),
                         .expected = "an instant after " + rfc3339(points[i - 1].at, Zone())});
    }
  }
  return History(std::move(points));
}

History History::constant(double value) { return History({{Instant{}, value}}); }

double History::at(Instant instant) const { return at_seconds(seconds_between(first(), instant)); }

double History::at_seconds(double after_first_s) const {
  if (after_first_s <= 0.0) return points_.front().value;
  if (after_first_s >= seconds_between(first(), last())) return points_.back().value;
  const auto later = std::upper_bound(
      points_.begin(), points_.end(), after_first_s,
      [&](double s, const HistoryPoint& point) { return s < seconds_between(first(), point.at); });
  const HistoryPoint& b = *later;
  const HistoryPoint& a = *(later - 1);
  const double share =
      (after_first_s - seconds_between(first(), a.at)) / seconds_between(a.at, b.at);
  return a.value + share * (b.value - a.value);
}

double History::lowest() const {
  return std::min_element(
             points_.begin(), points_.end(),
             [](const HistoryPoint& a, const HistoryPoint& b) { return a.value < b.value; })
      ->value;
}

double History::highest() const {
  return std::max_element(
             points_.begin(), points_.end(),
             [](const HistoryPoint& a, const HistoryPoint& b) { return a.value < b.value; })
      ->value;
}

}  // namespace wetout::time
