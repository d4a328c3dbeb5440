// Whether a film may be opened at an instant: what the air, its damp and the core must keep to
// while it is open (docs/models/limits.md).
#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "wetout/climate/core.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/conditions.hpp"
#include "wetout/schedule/defaults.hpp"

namespace wetout::schedule {

enum class Limit {
  weather,     ///< the weather is not known all the time that the film is open
  foul_air,    ///< an unvented heater burns in the room
  cold,        ///< of the room's air
  warm,        ///< likewise
  dew_margin,  ///< surface above dew point
  humidity,    ///< of the room's air, from an hour before wet-out
  core_rise,   ///< of the core above its value at wet-out, until gel
};
inline constexpr std::size_t limit_count = 7;

/// "weather", "foul_air", "cold", "warm", "dew_margin", "humidity", "core_rise".
std::string_view to_string(Limit limit);

/// What one resin on one core keeps to.
struct FilmRules {
  units::Temperature lowest;
  std::optional<units::Temperature> highest;
  std::optional<units::Temperature> notice_below;  ///< where the sheet prints no lowest
  double humidity_most = 1.0;                      ///< share
  std::optional<double> humidity_notice;           ///< where the sheet prints no limit
  units::TempDelta margin_least;
  units::TempDelta core_rise_most;
};
FilmRules rules_for(const resin::Product& product, climate::FoamKind foam, bool sealed,
                    const LimitDefaults& defaults = {});

/// When a film is open: wet-out goes from `start` to `wet_out`.
struct OpenFilm {
  time::Instant start, wet_out, gel, tack_free;
};

enum class State { good, notice, refuse };

std::string_view to_string(State state);

/// One limit at its worst instant. `value` is the forecast's, unmoved: celsius, kelvin, share.
/// `slack` is what is left of it to `bound` with the forecast moved the bad way; below 0 the start
/// is refused. `breaks_at_kelvin` is how far the room's air may still turn the bad way, unguarded,
/// before the limit breaks (the dew point staying as it is; for core_rise: the core).
struct Tested {
  Limit limit = Limit::weather;
  State state = State::good;
  time::Instant at;
  double value = 0.0;
  double bound = 0.0;
  double slack = 0.0;
  double breaks_at_kelvin = 0.0;
};

/// What a start comes to, without the details.
struct Verdict {
  State state = State::good;
  std::optional<Limit> limit;  ///< the first in the order of Limit that gives the state
  /// floor(10 slack/scale), at most 5, of cold, warm, dew_margin, humidity, core_rise; 5 for one
  /// that is not tested.
  std::array<std::uint8_t, 5> tightness{5, 5, 5, 5, 5};
};

/// Asks the same conditions about many films. Ranges are looked up in constant time. Copies share
/// what they look up.
class LimitTester {
 public:
  explicit LimitTester(Conditions conditions, LimitDefaults defaults = {});

  [[nodiscard]] const Conditions& conditions() const;
  [[nodiscard]] Verdict verdict(const OpenFilm& film, const FilmRules& rules) const;
  /// Each limit that can be tested, in the order of Limit. Without humidity the two that need it
  /// are missing.
  [[nodiscard]] std::vector<Tested> details(const OpenFilm& film, const FilmRules& rules) const;

 private:
  struct Ground;
  std::shared_ptr<const Ground> ground_;
  LimitDefaults defaults_;
};

}  // namespace wetout::schedule
