#include "lag_step.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::climate {
namespace {

using Piece = Lagged::Piece;

/// `t` seconds after the start of the piece.
double value_after(const Piece& piece, double lag_s, double t) {
  const double rest = piece.rest == 0.0 ? 0.0 : piece.rest * std::exp(-t / lag_s);
  return piece.level + (piece.slope == 0.0 ? 0.0 : piece.slope * t) + rest;
}

/// The free course from `start` behind air that is at `air` and goes up `slope`.
Piece free_course(double start_s, double air, double slope, double lag_s, double start) {
  if (lag_s == 0.0) return {start_s, air, slope, 0.0};
  const double level = air - slope * lag_s;
  return {start_s, level, slope, start - level};
}

/// When a free course that starts on the floor or above falls through it, within `length`.
std::optional<double> falls_through(const Piece& piece, double lag_s, double floor, double length) {
  const auto above = [&](double t) { return value_after(piece, lag_s, t) - floor; };
  const auto rate = [&](double t) {
    return piece.slope - (piece.rest == 0.0 ? 0.0 : piece.rest / lag_s * std::exp(-t / lag_s));
  };
  const bool bends_up = piece.rest > 0.0;
  double lowest = length;
  if (bends_up) {
    // Set free on the floor, it rises; rounding must not say otherwise.
    if (rate(0.0) >= 0.0 || above(0.0) <= 0.0) return std::nullopt;
    if (piece.slope > 0.0) {
      lowest = std::min(length, lag_s * std::log(piece.rest / (piece.slope * lag_s)));
    }
  }
  if (!(above(lowest) < 0.0)) return std::nullopt;
  // Newton from the side on which the tangent stays short of the root: it never passes it.
  double t = bends_up ? 0.0 : lowest;
  for (int i = 0; i < 100 && rate(t) < 0.0; ++i) {
    const double step = above(t) / rate(t);
    t = std::clamp(t - step, 0.0, lowest);
    if (std::abs(step) <= 1e-9) break;
  }
  return t;
}

}  // namespace

double follow(const Stretch& air, double lag_s, std::optional<double> floor, double start,
              std::vector<Piece>* pieces) {
  const double slope = air.slope();
  const auto add = [&](const Piece& piece) {
    if (pieces != nullptr) pieces->push_back(piece);
  };
  const auto end_of = [&](const Piece& piece, double left) {
    return std::isfinite(left) ? value_after(piece, lag_s, left) : air.to;
  };

  // Free, held, free again is the most that straight air can do.
  const bool held =
      floor && start <= *floor && (air.from < *floor || (air.from == *floor && slope <= 0.0));
  double now = 0.0;  // since the start of the stretch
  if (!held) {
    const Piece piece = free_course(air.start_s, air.from, slope, lag_s, start);
    add(piece);
    const auto falls = floor ? falls_through(piece, lag_s, *floor, air.length_s) : std::nullopt;
    if (!falls) return end_of(piece, air.length_s);
    now = *falls;
  }
  add({air.start_s + now, *floor, 0.0, 0.0});
  const double warm = slope > 0.0 ? (*floor - air.from) / slope : air.length_s;
  if (warm >= air.length_s) return *floor;
  now = std::max(now, warm);
  const Piece piece = free_course(air.start_s + now, *floor, slope, lag_s, *floor);
  add(piece);
  return end_of(piece, air.length_s - now);
}

}  // namespace wetout::climate
