// The parts of a problem that only share places: boards.
#pragma once

#include <vector>

#include "wetout/search/objective.hpp"
#include "wetout/search/problem.hpp"

namespace wetout::search {

/// Operations by part, each rising. Lags, relations, groups and places kept from one operation to
/// another tie operations together; a shared place does not.
std::vector<std::vector<int>> parts_of(const Problem& problem);

}  // namespace wetout::search
