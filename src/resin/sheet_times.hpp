// What a sheet prints about a film, one line a time.
#pragma once

#include <optional>
#include <vector>

#include "wetout/resin/calibrate.hpp"

namespace wetout::resin {

struct SheetLine {
  Milestone milestone;
  units::Temperature air;
  units::DurationRange time;
  /// Ranges are fitted by their middle.
  [[nodiscard]] double middle_s() const {
    return 0.5 * (units::in_seconds(time.low) + units::in_seconds(time.high));
  }
  /// The clock runs on the safe end: the earlier one of what must not be too late.
  [[nodiscard]] double safe_s() const {
    const bool must_not_be_late =
        milestone == Milestone::recoat_until || milestone == Milestone::trim_until;
    return units::in_seconds(must_not_be_late ? time.low : time.high);
  }
};

/// In the order of milestones, each in the sheet's order.
std::vector<SheetLine> film_lines(const Product& product);

/// The temperature the sheet is read at: of its first line of film gel, else of the first milestone
/// printed, else of the pot life. Null for an empty sheet.
std::optional<units::Temperature> sheet_air(const Product& product,
                                            const std::vector<SheetLine>& lines);

/// The line a milestone's clock is set by: the one printed at `air`, else its first.
const SheetLine* own_line(const std::vector<SheetLine>& lines, Milestone milestone,
                          units::Temperature air);

/// What second temperatures say about the activation energy.
struct SheetEnergy {
  double raw_kj_mol = 0.0;  ///< least squares over the milestones printed more than once
  double sd_kj_mol = 0.0;
  /// For the message: time at `second` over time at `first`.
  units::Temperature first, second;
};
std::optional<SheetEnergy> sheet_energy(const std::vector<SheetLine>& lines, double pair_rounding);

/// Ages at the clock's temperature that do not come in order.
base::Problems order_problems(const Cure& cure);

}  // namespace wetout::resin
