// Who does what, once it is known when.
#pragma once

#include <vector>

#include "wetout/schedule/arrange.hpp"

namespace wetout::schedule {

/// Gives each step that is still to be done to somebody who is there from its start to its end and
/// does nothing else meanwhile; -1 where nobody is. `only`: of some steps of some boards the one
/// person who may do them, else -1. False where somebody is missing.
bool share_out(const Setting& setting, const std::vector<std::vector<int>>& only,
               std::vector<PlacedStep>& steps);

}  // namespace wetout::schedule
