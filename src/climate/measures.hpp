// The quantities of a weather file: units as they are written, and what makes sense.
#pragma once

#include <optional>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

enum class Quantity { air, dew_point, humidity, wind, sun };

enum class Unit {
  celsius,
  fahrenheit,
  kelvin,
  percent,
  share,
  metres_per_second,
  kilometres_per_hour,
  miles_per_hour,
  knots,
  watts_per_square_metre
};

/// "C", "°F", "degC", "celsius", "%", "1", "m/s", "km/h", "mph", "kn", "W/m2" ...: nothing when it
/// is not a unit of the quantity.
std::optional<Unit> read_unit(Quantity quantity, std::string_view text);
/// "C, F or K".
std::string_view units_of(Quantity quantity);
/// "air temperature".
std::string_view name_of(Quantity quantity);

/// In kelvin, share of 1, m/s, W/m².
double in_si(double value, Unit unit);

/// Nothing when the value makes sense for the quantity. Otherwise code "weather.absurd", found and
/// expected in the unit of the file; "number.not_finite" for nan and inf. The caller adds where.
std::optional<base::Problem> nonsense(Quantity quantity, double value, Unit unit);

}  // namespace wetout::climate
