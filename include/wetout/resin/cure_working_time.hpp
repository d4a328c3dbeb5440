// Working times by the two clocks: the cup's, and the film's once it is poured out.
#pragma once

#include <map>
#include <string>

#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/working_time.hpp"

namespace wetout::resin {

/// Fits each resin once. Answers are the same with and without a cache. Not for several threads at
/// once. A polyester has no cup: it is answered by SheetWorkingTimes.
/// Problems: those of calibrate() and pot_life().
class CureWorkingTimes : public WorkingTimes {
 public:
  /// `cache` outlives it.
  explicit CureWorkingTimes(const Defaults& defaults, AnswerCache* cache = nullptr)
      : defaults_(defaults), cache_(cache) {}

  [[nodiscard]] base::Result<WorkingTime> of(const Product& product,
                                             const Situation& situation) const override;
  /// The fit behind it.
  [[nodiscard]] const base::Result<Calibration>& calibration(const Product& product) const;

 private:
  Defaults defaults_;
  AnswerCache* cache_;
  mutable MemoryCache own_cache_;
  mutable std::map<std::string, base::Result<Calibration>> fitted_;
};

/// Everything a fit depends on, as a text: equal texts, equal fits.
std::string sheet_text(const Product& product);

}  // namespace wetout::resin
