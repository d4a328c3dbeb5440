// How one film cures, as it is told: milestones with their conversion and Tg, and the curve
// between.
#pragma once

#include <optional>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {

struct CourseMilestone {
  Milestone milestone = Milestone::gel;
  bool reached = false;
  /// The rest is of no meaning unless reached.
  units::Duration after;  ///< the start
  time::Instant at;       ///< to the nearest second
  double conversion = 0.0;
  units::Temperature tg, air;
  bool extrapolated = false;  ///< the air was below the sheet's lowest temperature
  bool beyond_air = false;    ///< after the last known air
  /// Where it is not reached: the nearest constant temperature that would do it.
  std::optional<units::Temperature> would_do;
};

struct CureCourse {
  time::Instant start;
  std::vector<CourseMilestone> milestones;  ///< printed or known ones, in order of time; then those
                                            ///< not reached
  std::vector<FilmState> curve;             ///< evenly spaced from the start
  base::Notices notices;                    ///< subject: the resin's id
};

struct CourseSettings {
  /// Of the curve; without it until the last milestone reached, but at most 14 days.
  std::optional<units::Duration> until;
  std::size_t points = 97;
};

/// `air_kelvin`: room air, or that of a warm box. Below the sheet's lowest temperature times are
/// extrapolated and full cure is not claimed: what counts is the constant temperature that would
/// have done the same by then.
/// Problems: "cure.beyond_sense" (air outside 0 to 60 C somewhere between its ends).
base::Result<CureCourse> cure_course(const Calibration& calibration,
                                     const time::History& air_kelvin, time::Instant start,
                                     const CourseSettings& settings = {});

}  // namespace wetout::resin
