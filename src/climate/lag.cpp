#include "wetout/climate/lag.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "lag_step.hpp"
#include "wetout/base/check.hpp"

namespace wetout::climate {
namespace {

using time::History;
using time::HistoryPoint;
using units::Temperature;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::chrono::hours day{24};
constexpr double day_s = 86400.0;

double seconds(std::chrono::seconds span) { return static_cast<double>(span.count()); }

std::optional<double> kelvin(std::optional<Temperature> t) {
  if (!t) return std::nullopt;
  return t->in_kelvin();
}

/// The first 24 h without their drift: a day that can be repeated without a jump.
std::vector<Stretch> even_day(const History& air) {
  const auto end = air.first() + day;
  const double drift = air.at(end) - air.points().front().value;
  std::vector<HistoryPoint> points;
  for (const HistoryPoint& point : air.points()) {
    if (point.at < end) points.push_back(point);
  }
  points.push_back({end, air.at(end)});
  std::vector<Stretch> stretches;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double from_s = seconds(points[i].at - air.first());
    const double to_s = seconds(points[i + 1].at - air.first());
    stretches.push_back({from_s, to_s - from_s, points[i].value - drift * from_s / day_s,
                         points[i + 1].value - drift * to_s / day_s});
  }
  return stretches;
}

}  // namespace

Temperature settled_start(const History& air_kelvin, units::Duration lag,
                          std::optional<Temperature> floor) {
  const double first = air_kelvin.points().front().value;
  const std::optional<double> least = kelvin(floor);
  double start = least ? std::max(first, *least) : first;
  const double lag_s = units::in_seconds(lag);
  if (lag_s == 0.0 || air_kelvin.last() - air_kelvin.first() < day) {
    return Temperature::kelvin(start);
  }
  const std::vector<Stretch> stretches = even_day(air_kelvin);
  const auto after_a_day = [&](double from, std::optional<double> held) {
    for (const Stretch& stretch : stretches) from = follow(stretch, lag_s, held, from, nullptr);
    return from;
  };
  // Without a floor a day shrinks every difference by the same factor: one day tells the rest.
  const double kept = std::exp(-day_s / lag_s);
  start = (after_a_day(first, std::nullopt) - kept * first) / (1.0 - kept);
  if (!least) return Temperature::kelvin(start);
  // With one, a day never adds to a difference and shrinks it by that factor at least.
  start = std::max(start, *least);
  for (int i = 0; i < 1000; ++i) {
    const double next = std::max(after_a_day(start, least), *least);
    const bool settled = std::abs(next - start) <= 1e-12 * start;
    start = next;
    if (settled) break;
  }
  return Temperature::kelvin(start);
}

Lagged::Lagged(const History& air_kelvin, units::Duration lag, std::optional<Temperature> floor)
    : input_(air_kelvin.points().begin(), air_kelvin.points().end()),
      lag_s_(units::in_seconds(lag)),
      floor_(kelvin(floor)) {
  base::promise(lag_s_ >= 0.0 && std::isfinite(lag_s_), "a lag is 0 or more");
}

Lagged Lagged::from(Temperature start, const History& air_kelvin, units::Duration lag,
                    std::optional<Temperature> floor) {
  Lagged lagged(air_kelvin, lag, floor);
  lagged.run(start.in_kelvin());
  return lagged;
}

Lagged Lagged::settled(const History& air_kelvin, units::Duration lag,
                       std::optional<Temperature> floor) {
  return from(settled_start(air_kelvin, lag, floor), air_kelvin, lag, floor);
}

void Lagged::run(double start_kelvin) {
  double value = lag_s_ == 0.0 ? input_.front().value : start_kelvin;
  if (floor_) value = std::max(value, *floor_);
  pieces_.reserve(input_.size() + 8);
  for (std::size_t i = 0; i + 1 < input_.size(); ++i) {
    const double from_s = seconds(input_[i].at - input_.front().at);
    const double to_s = seconds(input_[i + 1].at - input_.front().at);
    value = follow({from_s, to_s - from_s, input_[i].value, input_[i + 1].value}, lag_s_, floor_,
                   value, &pieces_);
  }
  const double end = input_.back().value;
  follow({seconds(input_.back().at - input_.front().at), infinity, end, end}, lag_s_, floor_, value,
         &pieces_);
}

double Lagged::value(const Piece& piece, double after_first_s) const {
  const double t = after_first_s - piece.start_s;
  const double rest = piece.rest == 0.0 ? 0.0 : piece.rest * std::exp(-t / lag_s_);
  const double free = piece.level + (piece.slope == 0.0 ? 0.0 : piece.slope * t) + rest;
  return floor_ ? std::max(free, *floor_) : free;  // against rounding where it meets the floor
}

const Lagged::Piece& Lagged::piece_at(double after_first_s) const {
  const auto later =
      std::upper_bound(pieces_.begin(), pieces_.end(), after_first_s,
                       [](double s, const Piece& piece) { return s < piece.start_s; });
  return later == pieces_.begin() ? pieces_.front() : *(later - 1);
}

double Lagged::kelvin_at_seconds(double after_first_s) const {
  const double s = std::max(after_first_s, 0.0);
  return value(piece_at(s), s);
}

Temperature Lagged::at(time::Instant instant) const {
  return Temperature::kelvin(kelvin_at_seconds(seconds(instant - input_.front().at)));
}

History Lagged::sampled(units::TempDelta tolerance) const {
  const double allowed = tolerance.in_kelvin();
  base::promise(allowed > 0.0, "a course is sampled to more than 0");
  const double end_s = seconds(input_.back().at - input_.front().at);
  std::vector<HistoryPoint> points;
  double taken_s = -1.0;
  const auto take = [&](const Piece& piece, double s) {
    if (s <= taken_s || s > end_s) return;
    taken_s = s;
    points.push_back(
        {input_.front().at + std::chrono::seconds(static_cast<std::int64_t>(s)), value(piece, s)});
  };
  for (std::size_t i = 0; i < pieces_.size() && pieces_[i].start_s <= end_s; ++i) {
    const Piece& piece = pieces_[i];
    const double until_s = std::min(end_s, i + 1 < pieces_.size() ? pieces_[i + 1].start_s : end_s);
    // A bend between two whole seconds gets a point on each.
    double s = std::ceil(piece.start_s);
    if (s > until_s) continue;
    take(piece, s);
    const double last_s = std::floor(until_s);
    while (piece.rest != 0.0 && s < last_s) {
      // A chord of width h leaves rest exp(-s/lag) (h/lag)^2 / 8 at most.
      const double bend = std::abs(piece.rest) * std::exp((piece.start_s - s) / lag_s_);
      const double wide = lag_s_ * std::sqrt(8.0 * allowed / bend);
      if (!(s + wide < last_s)) break;
      s += std::max(1.0, std::floor(wide));
      take(piece, s);
    }
    take(piece, last_s);
  }
  return *History::of(std::move(points));
}

History lower_of(const History& a, const History& b) {
  std::vector<time::Instant> instants;
  for (const HistoryPoint& point : a.points()) instants.push_back(point.at);
  for (const HistoryPoint& point : b.points()) instants.push_back(point.at);
  std::sort(instants.begin(), instants.end());
  instants.erase(std::unique(instants.begin(), instants.end()), instants.end());
  std::vector<HistoryPoint> points;
  const auto take = [&](time::Instant at) {
    if (points.empty() || points.back().at < at)
      points.push_back({at, std::min(a.at(at), b.at(at))});
  };
  for (std::size_t i = 0; i < instants.size(); ++i) {
    if (i > 0) {
      const double before = a.at(instants[i - 1]) - b.at(instants[i - 1]);
      const double after = a.at(instants[i]) - b.at(instants[i]);
      if ((before < 0.0 && after > 0.0) || (before > 0.0 && after < 0.0)) {
        const double share = before / (before - after);
        const auto whole = std::chrono::seconds(
            static_cast<std::int64_t>(share * seconds(instants[i] - instants[i - 1])));
        take(instants[i - 1] + whole);
        if (whole + std::chrono::seconds(1) < instants[i] - instants[i - 1]) {
          take(instants[i - 1] + whole + std::chrono::seconds(1));
        }
      }
    }
    take(instants[i]);
  }
  return *History::of(std::move(points));
}

}  // namespace wetout::climate
