// The foam core: how it lags behind the room's air, and what is to be watched of it
// (docs/models/weather.md).
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/climate/lag.hpp"
#include "wetout/time/history.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

enum class FoamKind { eps, xps, pu };

struct Foam {
  units::Density density;
  double conductivity_w_per_m_k = 0.0;
  double heat_capacity_j_per_kg_k = 0.0;
};

Foam usual_foam(FoamKind kind, const ClimateDefaults& defaults = {});

/// The time constant of the mean temperature of a slab that air warms on both faces: its slowest
/// mode, L^2 / (4 a zeta^2) with zeta tan zeta = Biot number (carslaw1959), to 1e-12 of itself. For
/// thin slabs it becomes the lumped (density cp L) / (2 film). After a step of the air one lag
/// is within 10 % of the step from the slab's mean; behind air that changes over hours it is up to
/// 15 % longer than that mean trails.
/// Codes "core.thickness" (not more than 0 and at most 1 m), "core.foam" (a property not more than
/// 0), "core.film".
base::Result<units::Duration> core_lag(units::Length thickness, const Foam& foam,
                                       double film_w_per_m2_k = ClimateDefaults{}.core_film.value);

/// The core's mean temperature, exact on room air that is straight between its points. It starts
/// as settled_start() says.
inline Lagged core_course(const time::History& room_air_kelvin, units::Duration lag) {
  return Lagged::settled(room_air_kelvin, lag);
}

/// What vapour condenses on first: the lower of room air and core.
time::History surface(const time::History& room_air_kelvin, const time::History& core_kelvin);

}  // namespace wetout::climate
