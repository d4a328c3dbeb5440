// A default's value as a number in the unit word it is listed with.
#pragma once

#include <string_view>

#include "wetout/base/check.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

inline double number_of(double value, std::string_view /*unit*/) { return value; }
inline double number_of(units::Mass value, std::string_view /*unit*/) {
  return units::in_grams(value);
}
inline double number_of(units::LinearWeight value, std::string_view /*unit*/) {
  return units::in_grams_per_metre(value);
}
inline double number_of(units::ArealWeight value, std::string_view /*unit*/) {
  return units::in_grams_per_square_metre(value);
}
inline double number_of(units::Density value, std::string_view /*unit*/) {
  return units::in_grams_per_millilitre(value);
}
inline double number_of(units::Duration value, std::string_view /*unit*/) {
  return units::in_minutes(value);
}
inline double number_of(units::Pace value, std::string_view /*unit*/) {
  return units::in_minutes_per_square_metre(value);
}
inline double number_of(units::Temperature value, std::string_view /*unit*/) {
  return value.in_celsius();
}
inline double number_of(units::Length value, std::string_view unit) {
  base::promise(unit == "m" || unit == "mm", "a length is listed in m or mm");
  return unit == "m" ? units::in_metres(value) : units::in_millimetres(value);
}

}  // namespace wetout::laminate
