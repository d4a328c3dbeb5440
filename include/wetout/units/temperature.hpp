// A temperature is a point, a difference of temperatures is not: 20 °C + 20 °C has no meaning.
#pragma once

#include <compare>

namespace wetout::units {

class TempDelta {
 public:
  constexpr TempDelta() = default;
  static constexpr TempDelta kelvin(double v) { return TempDelta(v); }
  [[nodiscard]] constexpr double in_kelvin() const { return kelvin_; }
  friend constexpr auto operator<=>(TempDelta, TempDelta) = default;
  friend constexpr TempDelta operator+(TempDelta a, TempDelta b) {
    return TempDelta(a.kelvin_ + b.kelvin_);
  }
  friend constexpr TempDelta operator-(TempDelta a, TempDelta b) {
    return TempDelta(a.kelvin_ - b.kelvin_);
  }
  friend constexpr TempDelta operator-(TempDelta a) { return TempDelta(-a.kelvin_); }
  friend constexpr TempDelta operator*(TempDelta a, double k) { return TempDelta(a.kelvin_ * k); }

 private:
  explicit constexpr TempDelta(double kelvin) : kelvin_(kelvin) {}
  double kelvin_ = 0.0;
};

class Temperature {
 public:
  constexpr Temperature() = default;
  static constexpr Temperature kelvin(double v) { return Temperature(v); }
  static constexpr Temperature celsius(double v) { return Temperature(v + 273.15); }
  static constexpr Temperature fahrenheit(double v) {
    return Temperature((v - 32.0) * 5.0 / 9.0 + 273.15);
  }
  [[nodiscard]] constexpr double in_kelvin() const { return kelvin_; }
  [[nodiscard]] constexpr double in_celsius() const { return kelvin_ - 273.15; }
  [[nodiscard]] constexpr double in_fahrenheit() const { return in_celsius() * 1.8 + 32.0; }
  friend constexpr auto operator<=>(Temperature, Temperature) = default;
  friend constexpr TempDelta operator-(Temperature a, Temperature b) {
    return TempDelta::kelvin(a.kelvin_ - b.kelvin_);
  }
  friend constexpr Temperature operator+(Temperature a, TempDelta d) {
    return Temperature(a.kelvin_ + d.in_kelvin());
  }
  friend constexpr Temperature operator-(Temperature a, TempDelta d) {
    return Temperature(a.kelvin_ - d.in_kelvin());
  }

 private:
  explicit constexpr Temperature(double kelvin) : kelvin_(kelvin) {}
  double kelvin_ = 273.15;
};

}  // namespace wetout::units
