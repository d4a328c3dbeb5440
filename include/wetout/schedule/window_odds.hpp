// The chance that a film's window is still open (docs/models/limits.md).
#pragma once

#include <map>
#include <memory>
#include <string>

#include "wetout/base/cited.hpp"
#include "wetout/resin/clock.hpp"
#include "wetout/schedule/conditions.hpp"
#include "wetout/schedule/film_table.hpp"

namespace wetout::schedule {

struct OddsDefaults {
  /// Of a resin's speed over its sheet, before anything was seen of it: a share.
  base::Default<double> speed_spread{
      "film.speed_spread",
      0.15,
      0.08,
      0.25,
      {"", "how far a film is off its sheet's times", base::Standing::assumed}};
};

/// Takes the logarithm of a film's speed as normal: its spread that of the resin (what records left
/// of it, Product::speed_spread, else OddsDefaults) together with what one normal guard of warmer
/// weather, led through the room, makes of its age.
class WindowOdds {
 public:
  using Sources = std::map<std::string, std::shared_ptr<const FilmSource>>;

  /// `air`: of the room, as films are timed by it; `sources`: of the resins, by their ids.
  /// Problems: those of conditions().
  static base::Result<WindowOdds> of(const climate::Weather& weather, const climate::Room& room,
                                     time::Instant issued, const time::History& air,
                                     const Sources& sources,
                                     const climate::ClimateDefaults& climate = {},
                                     const OddsDefaults& defaults = {});

  /// Chance, 0 to 1, that the window of a film of a resin that was spread at `spread`, and that
  /// closes at `closes` by the forecast, is still open at `must`. 1 for a polyester, whose speed is
  /// chosen by its dose, and where `must` is no later than `spread`. A window that is closed by its
  /// longest time and not by the clock is taken for one of the clock: the chance is then a little
  /// low.
  [[nodiscard]] double holds(const std::string& resin, time::Instant spread, time::Instant closes,
                             time::Instant must) const;

 private:
  struct Ages {
    resin::Clock clock;
    time::Instant first;
    /// Equivalent seconds from one instant to another.
    [[nodiscard]] double between(time::Instant from, time::Instant to) const;
  };
  struct OfResin {
    Ages air, plain, warm;  ///< plain and warm: the room in the forecast, and one guard warmer
    double speed_spread;
  };
  std::map<std::string, OfResin> resins_;
};

}  // namespace wetout::schedule
