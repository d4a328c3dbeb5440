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

// Where it would be level at the far side of the next interval, a curve that bends one way only has
// at least this many times that interval's chord slope at its near side.
constexpr double bends_one_way = 1.5;

// Before limits. `end` is the interval to a measured end, `next` the one after it.
double slope_by_measured_end(double end, double next, double end_chord, double next_chord) {
  const double parabola = next / (end + next);
  const double rest = next * next - 2.0 * end * end;
  const double bound = rest > 0.0 ? 4.0 * end * end / rest : parabola;
  if (parabola <= bound) return parabola * end_chord + (1.0 - parabola) * next_chord;
  // Less weight than a parabola gives, so start higher: from a slope that keeps the long interval
  // bending one way. Reached gradually, so that boards of nearly equal length are nearly the same.
  const double start = 1.0 + (bends_one_way - 1.0) * std::min(1.0, parabola / bound - 1.0);
  return start * next_chord + bound * (end_chord - start * next_chord);
}

double inner_slope(double slope, double chord0, double chord1) {
  if (chord0 * chord1 <= 0.0) return 0.0;
  return limited(slope, std::abs(chord0) < std::abs(chord1) ? chord0 : chord1);
}

}  // namespace

std::vector<double> monotone_slopes(std::span<const double> x, std::span<const double> v,
                                    const RowEnds& ends) {
  const std::size_t n = x.size();
  base::promise(n >= 2 && v.size() == n, "slopes need two stations");
  std::vector<double> slopes(n);
  const auto width = [&](std::size_t i) { return x[i + 1] - x[i]; };
  const auto chord = [&](std::size_t i) { return (v[i + 1] - v[i]) / width(i); };
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const double before = width(i - 1);
    const double after = width(i);
    double slope = (after * chord(i - 1) + before * chord(i)) / (before + after);
    if (i == 1 && ends.first_measured)
      slope = slope_by_measured_end(before, after, chord(0), chord(1));
    if (i + 2 == n && ends.last_measured)
      slope = slope_by_measured_end(after, before, chord(i), chord(i - 1));
    slopes[i] = inner_slope(slope, chord(i - 1), chord(i));
  }
  if (n == 2 && !ends.first_slope && !ends.last_slope) {
    slopes[0] = slopes[1] = chord(0);
    return slopes;
  }
  const auto parabola = [&](double chord_there, double neighbour) {
    return limited(2.0 * chord_there - neighbour, chord_there);
  };
  if (ends.last_slope) slopes[n - 1] = *ends.last_slope;
  slopes[0] = ends.first_slope ? *ends.first_slope : parabola(chord(0), slopes[1]);
  if (!ends.last_slope) slopes[n - 1] = parabola(chord(n - 2), slopes[n - 2]);
  // A tip of no width must open out: a level start would make a needle of it, and its root, taken
  // for a round end, has no slope there at all.
  constexpr double least_opening = 0.1;  // of the chord
  if (!ends.first_slope && v[0] == 0.0 && slopes[0] == 0.0) slopes[0] = least_opening * chord(0);
  if (!ends.last_slope && v[n - 1] == 0.0 && slopes[n - 1] == 0.0) {
    slopes[n - 1] = least_opening * chord(n - 2);
  }
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
    add({x[i], x[i + 1], {v[i], slopes[i], 0.0}, {v[i + 1], slopes[i + 1], 0.0}, power});
  }
  index();
}

void Curve::add(const Span& span) {
  const double h = span.to - span.from;
  const double chord = (span.stop.value - span.start.value) / h;
  const double s0 = span.start.slope;
  const double s1 = span.stop.slope;
  pieces_.push_back({span.from, span.start.value, s0, (3.0 * chord - 2.0 * s0 - s1) / h,
                     (s0 + s1 - 2.0 * chord) / (h * h), span.power, 1.0 / span.power});
}

Curve Curve::of_spans(std::span<const Span> spans) {
  Curve curve;
  curve.pieces_.reserve(spans.size());
  for (const Span& span : spans) curve.add(span);
  curve.index();
  return curve;
}

void Curve::index() {
  if (pieces_.size() <= few_) return;
  const std::size_t cells = 2 * pieces_.size();
  index_start_ = pieces_.front().start;
  const double end = pieces_.back().start;
  index_scale_ = static_cast<double>(cells) / (end - index_start_);
  index_.assign(cells + 2, pieces_.size() - 1);
  std::size_t p = 0;
  for (std::size_t cell = 0; cell <= cells; ++cell) {
    const double at = index_start_ + static_cast<double>(cell) / index_scale_;
    while (p + 1 < pieces_.size() && pieces_[p + 1].start <= at) ++p;
    index_[cell] = p;
  }
}

const Curve::Piece& Curve::found(double x) const {
  const double last = static_cast<double>(index_.size() - 2);
  const auto cell =
      static_cast<std::size_t>(std::fmin(std::fmax((x - index_start_) * index_scale_, 0.0), last));
  // No number at all gives the first piece. Rounding may put a place that is on the edge of a cell
  // into its neighbour.
  const std::size_t low = index_[cell > 0 ? cell - 1 : 0];
  const std::size_t high = index_[cell + 1];
  const auto first = pieces_.begin() + static_cast<std::ptrdiff_t>(low) + 1;
  const auto after =
      std::upper_bound(first, pieces_.begin() + static_cast<std::ptrdiff_t>(high) + 1, x,
                       [](double at, const Piece& p) { return at < p.start; });
  return *std::prev(after);
}

}  // namespace wetout::board
