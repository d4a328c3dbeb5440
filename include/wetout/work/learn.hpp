// `learn`: the shop's own losses and speeds, from what was recorded.
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/report/learn_document.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Nothing is written. A log that does not exist yet says nothing.
base::Result<report::LearnDocument> learn(const Workshop& workshop);

}  // namespace wetout::work
