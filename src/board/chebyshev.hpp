// A smooth function on [0, 1] from its values at Chebyshev points: its integral up to any place,
// the place where that reaches a value, and how much its last terms still matter.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace wetout::board {

inline constexpr std::size_t cheb_size = 9;

/// (1 - cos(pi i / 8)) / 2, rising from 0 to 1.
const std::array<double, cheb_size>& cheb_points();

using ChebValues = std::array<double, cheb_size>;

/// A sum of Chebyshev polynomials of 2t - 1.
template <std::size_t n>
struct Series {
  std::array<double, n> coefficients{};

  [[nodiscard]] double at(double t) const {
    const double x = 2.0 * t - 1.0;
    double next = 0.0;
    double after = 0.0;
    for (std::size_t k = n; k-- > 1;) {
      const double here = coefficients[k] + 2.0 * x * next - after;
      after = next;
      next = here;
    }
    return coefficients[0] + x * next - after;
  }
  /// What its last two terms add between 0 and t.
  [[nodiscard]] double tail(double t) const {
    const double x = 2.0 * t - 1.0;
    const auto chebyshev = [x](std::size_t k) {
      double before = 1.0;
      double here = x;
      for (std::size_t i = 1; i < k; ++i) {
        const double next = 2.0 * x * here - before;
        before = here;
        here = next;
      }
      return here;
    };
    const double sign = n % 2 == 0 ? 1.0 : -1.0;  // of the term before the last, at 0
    return coefficients[n - 2] * (chebyshev(n - 2) - sign) +
           coefficients[n - 1] * (chebyshev(n - 1) + sign);
  }
};

Series<cheb_size> through(const ChebValues& values);
/// From 0 to t.
Series<cheb_size + 1> integral(const ChebValues& values);

/// Where a rising series takes `value`, within [0, 1].
template <std::size_t n>
double where(const Series<n>& series, double value) {
  double low = 0.0;
  double high = 1.0;
  double t_low = series.at(low) - value;
  double t_high = series.at(high) - value;
  if (t_low >= 0.0) return 0.0;
  if (t_high <= 0.0) return 1.0;
  // Regula falsi with the Illinois rule: safe, and fast on a nearly straight curve.
  const double enough = 1e-9 * (t_high - t_low);
  int side = 0;
  for (int i = 0; i < 60; ++i) {
    const double t = (low * t_high - high * t_low) / (t_high - t_low);
    const double v = series.at(t) - value;
    if (v < enough && v > -enough) return t;
    if (v < 0.0) {
      low = t;
      t_low = v;
      if (side < 0) t_high *= 0.5;
      side = -1;
    } else {
      high = t;
      t_high = v;
      if (side > 0) t_low *= 0.5;
      side = 1;
    }
  }
  return 0.5 * (low + high);
}

}  // namespace wetout::board
