// The objective's part of a model.
#pragma once

#include <vector>

#include "model.hpp"

namespace wetout::search {

/// Fills model.goal, the sets and costs of its operations; `local` as in compile.cpp.
void compile_goal(const Problem& problem, const Objective& objective, const std::vector<int>& local,
                  Model& model);

}  // namespace wetout::search
