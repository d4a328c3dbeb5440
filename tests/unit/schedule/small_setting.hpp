// Small settings with everything in them, on coarse grids, the same on every machine.
#pragma once

#include <memory>

#include "search/random_problem.hpp"
#include "wetout/schedule/setting.hpp"

namespace wetout::schedule::sample {

using search::test::Random;

struct SmallShape {
  int boards = 1;
  int least_steps = 4, most_steps = 8;  ///< of each board
  int most_wets = 2;
  Slot slots = 14;
  bool facts = true;             ///< some have been begun
  bool different_people = true;  ///< where there are two, each has hours of its own
};

/// Steps in the order of the work as steps_of() chains them, random lags after films, films and
/// weather that know no order, hours, limits, facts, fixed starts.
Setting small_setting(Random& random, const SmallShape& shape = {});

/// A resin for what small_setting() calls "resin-0" and "resin-1": for films that are on a board.
std::shared_ptr<const FilmSource> some_source();

}  // namespace wetout::schedule::sample
