// A room and a core under one weather, and the same with the forecast moved the bad way
// (docs/models/limits.md).
#pragma once

#include <optional>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/time/history.hpp"

namespace wetout::schedule {

/// Kelvin; straight lines between the first and last instant of the weather.
struct Conditions {
  time::History air;  ///< of the room
  time::History core;
  std::optional<time::History> dew_point;
  // With outdoor air colder and dew point higher, and with outdoor air warmer, by the guard.
  time::History cold_air, cold_surface;
  std::optional<time::History> damp_dew_point;
  time::History warm_air;
  std::vector<climate::Gap> gaps;           ///< where the air is not known
  std::vector<climate::Gap> humidity_gaps;  ///< where the humidity is not known
  bool foul_air = false;                    ///< an unvented heater

  [[nodiscard]] time::Instant first() const { return air.first(); }
  [[nodiscard]] time::Instant last() const { return air.last(); }
};

/// `core_lag` behind the room's air; `issued`: when the forecast was made. Problems: those of
/// climate::RoomAir::of().
base::Result<Conditions> conditions(const climate::Weather& weather, const climate::Room& room,
                                    units::Duration core_lag, climate::Guard guard,
                                    time::Instant issued,
                                    const climate::ClimateDefaults& defaults = {});

}  // namespace wetout::schedule
