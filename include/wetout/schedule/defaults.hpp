// What the timing of a board needs and no file says (docs/models/limits.md, schedule.md).
#pragma once

#include "wetout/base/cited.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::schedule {

struct LimitDefaults {
  using S = base::Standing;

  base::Default<units::TempDelta> dew_margin{
      "limit.dew_margin",
      units::TempDelta::kelvin(3.0),
      units::TempDelta::kelvin(2.0),
      units::TempDelta::kelvin(5.0),
      {"iso8502-4", "surface above dew point; the standard is for steel", S::practice}};
  base::Default<double> humidity_refuse{
      "limit.humidity_refuse", 0.80, 0.70, 0.90, {"", "where the sheet says nothing", S::assumed}};
  base::Default<double> humidity_notice{
      "limit.humidity_notice", 0.60, 0.50, 0.75, {"", "where the sheet says nothing", S::assumed}};
  base::Default<units::Temperature> cold_notice{"limit.cold_notice",
                                                units::Temperature::celsius(18),
                                                units::Temperature::celsius(15),
                                                units::Temperature::celsius(20),
                                                {"", "where the sheet says nothing", S::assumed}};
  base::Default<units::Temperature> cold_refuse{"limit.cold_refuse",
                                                units::Temperature::celsius(10),
                                                units::Temperature::celsius(5),
                                                units::Temperature::celsius(15),
                                                {"", "where the sheet says nothing", S::assumed}};
  base::Default<units::TempDelta> core_rise{
      "limit.core_rise",
      units::TempDelta::kelvin(1.0),
      units::TempDelta::kelvin(0.5),
      units::TempDelta::kelvin(2.0),
      {"", "EPS and PU: coat while foam cools; the degree is our choice", S::assumed}};
  base::Default<units::TempDelta> core_rise_xps{"limit.core_rise_xps",
                                                units::TempDelta::kelvin(0.5),
                                                units::TempDelta::kelvin(0.2),
                                                units::TempDelta::kelvin(1.0),
                                                {"", "XPS gives off more gas", S::assumed}};
  base::Default<units::TempDelta> core_rise_sealed{"limit.core_rise_sealed",
                                                   units::TempDelta::kelvin(2.0),
                                                   units::TempDelta::kelvin(1.0),
                                                   units::TempDelta::kelvin(4.0),
                                                   {"", "a sealed core", S::assumed}};
  base::Default<units::Duration> humidity_before{
      "limit.humidity_before",
      units::hours(1),
      units::hours(0.5),
      units::hours(3),
      {"", "before wet-out, cloth and core take up damp", S::practice}};

  // By how much slack is measured: less than half of it counts as tight.
  base::Default<units::TempDelta> temperature_scale{"slack.temperature",
                                                    units::TempDelta::kelvin(3.0),
                                                    units::TempDelta::kelvin(1.0),
                                                    units::TempDelta::kelvin(5.0),
                                                    {"", "our choice", S::assumed}};
  base::Default<units::TempDelta> margin_scale{"slack.dew_margin",
                                               units::TempDelta::kelvin(3.0),
                                               units::TempDelta::kelvin(1.0),
                                               units::TempDelta::kelvin(5.0),
                                               {"", "our choice", S::assumed}};
  base::Default<double> humidity_scale{
      "slack.humidity", 0.10, 0.05, 0.20, {"", "our choice", S::assumed}};
  base::Default<units::TempDelta> core_scale{"slack.core",
                                             units::TempDelta::kelvin(0.5),
                                             units::TempDelta::kelvin(0.2),
                                             units::TempDelta::kelvin(1.0),
                                             {"", "our choice", S::assumed}};
};

}  // namespace wetout::schedule
