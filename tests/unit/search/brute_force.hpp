// The slow, simple version: every choice, every start, every slot looked at. Written from the words
// of problem.hpp and objective.hpp alone; shares no code with the engines.
#pragma once

#include <optional>

#include "wetout/search/objective.hpp"

namespace wetout::search::test {

struct Best {
  Schedule schedule;
  Value value;
};

/// The best schedule, or nothing when none keeps the rules.
std::optional<Best> brute_force(const Problem& problem, const Objective& objective);

}  // namespace wetout::search::test
