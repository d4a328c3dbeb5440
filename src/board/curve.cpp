#include "curve.hpp"

#include <algorithm>
#include <cmath>

#include "wetout/base/check.hpp"

namespace wetout::board {
namespace {

double limited(double slope, double chord) {
  if (slope * chord <= 0.0) return 0.0;
  return std::abs(slope) > 3.0 * std::abs(chord) ? 3.0 * chord : slope;
}

double inner_slope(double h0, double h1, double chord0, double chord1) {
  if (chord0 * chord1 <= 0.0) return 0.0;
  const double parabola = (h1 * chord0 + h0 * chord1) / (h0 + h1);
  return limited(parabola, std::abs(chord0) < std::abs(chord1) ? chord0 : chord1);
}

}  // namespace

std::vector<double> monotone_slopes(std::span<const double> x, std::span<const double> v,
                                    std::optional<double> first, std::optional<double> last) {
  const std::size_t n = x.size();
  base::promise(n >= 2 && v.size() == n, "slopes need two stations");
  std::vector<double> slopes(n);
  const auto width = [&](std::size_t i) { return x[i + 1] - x[i]; };
  const auto chord = [&](std::size_t i) { return (v[i + 1] - v[i]) / width(i); };
  for (std::size_t i = 1; i + 1 < n; ++i)
    slopes[i] = inner_slope(width(i - 1), width(i), chord(i - 1), chord(i));
  // The end piece is a parabola: with its neighbours when nothing cut the slope next to it back.
  slopes[n - 1] = last.value_or(chord(n - 2));
  if (n == 2 && !first && !last) {
    slopes[0] = chord(0);
    return slopes;
  }
  const auto end = [&](double chord_there, double neighbour) {
    return limited(2.0 * chord_there - neighbour, chord_there);
  };
  slopes[0] = first ? *first : end(chord(0), slopes[1]);
  if (!last) slopes[n - 1] = end(chord(n - 2), slopes[n - 2]);
  return slopes;
}

Curve Curve::constant(double value) {
  Curve curve;
  curve.pieces_.push_back({0.0, value, 0.0, 0.0, 0.0, 1.0, 1.0});
  curve.constant_ = true;
  return curve;
}

void Curve::add(std::span<const double> x, std::span<const double> v,
                std::span<const double> slopes, double power) {
  for (std::size_t i = 0; i + 1 < x.size(); ++i) {
    const double h = x[i + 1] - x[i];
    const double chord = (v[i + 1] - v[i]) / h;
    pieces_.push_back({x[i], v[i], slopes[i], (3.0 * chord - 2.0 * slopes[i] - slopes[i + 1]) / h,
                       (slopes[i] + slopes[i + 1] - 2.0 * chord) / (h * h), power, 1.0 / power});
  }
}

const Curve::Piece& Curve::found(double x) const {
  const auto after = std::upper_bound(pieces_.begin() + 1, pieces_.end(), x,
                                      [](double at, const Piece& p) { return at < p.start; });
  return *std::prev(after);
}

}  // namespace wetout::board
