// `potlife`: how long a batch of a resin lasts.
#pragma once

#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/potlife_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct PotLifeRequest {
  std::string resin;                ///< of the shop file, as typed
  std::optional<units::Mass> mass;  ///< else that of the sheet's pot life, else 200 g
  MixingChoices choices;
  std::optional<units::Duration> pour_after;
  std::optional<units::Duration> workable;  ///< asks for the largest batch that lasts so long
  bool table = false;
};

struct PotLifeAnswer {
  report::PotLifeDocument document;
  units::System units = units::System::us;  ///< of the shop
  int now_clock = 0;                        ///< minutes after midnight on the shop's wall clock
};

/// Keys of problems are arguments of the command, or lines of the shop file. Problems:
/// "shop.missing", "reference.resin", "reference.cup", "reference.ambiguous", "cup.beyond_sense",
/// "cup.too_small", those of files, resin::calibrate() and resin::polyester_gel().
base::Result<PotLifeAnswer> pot_life(const Workshop& workshop, const PotLifeRequest& request);

}  // namespace wetout::work
