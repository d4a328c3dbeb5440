// Two routes to one answer: the engines against every start of small random problems.
#include "brute_force.hpp"

#include <gtest/gtest.h>

#include "random_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

struct Tally {
  int feasible = 0;
  int infeasible = 0;
};

void compare(std::uint64_t seed, const Shape& shape, Engine engine, Tally& tally) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Random random(seed);
  const Problem problem = random_problem(random, shape);
  const Objective objective = random_objective(random, problem, random.chance(60));
  const auto expected = brute_force(problem, objective);
  Limits limits;
  limits.engine = engine;
  const Answer answer = solve(problem, objective, limits);
  ++(expected ? tally.feasible : tally.infeasible);
  if (!expected) {
    EXPECT_EQ(answer.state, State::infeasible);
    return;
  }
  ASSERT_EQ(answer.state, State::proved);
  EXPECT_EQ(broken_rules(problem, answer.schedule), std::vector<std::string>{});
  EXPECT_EQ(answer.value, expected->value);
  EXPECT_EQ(answer.bound, answer.value);
  EXPECT_EQ(answer.effort.engine, engine);
}

TEST(BruteForce, LabellingFindsTheSameOfOneChain) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    compare(seed, {.ops = 5, .horizon = 13}, Engine::chain, tally);
    if (HasFailure()) FAIL() << "seed " << seed;
  }
  EXPECT_GT(tally.feasible, 150);
  EXPECT_GT(tally.infeasible, 50);
}

TEST(BruteForce, BranchAndBoundFindsTheSameOfAnyProblem) {
  Tally tally;
  for (std::uint64_t seed = 1001; seed <= 1500; ++seed) {
    compare(seed, {.ops = 4, .horizon = 12, .chain = false}, Engine::general, tally);
    if (HasFailure()) FAIL() << "seed " << seed;
  }
  EXPECT_GT(tally.feasible, 150);
  EXPECT_GT(tally.infeasible, 50);
}

// Insertion proves little, but what it says must be true: the bound is below the best value, the
// schedule keeps the rules and is not better than the best.
TEST(BruteForce, BoardsThatShareAreNeverBetterThanTheBestNorBelowTheirBound) {
  int found = 0;
  int best = 0;
  int missed = 0;
  for (std::uint64_t seed = 2001; seed <= 2300; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Problem problem = random_pair(random, {.ops = 3, .horizon = 10});
    const Objective objective{{LastEnd{{{0, 1, 2}, {3, 4, 5}}, -1}, TightCounts{}, Sum{}}};
    Limits limits;
    limits.engine = Engine::many;
    Answer answer;
    try {
      answer = solve(problem, objective, limits);
    } catch (const std::logic_error&) {
      continue;  // more than two parts, not all of them chains
    }
    const auto expected = brute_force(problem, objective);
    if (!expected) {
      EXPECT_TRUE(answer.state == State::infeasible || answer.state == State::stopped);
      continue;
    }
    ASSERT_NE(answer.state, State::infeasible);
    EXPECT_LE(answer.bound, expected->value);
    if (answer.value.empty()) {
      ++missed;
      continue;
    }
    ++found;
    EXPECT_EQ(broken_rules(problem, answer.schedule), std::vector<std::string>{});
    EXPECT_EQ(answer.value, evaluate(problem, objective, answer.schedule));
    EXPECT_GE(answer.value, expected->value);
    if (answer.value[0] == expected->value[0]) ++best;
    if (answer.state == State::proved) {
      EXPECT_EQ(answer.value, expected->value);
    }
  }
  EXPECT_GT(found, 60);
  EXPECT_GT(best * 100, found * 90);
  EXPECT_EQ(missed, 0);
}

}  // namespace
}  // namespace wetout::search::test
