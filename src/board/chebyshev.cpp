#include "chebyshev.hpp"

#include <cmath>
#include <numbers>

namespace wetout::board {
namespace {

// Rows: values; columns: coefficients. So that the sums run along memory.
template <std::size_t points, std::size_t terms>
using Matrix = std::array<std::array<double, terms>, points>;

// Values at (1 - cos(pi i / (n - 1))) / 2, so at cosines from -1 to 1, to coefficients.
template <std::size_t n>
Matrix<n, n> transform() {
  Matrix<n, n> m{};
  const double last = static_cast<double>(n - 1);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = 0; k < n; ++k) {
      const double ends = (k == 0 || k == n - 1 ? 0.5 : 1.0) * (i == 0 || i == n - 1 ? 0.5 : 1.0);
      const double angle =
          std::numbers::pi * static_cast<double>(k) * static_cast<double>(n - 1 - i) / last;
      m[i][k] = 2.0 / last * ends * std::cos(angle);
    }
  }
  return m;
}

// Values to the coefficients of the integral from t = 0. With x = 2t - 1, dt = dx / 2, and the
// integral of T_k is (T_(k+1)/(k+1) - T_(k-1)/(k-1)) / 2.
template <std::size_t n>
Matrix<n, n + 1> integration() {
  const Matrix<n, n> plain = transform<n>();
  Matrix<n, n + 1> m{};
  for (std::size_t i = 0; i < n; ++i) {
    const auto a = [&](std::size_t k) { return k < n ? plain[i][k] : 0.0; };
    double at_zero = 0.0;
    for (std::size_t k = 1; k <= n; ++k) {
      const double below = k == 1 ? 2.0 * a(0) : a(k - 1);
      m[i][k] = (below - a(k + 1)) / (4.0 * static_cast<double>(k));
      at_zero += (k % 2 == 0 ? 1.0 : -1.0) * m[i][k];
    }
    m[i][0] = -at_zero;
  }
  return m;
}

template <std::size_t points, std::size_t terms>
Series<terms> apply(const Matrix<points, terms>& matrix, const ChebValues& values) {
  Series<terms> series;
  for (std::size_t i = 0; i < points; ++i)
    for (std::size_t k = 0; k < terms; ++k) series.coefficients[k] += matrix[i][k] * values[i];
  return series;
}

}  // namespace

const std::array<double, cheb_size>& cheb_points() {
  static const std::array<double, cheb_size> points = [] {
    std::array<double, cheb_size> p{};
    for (std::size_t i = 0; i < cheb_size; ++i) {
      const double angle = std::numbers::pi * static_cast<double>(i) / (cheb_size - 1);
      p[i] = 0.5 * (1.0 - std::cos(angle));
    }
    return p;
  }();
  return points;
}

Series<cheb_size> through(const ChebValues& values) {
  static const auto matrix = transform<cheb_size>();
  return apply(matrix, values);
}

Series<cheb_size + 1> integral(const ChebValues& values) {
  static const auto matrix = integration<cheb_size>();
  return apply(matrix, values);
}

}  // namespace wetout::board
