// Two engines, one answer: labelling and branch and bound share the propagation only.
#include <gtest/gtest.h>

#include "random_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

TEST(TwoRoutes, LabellingAndBranchAndBoundAgreeOnLongerChains) {
  int proved = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Problem problem = random_problem(random, {.ops = 8, .horizon = 26});
    const Objective objective = random_objective(random, problem, true);
    Limits limits;
    limits.engine = Engine::chain;
    const Answer labels = solve(problem, objective, limits);
    limits.engine = Engine::general;
    limits.max_steps = 20000;
    const Answer nodes = solve(problem, objective, limits);
    ASSERT_TRUE(labels.state == State::proved || labels.state == State::infeasible);
    if (nodes.state == State::proved || nodes.state == State::infeasible) {
      ++proved;
      EXPECT_EQ(nodes.state, labels.state);
      EXPECT_EQ(nodes.value, labels.value);
    } else {
      EXPECT_EQ(labels.state, State::proved);
      EXPECT_LE(nodes.bound, labels.value);
      if (!nodes.value.empty()) {
        EXPECT_GE(nodes.value, labels.value);
      }
    }
  }
  EXPECT_GT(proved, 40);
}

TEST(TwoRoutes, PossibleStartsKeepEveryStartOfTheBestSchedule) {
  int seen = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Problem problem = random_problem(random, {.ops = 6, .horizon = 18});
    const auto starts = possible_starts(problem);
    const Answer answer = solve(problem, random_objective(random, problem, true));
    if (answer.state == State::infeasible) continue;
    ASSERT_EQ(starts.size(), problem.ops.size());
    for (std::size_t i = 0; i < problem.ops.size(); ++i) {
      if (!answer.schedule.start[i]) continue;
      EXPECT_TRUE(starts[i].test(*answer.schedule.start[i]));
      ++seen;
    }
  }
  EXPECT_GT(seen, 200);
}

}  // namespace
}  // namespace wetout::search::test
