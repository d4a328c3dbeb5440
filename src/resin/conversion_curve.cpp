#include "wetout/resin/conversion_curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "gauss.hpp"
#include "wetout/resin/kinetics.hpp"

namespace wetout::resin {
namespace {

struct Reaction {
  double r, m, n;
  [[nodiscard]] double rate(double a) const { return chemical_rate(a, r, m, n); }
  // d rate/d alpha; infinite at alpha 0 for m < 1.
  [[nodiscard]] double rate_slope(double a) const {
    const double rise = m == 0.0 ? 0.0 : m * std::pow(a, m - 1.0) * std::pow(1.0 - a, n);
    const double fall = n == 0.0 ? 0.0 : n * (r + std::pow(a, m)) * std::pow(1.0 - a, n - 1.0);
    return rise - fall;
  }
  [[nodiscard]] double time_between(double a, double b) const {
    return gauss4(a, b, [&](double x) { return 1.0 / rate(x); });
  }
  // From 0, where alpha^m is singular: alpha = a w^4 makes it smooth enough for the rule.
  [[nodiscard]] double time_from_zero(double a) const {
    double sum = 0.0;
    for (int panel = 0; panel < 4; ++panel) {
      sum += gauss4(0.25 * panel, 0.25 * (panel + 1),
                    [&](double w) { return 4.0 * a * w * w * w / rate(a * w * w * w * w); });
    }
    return sum;
  }
};

// The next point of the curve: a step of Runge and Kutta, then Newton on the quadrature.
double advance(const Reaction& reaction, double a, double h) {
  const double k1 = reaction.rate(a);
  const double k2 = reaction.rate(std::min(1.0, a + 0.5 * h * k1));
  const double k3 = reaction.rate(std::min(1.0, a + 0.5 * h * k2));
  const double k4 = reaction.rate(std::min(1.0, a + h * k3));
  const double guess = a + h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
  if (guess >= 1.0) return 1.0;
  const double late =
      (a == 0.0 ? reaction.time_from_zero(guess) : reaction.time_between(a, guess)) - h;
  return std::min(1.0, guess - late * reaction.rate(guess));
}

}  // namespace

ConversionCurve::ConversionCurve(double r, double m, double n) {
  const Reaction reaction{r, m, n};
  constexpr int count = (last_octave - first_octave) << mantissa_bits;
  segments_.reserve(count);
  double a = 0.0;
  double slope = reaction.rate(0.0);
  double bend = 0.0;  // of the first point: not used
  for (int i = 0; i < count; ++i) {
    const double octave = std::ldexp(1.0, first_octave + (i >> mantissa_bits));
    const double h = octave / (1 << mantissa_bits);
    const double b = advance(reaction, a, h);
    if (b >= 1.0) {
      last_ = 1.0;
      return;
    }
    const double slope_b = reaction.rate(b);
    const double bend_b = slope_b * reaction.rate_slope(b);
    const double up = (b - a) / h;
    Segment s{};
    s.c0 = a;
    s.c1 = slope;
    if (i == 0) {
      // The second derivative is infinite at 0: a cubic.
      s.c2 = (3.0 * up - 2.0 * slope - slope_b) / h;
      s.c3 = (slope + slope_b - 2.0 * up) / (h * h);
    } else {
      s.c2 = 0.5 * bend;
      s.c3 = (10.0 * up - 6.0 * slope - 4.0 * slope_b - 0.5 * h * (3.0 * bend - bend_b)) / (h * h);
      s.c4 = (-15.0 * up + 8.0 * slope + 7.0 * slope_b + 0.5 * h * (3.0 * bend - 2.0 * bend_b)) /
             (h * h * h);
      s.c5 = (6.0 * up - 3.0 * (slope + slope_b) - 0.5 * h * (bend - bend_b)) / (h * h * h * h);
    }
    segments_.push_back(s);
    a = b;
    slope = slope_b;
    bend = bend_b;
  }
  last_ = a;
}

double ConversionCurve::reduced_time(double conversion) const {
  if (conversion <= 0.0) return 0.0;
  if (conversion > last_ || segments_.empty()) return std::numeric_limits<double>::infinity();
  const auto above = std::upper_bound(segments_.begin(), segments_.end(), conversion,
                                      [](double c, const Segment& s) { return c < s.c0; });
  const auto i = above - segments_.begin() - 1;
  const double octave = std::ldexp(1.0, first_octave + static_cast<int>(i >> mantissa_bits));
  const double share = static_cast<double>(i & ((1 << mantissa_bits) - 1)) / (1 << mantissa_bits);
  const double start = octave * (1.0 + share) - offset;
  const double h = octave / (1 << mantissa_bits);
  // Monotone on the segment: Newton, kept inside it.
  double d = 0.5 * h;
  const Segment& s = segments_[static_cast<std::size_t>(i)];
  for (int k = 0; k < 30; ++k) {
    const double value =
        s.c0 + d * (s.c1 + d * (s.c2 + d * (s.c3 + d * (s.c4 + d * s.c5)))) - conversion;
    const double rate =
        s.c1 + d * (2.0 * s.c2 + d * (3.0 * s.c3 + d * (4.0 * s.c4 + d * 5.0 * s.c5)));
    const double next = std::clamp(d - value / rate, 0.0, h);
    if (std::abs(next - d) < 1e-14 * h) break;
    d = next;
  }
  return start + d;
}

}  // namespace wetout::resin
