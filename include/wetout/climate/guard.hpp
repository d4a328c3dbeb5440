// A forecast is not a fact: limits are tested with air and dew point moved the bad way
// (docs/models/weather.md).
#pragma once

#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/time/history.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

enum class Guard { none, normal, wide };

/// "none" | "normal" | "wide"; code "word.unknown".
base::Result<Guard> read_guard(std::string_view text);
std::string_view to_string(Guard guard);

/// How far a forecast `lead` ahead is moved: 0.5 K + 0.25 K a day, at most 2.5 K; wide is twice
/// that; none 0. A negative lead counts as 0.
units::TempDelta guard_shift(Guard guard, units::Duration lead,
                             const ClimateDefaults& defaults = {});

enum class Way { warmer, colder };

/// The course moved by the shift of each instant; `issued` is when the forecast was made. Exact:
/// points are added where the shift itself bends.
time::History moved(const time::History& kelvin, Way way, Guard guard, time::Instant issued,
                    const ClimateDefaults& defaults = {});

}  // namespace wetout::climate
