// How long a batch may be used: the cup's clock, and the film's once it is poured out
// (docs/models/working_time.md).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/fill_heat.hpp"
#include "wetout/resin/pot_life.hpp"
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

/// Times from mixing.
struct WorkingTime {
  units::Duration use_within;
  units::Duration gel;                     ///< in the cup; of a polyester, of a film
  std::optional<units::Temperature> peak;  ///< null where it runs away, or is not modelled
  std::optional<bool> runs_away;           ///< null for a polyester
  base::Notices notices;                   ///< subject: the resin's id
  /// Until the film has come too far to be spread; null when it was not asked for, or the cup is no
  /// longer usable by then.
  std::optional<units::Duration> spread_within;
  /// Names of the cure defaults that an epoxy's numbers hang on (a test moves each).
  std::vector<std::string> assumed;
};

/// Fits each resin once and keeps the fits. Answers are the same with and without a cache. Not for
/// several threads at once.
class WorkingTimes {
 public:
  /// `cache` outlives it.
  explicit WorkingTimes(const Defaults& defaults, AnswerCache* cache = nullptr)
      : defaults_(defaults), cache_(cache) {}

  /// An epoxy, by its cup and film. Problems: those of calibrate() and pot_life().
  [[nodiscard]] base::Result<WorkingTime> of(const Product& product,
                                             const Situation& situation) const;
  /// A film of an epoxy spread at once, without a cup before. Problems: those of calibrate().
  [[nodiscard]] base::Result<units::Duration> film_open(const Product& product,
                                                        units::Temperature air) const;
  /// An epoxy that fills a gap in foam. Problems: those of calibrate().
  [[nodiscard]] base::Result<FillHeat> fill(const Product& product, units::Length gap,
                                            const FillSurroundings& foam, units::Temperature air,
                                            units::Temperature resin) const;
  /// The fit behind them.
  [[nodiscard]] const base::Result<Calibration>& calibration(const Product& product) const;

 private:
  struct Fitted {
    base::Result<Calibration> fit;
    std::optional<PotLives> lives;  ///< where it fits
  };
  [[nodiscard]] const Fitted& fitted(const Product& product) const;
  AnswerCache* cache() const { return cache_ != nullptr ? cache_ : &own_cache_; }

  Defaults defaults_;
  AnswerCache* cache_;
  mutable MemoryCache own_cache_;
  mutable std::map<std::string, Fitted> fitted_;
};

/// A polyester by its sheet's table: a share of the gel time that this dose of catalyst gives at
/// the resin's temperature in the cup, at the air's as a film. No peak. Problems: those of
/// polyester_gel(). Notices: "polyester.no_cup" always, "polyester.beyond_table" where a
/// temperature lies outside those that the sheet prints.
base::Result<WorkingTime> polyester_working_time(const Product& product, double dose,
                                                 const Situation& situation,
                                                 const Defaults& defaults);

/// Everything a fit depends on, as a text: equal texts, equal fits.
std::string sheet_text(const Product& product);

}  // namespace wetout::resin
