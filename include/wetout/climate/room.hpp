// The room: its air and dew point, from those outdoors (docs/models/weather.md).
#pragma once

#include <optional>
#include <utility>

#include "wetout/base/problem.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/climate/lag.hpp"
#include "wetout/time/history.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

enum class RoomKind {
  outdoors,  ///< in the shade, under a roof: outdoor air
  unheated,  ///< follows outdoor air with a lag
  heated,    ///< the same, and held at a minimum
};

enum class HeaterKind {
  electric,
  vented,        ///< its flue gas leaves the room
  unvented_gas,  ///< water, carbon dioxide and carbon monoxide stay in the room
};

struct Heater {
  HeaterKind kind = HeaterKind::electric;
  units::Temperature minimum;  ///< what its thermostat holds
};

/// As a shop describes it.
struct Room {
  RoomKind kind = RoomKind::unheated;
  std::optional<units::Duration> lag = {};  ///< behind outdoor air; else the default
  std::optional<Heater> heater = {};        ///< used in a heated room only, and needed there
  std::optional<double> humidity_max = {};  ///< a dehumidifier's limit, a share of 1
  bool sanding_room = false;                ///< a separate room for dust
};

/// What matters while a film is open: this heater gives water, CO2 and carbon monoxide to the room.
bool fouls_the_air(const Room& room);

/// The lag of the room's air: 0 outdoors.
units::Duration room_lag(const Room& room, const ClimateDefaults& defaults = {});

/// The air of a room at every instant; nothing beyond the outdoor air's last point but its last
/// value.
class RoomAir {
 public:
  /// `outdoor_dew_point_kelvin`: nothing where the weather has no humidity. Codes
  /// "room.no_minimum" (heated, without a heater), "room.lag" (less than 0 or more than 7 days),
  /// "room.minimum" (not from -20 to 60 C), "room.humidity" (not more than 0 and at most 100 %).
  static base::Result<RoomAir> of(const Room& room, const time::History& outdoor_air_kelvin,
                                  std::optional<time::History> outdoor_dew_point_kelvin,
                                  const ClimateDefaults& defaults = {});

  /// Exact (lag.hpp), for outdoor air and dew point that are straight between their points.
  [[nodiscard]] units::Temperature air(time::Instant at) const { return air_.at(at); }
  /// The vapour is that of the outdoor air, as far as the room's air can hold it and the
  /// dehumidifier leaves it: never above the room's air. Nothing without outdoor humidity.
  [[nodiscard]] std::optional<units::Temperature> dew_point(time::Instant at) const;
  /// Share of 1.
  [[nodiscard]] std::optional<double> humidity(time::Instant at) const;

  /// From the outdoor air's first point to its last, straight lines on whole seconds, within
  /// `tolerance` of the exact course (the dew point 1e-4 K more).
  [[nodiscard]] time::History air_history(units::TempDelta tolerance = sampling_tolerance) const {
    return air_.sampled(tolerance);
  }
  [[nodiscard]] std::optional<time::History> dew_point_history(
      units::TempDelta tolerance = sampling_tolerance) const;

  [[nodiscard]] const Lagged& course() const { return air_; }

 private:
  RoomAir(Lagged air, std::optional<time::History> outdoor_dew_point, double humidity_max)
      : air_(std::move(air)),
        outdoor_dew_point_(std::move(outdoor_dew_point)),
        humidity_max_(humidity_max) {}

  Lagged air_;
  std::optional<time::History> outdoor_dew_point_;
  double humidity_max_ = 1.0;
};

}  // namespace wetout::climate
