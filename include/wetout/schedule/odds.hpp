// The chance that a film's limits hold although the forecast is wrong (docs/models/limits.md).
#pragma once

#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/schedule/conditions.hpp"
#include "wetout/schedule/defaults.hpp"
#include "wetout/schedule/limits.hpp"

namespace wetout::schedule {

/// Takes the forecast's error as normal, the same all the time a film is open, colder with a higher
/// dew point or warmer, its standard deviation the normal guard of the instant (assumed: nobody
/// keeps what was forecast). Room and core follow the moved weather, so a heater counts.
class WeatherOdds {
 public:
  /// Problems: those of conditions().
  static base::Result<WeatherOdds> of(const climate::Weather& weather, const climate::Room& room,
                                      units::Duration core_lag, time::Instant issued,
                                      const LimitDefaults& limits = {},
                                      const climate::ClimateDefaults& defaults = {});

  /// Chance, 0 to 1, that no limit refuses the film. Between half guards the slack is taken as a
  /// straight line, drawn on where the forecast itself breaks a limit; what holds at three guards
  /// counts as Φ(3) on its side, 0.9987. The rise of the core is judged by the forecast as it is,
  /// which moving all of it leaves alone. The film's own times stay those of the forecast.
  [[nodiscard]] double holds(const OpenFilm& film, const FilmRules& rules) const;

 private:
  std::vector<LimitTester> moved_;  ///< by 0, 1/2, 1 ... guards
};

}  // namespace wetout::schedule
