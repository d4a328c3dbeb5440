// Mass in whole milligrams: where sums must come out to the last digit.
#pragma once

#include <cmath>
#include <compare>
#include <concepts>
#include <cstdint>

#include "wetout/units/quantity.hpp"

namespace wetout::units {

class Milligrams {
 public:
  constexpr Milligrams() = default;
  explicit constexpr Milligrams(std::int64_t count) : count_(count) {}
  template <std::floating_point T>
  explicit Milligrams(T) = delete;  // nearest() says that it rounds
  /// Nearest whole milligram.
  static Milligrams nearest(Mass mass) { return Milligrams(std::llround(mass.si() * 1e6)); }
  [[nodiscard]] constexpr std::int64_t count() const { return count_; }
  [[nodiscard]] constexpr Mass mass() const {
    return Mass::from_si(static_cast<double>(count_) * 1e-6);
  }
  [[nodiscard]] constexpr double in_grams() const { return static_cast<double>(count_) * 1e-3; }

  friend constexpr auto operator<=>(Milligrams, Milligrams) = default;
  friend constexpr Milligrams operator+(Milligrams a, Milligrams b) {
    return Milligrams(a.count_ + b.count_);
  }
  friend constexpr Milligrams operator-(Milligrams a, Milligrams b) {
    return Milligrams(a.count_ - b.count_);
  }
  friend constexpr Milligrams operator*(Milligrams a, std::int64_t k) {
    return Milligrams(a.count_ * k);
  }
  constexpr Milligrams& operator+=(Milligrams b) { return *this = *this + b; }
  constexpr Milligrams& operator-=(Milligrams b) { return *this = *this - b; }

 private:
  std::int64_t count_ = 0;
};

}  // namespace wetout::units
