// Quantities: SI inside, built and read only through functions that name the unit.
//
//   const Area deck = square_metres(0.9);
//   const Mass fibre = grams_per_square_metre(135.6) * deck;
//   fmt::print("{}", in_grams(fibre));
//
// The named functions multiply and divide by whole numbers, so that a value of few digits becomes
// the nearest double to the exact quantity: inches(20.75) is what "20 3/4 in" reads to, bit for
// bit.
//
// Adding unlike quantities, or two temperatures, does not compile (tests/compile).
#pragma once

#include <compare>

namespace wetout::units {

/// Names of dimensions: they only appear in types and in compiler messages.
namespace dim {
struct Length {};
struct Area {};
struct Volume {};
struct Mass {};
struct ArealWeight {};   // mass per area
struct Density {};       // mass per volume
struct LinearWeight {};  // mass per length
struct Duration {};
struct Pace {};  // time per area
}  // namespace dim

template <class Dim>
class Quantity {
 public:
  constexpr Quantity() = default;
  /// For kernels and the named functions below; everything else names its unit.
  static constexpr Quantity from_si(double value) { return Quantity(value); }
  [[nodiscard]] constexpr double si() const { return si_; }

  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.si_ + b.si_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.si_ - b.si_); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.si_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.si_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }
  constexpr Quantity& operator+=(Quantity b) { return *this = *this + b; }
  constexpr Quantity& operator-=(Quantity b) { return *this = *this - b; }

 private:
  explicit constexpr Quantity(double si) : si_(si) {}
  double si_ = 0.0;
};

using Length = Quantity<dim::Length>;              // m
using Area = Quantity<dim::Area>;                  // m²
using Volume = Quantity<dim::Volume>;              // m³
using Mass = Quantity<dim::Mass>;                  // kg
using ArealWeight = Quantity<dim::ArealWeight>;    // kg/m²
using Density = Quantity<dim::Density>;            // kg/m³
using LinearWeight = Quantity<dim::LinearWeight>;  // kg/m
using Duration = Quantity<dim::Duration>;          // s
using Pace = Quantity<dim::Pace>;                  // s/m²

// Products of unlike quantities, each written once; the other order and both quotients follow.
template <class A, class B>
struct Product;
template <>
struct Product<dim::Length, dim::Length> {
  using type = dim::Area;
};
template <>
struct Product<dim::Area, dim::Length> {
  using type = dim::Volume;
};
template <>
struct Product<dim::ArealWeight, dim::Area> {
  using type = dim::Mass;
};
template <>
struct Product<dim::Density, dim::Volume> {
  using type = dim::Mass;
};
template <>
struct Product<dim::Density, dim::Length> {
  using type = dim::ArealWeight;
};
template <>
struct Product<dim::LinearWeight, dim::Length> {
  using type = dim::Mass;
};
template <>
struct Product<dim::Pace, dim::Area> {
  using type = dim::Duration;
};

template <class A, class B>
constexpr auto operator*(Quantity<A> a, Quantity<B> b) -> Quantity<typename Product<A, B>::type> {
  return Quantity<typename Product<A, B>::type>::from_si(a.si() * b.si());
}
/// Mass by density, areal weight or linear weight.
constexpr Volume operator/(Mass m, Density d) { return Volume::from_si(m.si() / d.si()); }
constexpr Density operator/(Mass m, Volume v) { return Density::from_si(m.si() / v.si()); }
constexpr Length operator/(ArealWeight w, Density d) { return Length::from_si(w.si() / d.si()); }
constexpr Area operator/(Mass m, ArealWeight w) { return Area::from_si(m.si() / w.si()); }

// Factors: nistsp811, appendix B.8; all exact by definition.

// Length
constexpr Length metres(double v) { return Length::from_si(v); }
constexpr Length millimetres(double v) { return Length::from_si(v / 1000.0); }
constexpr Length inches(double v) { return Length::from_si(v * 127.0 / 5000.0); }
constexpr Length feet(double v) { return Length::from_si(v * 381.0 / 1250.0); }
constexpr double in_metres(Length l) { return l.si(); }
constexpr double in_millimetres(Length l) { return l.si() * 1e3; }
constexpr double in_inches(Length l) { return l.si() / 0.0254; }
constexpr double in_feet(Length l) { return l.si() / 0.3048; }

// Area
constexpr Area square_metres(double v) { return Area::from_si(v); }
constexpr Area square_feet(double v) {
  return Area::from_si(v * (381.0 * 381.0) / (1250.0 * 1250.0));
}
constexpr double in_square_metres(Area a) { return a.si(); }
constexpr double in_square_feet(Area a) { return a.si() / (0.3048 * 0.3048); }

// Volume
constexpr Volume cubic_metres(double v) { return Volume::from_si(v); }
constexpr Volume litres(double v) { return Volume::from_si(v / 1000.0); }
constexpr Volume millilitres(double v) { return Volume::from_si(v / 1000000.0); }
constexpr Volume us_fluid_ounces(double v) { return Volume::from_si(v * 473176473.0 / 16e12); }
constexpr double in_cubic_metres(Volume v) { return v.si(); }
constexpr double in_litres(Volume v) { return v.si() * 1e3; }
constexpr double in_millilitres(Volume v) { return v.si() * 1e6; }
constexpr double in_us_fluid_ounces(Volume v) { return v.si() * 1e6 / 29.5735295625; }

// Mass
constexpr Mass kilograms(double v) { return Mass::from_si(v); }
constexpr Mass grams(double v) { return Mass::from_si(v / 1000.0); }
constexpr Mass ounces(double v) { return Mass::from_si(v * 45359237.0 / 1600000000.0); }
constexpr Mass pounds(double v) { return Mass::from_si(v * 45359237.0 / 100000000.0); }
constexpr double in_kilograms(Mass m) { return m.si(); }
constexpr double in_grams(Mass m) { return m.si() * 1e3; }
constexpr double in_ounces(Mass m) { return m.si() * 1e3 / 28.349523125; }
constexpr double in_pounds(Mass m) { return m.si() / 0.45359237; }

// Mass per area, volume, length
constexpr ArealWeight grams_per_square_metre(double v) { return ArealWeight::from_si(v / 1000.0); }
constexpr ArealWeight ounces_per_square_yard(double v) {
  return ArealWeight::from_si(v * 45359237.0 / (1024.0 * 1306449.0));
}
constexpr double in_grams_per_square_metre(ArealWeight w) { return w.si() * 1e3; }
constexpr double in_ounces_per_square_yard(ArealWeight w) {
  return w.si() * 1e3 * (0.9144 * 0.9144) / 28.349523125;
}
constexpr Density kilograms_per_cubic_metre(double v) { return Density::from_si(v); }
constexpr Density grams_per_millilitre(double v) { return Density::from_si(v * 1000.0); }
constexpr Density pounds_per_cubic_foot(double v) {
  return Density::from_si(v * 45359237.0 / 100000000.0 / (0.3048 * 0.3048 * 0.3048));
}
constexpr double in_kilograms_per_cubic_metre(Density d) { return d.si(); }
constexpr double in_grams_per_millilitre(Density d) { return d.si() * 1e-3; }
constexpr double in_pounds_per_cubic_foot(Density d) {
  return d.si() * (0.3048 * 0.3048 * 0.3048) / 0.45359237;
}
constexpr LinearWeight grams_per_metre(double v) { return LinearWeight::from_si(v / 1000.0); }
constexpr double in_grams_per_metre(LinearWeight w) { return w.si() * 1e3; }
constexpr double in_ounces_per_foot(LinearWeight w) { return w.si() * 1e3 * 0.3048 / 28.349523125; }

// Time spans and pace
constexpr Duration seconds(double v) { return Duration::from_si(v); }
constexpr Duration minutes(double v) { return Duration::from_si(v * 60.0); }
constexpr Duration hours(double v) { return Duration::from_si(v * 3600.0); }
constexpr Duration days(double v) { return Duration::from_si(v * 86400.0); }
constexpr double in_seconds(Duration d) { return d.si(); }
constexpr double in_minutes(Duration d) { return d.si() / 60.0; }
constexpr double in_hours(Duration d) { return d.si() / 3600.0; }
constexpr Pace minutes_per_square_metre(double v) { return Pace::from_si(v * 60.0); }
constexpr double in_minutes_per_square_metre(Pace p) { return p.si() / 60.0; }
constexpr double in_minutes_per_square_foot(Pace p) { return p.si() / 60.0 * (0.3048 * 0.3048); }

}  // namespace wetout::units
