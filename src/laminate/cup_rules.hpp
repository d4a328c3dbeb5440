// The rules a batch has to hold: it fits its cup, it is emptied while the cup is usable, it is
// spread while the film is (docs/models/batches.md).
#pragma once

#include <optional>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/resin/weigh.hpp"
#include "wetout/resin/working_time.hpp"
#include "wetout/units/milligrams.hpp"

namespace wetout::laminate {

/// One batch as it would be mixed.
struct Cupful {
  const resin::Product* product = nullptr;  ///< a polyester with its dose (dosing.hpp)
  units::Milligrams part_a, part_b, total;
  const resin::Cup* cup = nullptr;  ///< may be unknown
  units::Temperature air, resin;
  units::Duration spread;  ///< attended time to spread it, from when it is poured out
};
Cupful cupful(const resin::Product& product, const resin::Weighed& mix);
/// Cup, temperatures and clocks of a batch.
void set_clocks(const Cupful& as_mixed, const resin::WorkingTime& time, Batch& batch);

struct Verdict {
  enum class Fails { nothing, cup_too_small, emptied_too_late, spread_too_late };
  Fails fails = Fails::nothing;
  /// Of the rule that fails: millilitres for the cup, else minutes.
  double value = 0.0;
  double limit = 0.0;
  /// Null where a rule failed that needed no clock.
  std::optional<resin::WorkingTime> time;

  [[nodiscard]] bool good() const { return fails == Fails::nothing; }
};

units::Duration time_to_empty(units::Mass mass, const Defaults& settings);

class CupRules {
 public:
  /// All outlive it.
  CupRules(const Defaults& settings, const resin::WorkingTimes& times)
      : settings_(settings), times_(times) {}

  [[nodiscard]] units::Volume takes(const resin::Cup& cup) const;
  /// Asks for a clock only when no cheaper rule fails. Problems: those of resin::WorkingTimes.
  [[nodiscard]] base::Result<Verdict> judge(const Cupful& batch) const;
  /// The clock alone, whatever the rules say.
  [[nodiscard]] base::Result<resin::WorkingTime> clock(const Cupful& batch) const;

 private:
  const Defaults& settings_;
  const resin::WorkingTimes& times_;
};

}  // namespace wetout::laminate
