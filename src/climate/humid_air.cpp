#include "wetout/climate/humid_air.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "shown_number.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/cited.hpp"

namespace wetout::climate {
namespace {

using units::Temperature;

constexpr base::Source magnus_source{"alduchov1996", "equation 21", base::Standing::standard};
constexpr base::Cited<double> magnus_pa{610.94, magnus_source};
constexpr base::Cited<double> magnus_slope{17.625, magnus_source};
constexpr base::Cited<double> magnus_celsius{243.04, magnus_source};

constexpr double coldest_air_c = -40.0, hottest_air_c = 60.0;
constexpr double lowest_dew_point_c = -60.0;
constexpr double most_humidity = 1.10;
constexpr double coldest_bulb_c = 5.0, hottest_bulb_c = 50.0, lowest_wick_c = 1.0;
constexpr double least_pressure_pa = 0.7 * standard_pressure_pa;
constexpr double most_pressure_pa = 1.3 * standard_pressure_pa;

std::string celsius(Temperature t) { return shown_number(t.in_celsius(), 2) + " C"; }

// Comparisons are written so that a NaN is outside.
bool inside(double value, double low, double high) { return value >= low && value <= high; }

std::optional<base::Problem> bad_air(Temperature air, double low_c, double high_c) {
  if (inside(air.in_celsius(), low_c, high_c)) return std::nullopt;
  const std::string range =
      "from " + shown_number(low_c, 0) + " C to " + shown_number(high_c, 0) + " C";
  return base::Problem{.code = "air.range",
                       .message = "the air must be " + range,
                       .found = celsius(air),
                       .expected = "a temperature " + range + ", e.g. \"22 C\""};
}

std::optional<base::Problem> bad_humidity(double share) {
  if (share > 0.0 && share <= most_humidity) return std::nullopt;
  return base::Problem{.code = "humidity.range",
                       .message = "the humidity must be more than 0 % and at most 110 %",
                       .found = shown_number(100.0 * share, 2) + " %",
                       .expected = "a relative humidity, e.g. \"55 %\""};
}

std::optional<base::Problem> bad_pressure(double pa) {
  if (inside(pa, least_pressure_pa, most_pressure_pa)) return std::nullopt;
  return base::Problem{.code = "pressure.range",
                       .message = "the pressure must be within 30 % of the standard atmosphere",
                       .found = shown_number(pa / 100.0, 1) + " hPa",
                       .expected = "a pressure from 709 to 1317 hPa, e.g. 1013 hPa"};
}

base::Problem bad_wet_bulb(Temperature wet, std::string message) {
  return {.code = "wet_bulb.range",
          .message = std::move(message),
          .found = celsius(wet),
          .expected =
              "a wet bulb from 1 C up to the air's temperature, e.g. \"17 C\" in air of "
              "\"21 C\""};
}

/// What the psychrometer's equation makes of two readings.
double bulb_pressure_pa(Temperature air, Temperature wet, double pressure_pa,
                        const ClimateDefaults& defaults) {
  return saturation_pressure_pa(wet) -
         defaults.psychrometer.value * pressure_pa * (air - wet).in_kelvin();
}

/// Of saturation pressure, over itself, per kelvin.
double growth_per_kelvin(Temperature air) {
  const double c = magnus_celsius.value + air.in_celsius();
  return magnus_slope.value * magnus_celsius.value / (c * c);
}

}  // namespace

double saturation_pressure_pa(Temperature air) {
  const double c = air.in_celsius();
  return magnus_pa.value * std::exp(magnus_slope.value * c / (magnus_celsius.value + c));
}

Temperature saturated_at(double vapour_pressure_pa) {
  base::promise(vapour_pressure_pa > 0.0, "air holds some vapour");
  const double g = std::log(vapour_pressure_pa / magnus_pa.value);
  return Temperature::celsius(magnus_celsius.value * g / (magnus_slope.value - g));
}

double vapour_pressure_pa(Temperature air, double relative_humidity_share) {
  base::promise(relative_humidity_share > 0.0, "a relative humidity is more than 0");
  return std::min(relative_humidity_share, 1.0) * saturation_pressure_pa(air);
}

Temperature dew_point(Temperature air, double relative_humidity_share) {
  if (relative_humidity_share >= 1.0) return air;
  return std::min(air, saturated_at(vapour_pressure_pa(air, relative_humidity_share)));
}

double relative_humidity(Temperature air, Temperature dew_point) {
  if (dew_point >= air) return 1.0;
  return saturation_pressure_pa(dew_point) / saturation_pressure_pa(air);
}

base::Result<HumidAir> air_from_humidity(Temperature air, double relative_humidity_share) {
  base::Problems problems;
  if (auto bad = bad_air(air, coldest_air_c, hottest_air_c)) problems.push_back(*std::move(bad));
  if (auto bad = bad_humidity(relative_humidity_share)) problems.push_back(*std::move(bad));
  if (!problems.empty()) return base::fail(std::move(problems));
  const double share = std::min(relative_humidity_share, 1.0);
  return HumidAir{air, dew_point(air, share), share, vapour_pressure_pa(air, share)};
}

base::Result<HumidAir> air_from_dew_point(Temperature air, Temperature dew_point) {
  if (auto bad = bad_air(air, coldest_air_c, hottest_air_c)) return base::fail(*std::move(bad));
  if (!inside(dew_point.in_celsius(), lowest_dew_point_c, air.in_celsius())) {
    return base::fail({.code = "dew_point.range",
                       .message = "the dew point must be from -60 C up to the air's temperature",
                       .found = celsius(dew_point),
                       .expected = "a dew point of at most " + celsius(air)});
  }
  return HumidAir{air, dew_point, relative_humidity(air, dew_point),
                  saturation_pressure_pa(dew_point)};
}

base::Result<HumidAir> air_from_wet_bulb(Temperature air, Temperature wet_bulb, double pressure_pa,
                                         const ClimateDefaults& defaults) {
  base::Problems problems;
  if (auto bad = bad_air(air, coldest_bulb_c, hottest_bulb_c)) problems.push_back(*std::move(bad));
  if (auto bad = bad_pressure(pressure_pa)) problems.push_back(*std::move(bad));
  if (!(wet_bulb <= air)) {
    problems.push_back(bad_wet_bulb(wet_bulb, "a wet bulb is never warmer than the air"));
  } else if (!(wet_bulb.in_celsius() >= lowest_wick_c)) {
    problems.push_back(bad_wet_bulb(wet_bulb, "below 1 C the wick may freeze"));
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  const double e = bulb_pressure_pa(air, wet_bulb, pressure_pa, defaults);
  if (!(e > 0.0)) {
    return base::fail({.code = "wet_bulb.too_dry",
                       .message = "even air without any vapour has a warmer wet bulb",
                       .found = celsius(wet_bulb) + " in air of " + celsius(air),
                       .expected = "two readings taken at the same time, with a wet wick"});
  }
  const Temperature dew = std::min(air, saturated_at(e));
  return HumidAir{air, dew, relative_humidity(air, dew), e};
}

base::Result<Temperature> wet_bulb(Temperature air, double relative_humidity_share,
                                   double pressure_pa, const ClimateDefaults& defaults) {
  base::Problems problems;
  if (auto bad = bad_air(air, coldest_bulb_c, hottest_bulb_c)) problems.push_back(*std::move(bad));
  if (auto bad = bad_humidity(relative_humidity_share)) problems.push_back(*std::move(bad));
  if (auto bad = bad_pressure(pressure_pa)) problems.push_back(*std::move(bad));
  if (!problems.empty()) return base::fail(std::move(problems));

  const double e = vapour_pressure_pa(air, relative_humidity_share);
  // What the readings would mean rises with the wet bulb and bends upward: Newton from the warm
  // side never passes the root.
  Temperature wet = air;
  for (int i = 0; i < 100; ++i) {
    const double miss = bulb_pressure_pa(air, wet, pressure_pa, defaults) - e;
    const double slope = saturation_pressure_pa(wet) * growth_per_kelvin(wet) +
                         defaults.psychrometer.value * pressure_pa;
    const auto step = units::TempDelta::kelvin(miss / slope);
    wet = std::min(air, wet - step);
    if (std::abs(step.in_kelvin()) < 1e-10) break;
  }
  if (wet.in_celsius() < lowest_wick_c) {
    return base::fail(bad_wet_bulb(wet,
                                   "in this air the wet bulb is below 1 C, where the wick "
                                   "may freeze"));
  }
  return wet;
}

}  // namespace wetout::climate
