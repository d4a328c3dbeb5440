// How quantities stand in documents: the unit and the decimals of each kind of key.
#pragma once

#include <cmath>
#include <cstdint>

#include "wetout/units/milligrams.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::report::as {

// Each has the type it stands for, its decimals in the document, and both ways.

struct Grams {
  static constexpr int decimals = 3;
  static double out(units::Milligrams m) { return m.in_grams(); }
  static units::Milligrams in(double v) { return units::Milligrams(std::llround(v * 1e3)); }
};
struct Metres {
  static constexpr int decimals = 6;
  static double out(units::Length l) { return units::in_metres(l); }
  static units::Length in(double v) { return units::metres(v); }
};
struct Millimetres {
  static constexpr int decimals = 3;
  static double out(units::Length l) { return units::in_millimetres(l); }
  static units::Length in(double v) { return units::millimetres(v); }
};
struct SquareMetres {
  static constexpr int decimals = 6;
  static double out(units::Area a) { return units::in_square_metres(a); }
  static units::Area in(double v) { return units::square_metres(v); }
};
struct Litres {
  static constexpr int decimals = 6;
  static double out(units::Volume v) { return units::in_litres(v); }
  static units::Volume in(double v) { return units::litres(v); }
};
struct Millilitres {
  static constexpr int decimals = 3;
  static double out(units::Volume v) { return units::in_millilitres(v); }
  static units::Volume in(double v) { return units::millilitres(v); }
};
struct Celsius {
  static constexpr int decimals = 2;
  static double out(units::Temperature t) { return t.in_celsius(); }
  static units::Temperature in(double v) { return units::Temperature::celsius(v); }
};
struct Kelvins {
  static constexpr int decimals = 2;
  static double out(units::TempDelta d) { return d.in_kelvin(); }
  static units::TempDelta in(double v) { return units::TempDelta::kelvin(v); }
};
struct Minutes {
  static constexpr int decimals = 2;
  static double out(units::Duration d) { return units::in_minutes(d); }
  static units::Duration in(double v) { return units::minutes(v); }
};
struct Hours {
  static constexpr int decimals = 4;
  static double out(units::Duration d) { return units::in_hours(d); }
  static units::Duration in(double v) { return units::hours(v); }
};
/// A share of 1 inside, percent in the document.
struct Percent {
  static constexpr int decimals = 6;
  static double out(double share) { return share * 100.0; }
  static double in(double v) { return v / 100.0; }
};
/// A share of 1 in both.
struct Share {
  static constexpr int decimals = 6;
  static double out(double share) { return share; }
  static double in(double v) { return v; }
};
/// A number whose size is not known beforehand: twelve significant digits.
struct Plain {};

/// Beyond this no key has a sensible value, and decimals would be lost.
inline constexpr double largest = 1e9;

}  // namespace wetout::report::as
