// Water vapour in air: dew point, relative humidity, wet bulb (docs/models/weather.md).
//
// Everything is over liquid water, below 0 C too, as forecasts and stations give it.
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

inline constexpr double standard_pressure_pa = 101325.0;

// For numbers that are known to make sense: the inner loops. Magnus' equation (alduchov1996),
// within 0.4 % of the pressure at -40 to 50 C; dew points within 0.03 K of the ASHRAE Handbook's at
// 10 to 40 C and 20 to 100 %.

/// Above -243 C.
double saturation_pressure_pa(units::Temperature air);
/// The air that this pressure saturates; more than 0.
units::Temperature saturated_at(double vapour_pressure_pa);

/// Shares of 1, more than 0. More than 1 counts as saturated: instruments show up to 110 % in fog,
/// and a dew point is never above the air.
double vapour_pressure_pa(units::Temperature air, double relative_humidity_share);
units::Temperature dew_point(units::Temperature air, double relative_humidity_share);
/// At most 1, a dew point above the air included.
double relative_humidity(units::Temperature air, units::Temperature dew_point);

// For numbers that people and files give.

/// One state of the air, each value following from the others.
struct HumidAir {
  units::Temperature air;
  units::Temperature dew_point;
  double relative_humidity_share = 1.0;
  double vapour_pressure_pa = 0.0;
};

/// Air -40 to 60 C ("air.range"), humidity more than 0 and at most 110 % ("humidity.range"). More
/// than 100 % is saturated air.
base::Result<HumidAir> air_from_humidity(units::Temperature air, double relative_humidity_share);
/// Air -40 to 60 C ("air.range"), dew point from -60 C up to the air ("dew_point.range").
base::Result<HumidAir> air_from_dew_point(units::Temperature air, units::Temperature dew_point);

/// Two thermometers, one with a wet wick (astm_e337's limits: air 5 to 50 C, "air.range"; wet bulb
/// at least 1 C and not above the air, "wet_bulb.range"; pressure within 30 % of the standard
/// atmosphere, "pressure.range"). "wet_bulb.too_dry" when the difference is more than bone-dry air
/// could make.
base::Result<HumidAir> air_from_wet_bulb(units::Temperature air, units::Temperature wet_bulb,
                                         double pressure_pa = standard_pressure_pa,
                                         const ClimateDefaults& defaults = {});
/// What the wet thermometer would show, to 1e-9 K: the inverse of air_from_wet_bulb(), with its
/// limits and "humidity.range". "wet_bulb.range" where the wick would freeze.
base::Result<units::Temperature> wet_bulb(units::Temperature air, double relative_humidity_share,
                                          double pressure_pa = standard_pressure_pa,
                                          const ClimateDefaults& defaults = {});

}  // namespace wetout::climate
