// How long a batch may be used. One interface: today by the data sheet's pot life, with the film
// and cup models behind it when they are built (docs/models/working_time.md).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

struct Situation {
  units::Mass mass;  ///< in one cup
  units::Temperature air;
  units::Temperature resin;  ///< as mixed
  const Cup* cup = nullptr;  ///< may be unknown
  /// When the cup will have been poured out, from mixing: asked for to learn `spread_within`.
  std::optional<units::Duration> emptied = std::nullopt;
};

struct WorkingTime {
  units::Duration use_within;          ///< from mixing
  std::optional<units::Duration> gel;  ///< in the cup; null until it is modelled
  std::optional<units::Temperature> peak;
  std::optional<bool> runs_away;
  base::Notices notices;  ///< subject left to the caller
  /// From mixing, until the film has come too far to be spread; null when it was not asked for, is
  /// not modelled, or the cup is no longer usable by then.
  std::optional<units::Duration> spread_within = std::nullopt;
  /// Names of the defaults the numbers hang on, where the model knows (a test moves each).
  std::vector<std::string> assumed = {};
};

class WorkingTimes {
 public:
  virtual ~WorkingTimes() = default;
  /// Problems: "resin.no_time" when the sheet prints neither pot life, film gel nor tack-free.
  [[nodiscard]] virtual base::Result<WorkingTime> of(const Product& product,
                                                     const Situation& situation) const = 0;
};

/// Half of the data sheet's pot life, moved to the resin's temperature by one activation energy.
/// The lower end of a printed range counts. The batch's mass is not in it: a notice says so where
/// it is above the mass the pot life was printed for.
class SheetWorkingTimes : public WorkingTimes {
 public:
  explicit SheetWorkingTimes(const Defaults& defaults) : defaults_(defaults) {}
  [[nodiscard]] base::Result<WorkingTime> of(const Product& product,
                                             const Situation& situation) const override;

 private:
  Defaults defaults_;
};

/// exp(E/R (1/to - 1/from)): what a time at `from` is multiplied with to hold at `to`.
double arrhenius_factor(double energy_kj_mol, units::Temperature from, units::Temperature to);

/// The temperature at which a time printed for `from` has grown to `factor` times itself.
units::Temperature temperature_for_factor(double energy_kj_mol, units::Temperature from,
                                          double factor);

}  // namespace wetout::resin
