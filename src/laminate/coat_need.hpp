// What one coat needs before anyone thinks of cups: cloth, resin kept, the losses that do not
// depend on the number of batches.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <vector>

#include "geometry.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/make_plan.hpp"
#include "wetout/laminate/plan.hpp"

namespace wetout::laminate {

struct CoatState {
  CoatNeed need;  ///< losses without the cups', no margin, no batches yet
  std::vector<PlyNeed> plies;
  base::Notices notices;
  std::set<std::string> assumed;  ///< cure defaults that its clocks hang on
};

/// What coats that went on before have left behind.
struct Progress {
  Wetted foam;
  bool hotcoat_done = false;  ///< the first film coat of a kind carries the overlap
  bool gloss_done = false;
};

/// `settings` holds the shop's values (settings.hpp). `index` is the coat's place in the file.
base::Result<CoatState> coat_need(const PlanInput& input, std::size_t index,
                                  const Geometry& geometry, const Defaults& settings,
                                  Progress& progress);

}  // namespace wetout::laminate
