// Resin spread thin: it has the air's temperature, and hardens by the clock (docs/models/film.md).
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "wetout/resin/cure.hpp"
#include "wetout/time/history.hpp"

namespace wetout::resin {

struct MilestoneTime {
  bool reached = false;
  double after_s = 0.0;  ///< seconds after the film's start; of no meaning unless reached

  friend bool operator==(const MilestoneTime&, const MilestoneTime&) = default;
};
/// Null where the sheet prints no line for it.
using FilmTimes = PerMilestone<std::optional<MilestoneTime>>;

struct FilmState {
  double after_s = 0.0;
  units::Temperature air;
  double conversion = 0.0;
  units::Temperature tg;
};

struct FilmGround;

/// One resin in one room's air. Milestones run on the clock, exact on air that is straight between
/// its points; the floors on Tg come from the path of conversion, within 1e-6 of conversion.
///
/// Order, reached or not: gel <= tack-free <= sandable <= full cure, gel <= recoat from <= recoat
/// until, tack-free <= handle, gel <= trim until.
class Film {
 public:
  /// `air_kelvin`: room air; beyond its ends the end values hold.
  Film(const Cure& cure, const time::History& air_kelvin);

  [[nodiscard]] FilmTimes times(time::Instant start) const;
  /// The same for many starts, in rising order, at a fraction of the cost; times of floors within
  /// a second and 1e-5 of themselves.
  [[nodiscard]] std::vector<FilmTimes> times(std::span<const time::Instant> starts) const;
  /// The same where only some starts can come into question (`followed`, one for each start). What
  /// follows from the clock is told of all; what needs the path of conversion is looked for of
  /// those alone, and full cure of none: it takes weeks of the air to follow. Not reached is what
  /// was not looked for.
  [[nodiscard]] std::vector<FilmTimes> times(std::span<const time::Instant> starts,
                                             const std::vector<bool>& followed) const;
  /// Conversion and Tg at some times after the start, in rising order, the first at 0 or later.
  [[nodiscard]] std::vector<FilmState> states(time::Instant start,
                                              std::span<const double> after_s) const;
  [[nodiscard]] FilmState state(time::Instant start, double after_s) const {
    return states(start, {&after_s, 1}).front();
  }
  /// Whether a time lies after the last known air.
  [[nodiscard]] bool beyond_air(time::Instant start, double after_s) const;

 private:
  [[nodiscard]] double seconds(time::Instant instant) const;

  std::shared_ptr<const FilmGround> ground_;
  time::Instant first_, last_;
};

/// The constant temperature nearest to `near`, on half degrees from 0 to 60 C, at which the
/// milestone is reached; null where none is, or the sheet does not print it.
std::optional<units::Temperature> temperature_reaching(const Cure& cure, Milestone milestone,
                                                       units::Temperature near);

}  // namespace wetout::resin
