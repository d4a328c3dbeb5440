// Equivalent age: how long at the data sheet's temperature does the same as a time in changing air.
//
//   theta(t) = integral of exp[E/R (1/T_sheet - 1/T)] dt
//
// Prefix sums over air that is straight between its points; docs/models/film.md.
#pragma once

#include <cstddef>
#include <vector>

#include "wetout/time/history.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// Times are seconds after the history's first point and may lie outside it, where the end values
/// hold. Differences of ages, and the times found for them, are good to 1e-10 of themselves.
class Clock {
 public:
  /// `air_kelvin`: above 0 K everywhere.
  Clock(double energy_j_per_mol, units::Temperature sheet_air, const time::History& air_kelvin);

  /// Where the last look-up was, so that neighbouring ones are found at once.
  using Place = std::size_t;

  [[nodiscard]] double age(double time_s, Place& place) const;
  [[nodiscard]] double age(double time_s) const {
    Place place = 0;
    return age(time_s, place);
  }
  /// The time at which an age is come to.
  [[nodiscard]] double when(double age_s, Place& place) const;
  [[nodiscard]] double when(double age_s) const {
    Place place = 0;
    return when(age_s, place);
  }

  /// A stretch of straight air.
  struct Panel {
    double start_s, end_s;
    double kelvin, kelvin_per_s;
    double age_s;   ///< at the start
    double speed;   ///< d age/dt at the start
    double growth;  ///< of ln(speed), 1/s, its mean over the panel
  };
  [[nodiscard]] const Panel& panel_at(double time_s, Place& place) const;
  [[nodiscard]] double kelvin_at(double time_s, Place& place) const {
    const Panel& p = panel_at(time_s, place);
    return p.kelvin + p.kelvin_per_s * (time_s - p.start_s);
  }
  /// At the end of the panel last looked at: not of the last one, which has none.
  [[nodiscard]] double age_at_end(Place place) const { return panels_[place + 1].age_s; }
  [[nodiscard]] double speed(double kelvin) const;
  [[nodiscard]] double lowest_kelvin() const { return lowest_; }

 private:
  void add(double start, double end, double from_kelvin, double to_kelvin);
  [[nodiscard]] double gained(const Panel& panel, double until_s) const;

  double e_over_r_;
  double inverse_sheet_;
  double lowest_;
  std::vector<Panel> panels_;  // the first and last reach to infinity at constant temperature
};

}  // namespace wetout::resin
