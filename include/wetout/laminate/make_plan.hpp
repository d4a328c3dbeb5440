// From a board, its coats and the shop to the plan. Pure: no files, no clock.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

struct PlanInput {
  board::Spec board;
  std::vector<CoatSpec> coats;
  Shop shop;
  units::Temperature air;                        ///< of the room while mixing
  std::optional<units::Temperature> resin_temp;  ///< of the resin in its cans; else the air's
  std::optional<std::string> cup;                ///< use this cup and no other
  std::vector<Assumption> assumed;               ///< by the reader of the file
  /// By coat: instead of the shop's margin.
  std::map<std::string, double, std::less<>> margins = {};
};

/// Everything that is wrong between board, coats and shop before anything is computed: unknown
/// cloth, resin, part, cup; foam and chemistry that do not go together; an air temperature outside
/// 0-40 C. Keys are those of the job file ("coat[2].ply[0].cloth"); empty when all is well.
base::Problems check(const PlanInput& input);

/// The plan, or why there is none: what check() and board::Hull::make find, orders that loop
/// ("coat.order_loop"), laps wider than the other face, batches that no cup or pot life allows
/// ("plan.goes_off", "pour.step_too_coarse"), data sheets that contradict themselves. To the
/// milligram, for every coat mix = A + B + additives = kept + losses + margin + rounding.
/// The same with and without a cache of cups.
base::Result<Plan> make_plan(const PlanInput& input, const Defaults& values = defaults(),
                             resin::AnswerCache* cache = nullptr);

/// What to beware of whenever resin is mixed, most urgent first.
std::vector<std::string> mixing_cautions(resin::Chemistry chemistry);

/// Any mass at a resin's ratio: for whoever runs short in the middle of a coat. `mass` is A + B +
/// additives; the scale's step may raise it.
struct LooseMix {
  std::string resin;
  units::Mass mass;
  std::vector<Additive> additives;
  units::Temperature air;
  std::optional<units::Temperature> resin_temp;
  std::optional<std::string> cup;  ///< this one and no other
  std::optional<double> dose;      ///< of a polyester's catalyst; else the middle of its range
};
struct LooseBatches {
  Ratio ratio;
  std::vector<Batch> batches;  ///< the fewest that fit a cup and can be emptied in time
  base::Notices notices;
};
/// Problems: "mix.goes_off" where no number of cups does, "pour.step_too_coarse", those of the data
/// sheet.
base::Result<LooseBatches> mix(const Shop& shop, const LooseMix& wanted,
                               const Defaults& values = defaults(),
                               resin::AnswerCache* cache = nullptr);

}  // namespace wetout::laminate
