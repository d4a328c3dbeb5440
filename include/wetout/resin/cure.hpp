// One resin fitted to its data sheet: what film and cup need. Plain data, made by calibrate().
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/resin/cup.hpp"
#include "wetout/resin/kinetics.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// What happens to a film, in the order in which it is printed.
enum class Milestone {
  gel,
  trim_until,  ///< laps are cut from gel until then
  recoat_from,
  tack_free,
  handle,
  sandable,
  recoat_until,
  full_cure,
};
inline constexpr std::size_t milestone_count = 8;
inline constexpr std::array<Milestone, milestone_count> milestones{
    Milestone::gel,    Milestone::trim_until, Milestone::recoat_from,  Milestone::tack_free,
    Milestone::handle, Milestone::sandable,   Milestone::recoat_until, Milestone::full_cure};

/// The stable word: "gel", "trim_until", "recoat_from", "tack_free", "handle", "sandable",
/// "recoat_until", "full_cure".
std::string_view to_string(Milestone milestone);
/// The line of a shop file that prints it: "gel", "trim", "recoat", "sand" ...
std::string_view sheet_key(Milestone milestone);

template <class T>
class PerMilestone {
 public:
  T& operator[](Milestone m) { return values_[static_cast<std::size_t>(m)]; }
  const T& operator[](Milestone m) const { return values_[static_cast<std::size_t>(m)]; }
  friend bool operator==(const PerMilestone&, const PerMilestone&) = default;

 private:
  std::array<T, milestone_count> values_{};
};

struct Cure {
  std::string resin;
  Kinetics kinetics;
  Glass glass;
  double gel_conversion = 0.57735;
  Bulk bulk;
  Cooling cooling;

  /// The clock's temperature: the sheet's first.
  units::Temperature sheet_air = units::Temperature::celsius(25);
  /// Equivalent ages at `sheet_air`, of what the sheet prints (trim and handle follow from Tg where
  /// it does not). The safe end of a range: the later one of what must not be too early, the
  /// earlier of what must not be too late.
  PerMilestone<std::optional<units::Duration>> ages;
  /// The earliest gel a printed range allows over `ages[gel]`: spreading keeps clear of that.
  double earliest_gel = 1.0;
  /// Longest time until recoat, whatever the clock says.
  std::optional<units::Duration> recoat_longest;

  // Floors on Tg beside the clock.
  double trim_below_kelvin = 10.0;
  double sandable_above_kelvin = 5.0;
  std::optional<units::Temperature> full_cure_tg;  ///< at least
  double patience = 3.0;  ///< a floor later than this times the clock is not reached

  std::optional<units::Temperature> lowest_air;

  // The cup
  double lever = 0.0;       ///< u, inside -2..2
  double cup_factor = 1.0;  ///< on every time in a cup; below 1 where the lever does not reach
  double usable_rise_kelvin = 20.0;
  double usable_share = 1.0 / 3.0;
  units::Temperature runs_away = units::Temperature::celsius(200);

  friend bool operator==(const Cure&, const Cure&) = default;
};

/// The cup of a fitted resin, ready to be followed.
CupRun cup_run(const Cure& cure, const Fill& fill, units::Temperature air,
               units::Temperature resin);

/// The time a cup may be used, from mixing: the middle has risen by its own heat, or a part of gel
/// conversion is reached, whichever comes first. Null where the course was not followed so far.
std::optional<units::Duration> usable(const CupCourse& course);

}  // namespace wetout::resin
