// What weather, room and core need and no file says (docs/models/weather.md).
#pragma once

#include "wetout/base/cited.hpp"

namespace wetout::climate {

struct ClimateDefaults {
  using S = base::Standing;
  using Value = base::Default<double>;

  /// e = es(wet) - A p (dry - wet), per kelvin.
  Value psychrometer{"air.psychrometer",
                     6.62e-4,
                     6.2e-4,
                     8.0e-4,
                     {"", "with a fan; a thermometer in still air takes more", S::memory}};

  // The room
  Value room_lag{"room.lag", 2.5, 0.5, 8.0, {"", "a garage with its door shut", S::assumed}};

  // The core: slab in still air
  Value core_film{"core.film",
                  8.0,
                  5.0,
                  12.0,
                  {"", "from the room's air to the foam, radiation included", S::assumed}};
  Value eps_density{"core.eps.density",
                    16.0,
                    14.4,
                    28.8,
                    {"", "where the job does not say; ASTM C578 types I to IX", S::assumed}};
  Value eps_conductivity{"core.eps.conductivity",
                         0.036,
                         0.032,
                         0.038,
                         {"", "foam suppliers' EN 12667 range", S::memory}};
  Value eps_heat_capacity{
      "core.eps.heat_capacity", 1450.0, 1300.0, 1500.0, {"", "EN ISO 10456", S::memory}};
  Value xps_density{"core.xps.density", 33.0, 25.0, 45.0, {"", "middle of 25 to 45", S::memory}};
  Value xps_conductivity{"core.xps.conductivity",
                         0.031,
                         0.030,
                         0.032,
                         {"", "foam suppliers' EN 13164 sheets", S::memory}};
  Value xps_heat_capacity{
      "core.xps.heat_capacity", 1450.0, 1300.0, 1500.0, {"", "a foam supplier's sheet", S::memory}};
  Value pu_density{"core.pu.density", 45.0, 35.0, 60.0, {"", "panels 40 to 50", S::memory}};
  Value pu_conductivity{
      "core.pu.conductivity", 0.026, 0.022, 0.030, {"", "panels' range, middle", S::memory}};
  Value pu_heat_capacity{
      "core.pu.heat_capacity", 1400.0, 1300.0, 1500.0, {"", "EN ISO 10456", S::memory}};

  // A forecast is not a fact
  Value guard_now{"guard.now", 0.5, 0.0, 1.0, {"", "error of the next hours", S::assumed}};
  Value guard_per_day{"guard.per_day", 0.25, 0.0, 0.5, {"", "growth with the lead", S::assumed}};
  Value guard_most{"guard.most", 2.5, 1.0, 4.0, {"", "no better than the season", S::assumed}};
  Value guard_wide{"guard.wide", 2.0, 1.5, 3.0, {"", "times the normal guard", S::assumed}};
};

/// Calls f(default, unit word) for each value.
template <class D, class F>
void visit(D& defaults, F&& f) requires requires {
  defaults.room_lag;
}
{
  f(defaults.psychrometer, "1/K");
  f(defaults.room_lag, "h");
  f(defaults.core_film, "W/(m2 K)");
  f(defaults.eps_density, "kg/m3");
  f(defaults.eps_conductivity, "W/(m K)");
  f(defaults.eps_heat_capacity, "J/(kg K)");
  f(defaults.xps_density, "kg/m3");
  f(defaults.xps_conductivity, "W/(m K)");
  f(defaults.xps_heat_capacity, "J/(kg K)");
  f(defaults.pu_density, "kg/m3");
  f(defaults.pu_conductivity, "W/(m K)");
  f(defaults.pu_heat_capacity, "J/(kg K)");
  f(defaults.guard_now, "K");
  f(defaults.guard_per_day, "K");
  f(defaults.guard_most, "K");
  f(defaults.guard_wide, "times");
}

}  // namespace wetout::climate
