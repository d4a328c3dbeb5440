// Unit factors as fractions of whole numbers: most are exact by definition and stay so.
#pragma once

#include <cstdint>
#include <numeric>

namespace wetout::units {

/// SI units in one unit: one inch is {127, 5000} m.
struct Ratio {
  std::int64_t num = 1;
  std::int64_t den = 1;
};

constexpr Ratio times(Ratio a, Ratio b) {
  // Reduced crosswise before multiplying, so that only the result has to fit.
  const std::int64_t g = std::gcd(a.num, b.den);
  const std::int64_t h = std::gcd(b.num, a.den);
  return {(a.num / g) * (b.num / h), (a.den / h) * (b.den / g)};
}

constexpr Ratio over(Ratio a, Ratio b) { return times(a, {b.den, b.num}); }

/// Rounded once when `value` has few digits, because the product is then exact.
constexpr double apply(double value, Ratio r) {
  return value * static_cast<double>(r.num) / static_cast<double>(r.den);
}

}  // namespace wetout::units
