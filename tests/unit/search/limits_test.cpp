// Time, interruption, progress, memory: what is returned when there is not enough of it.
#include <gtest/gtest.h>

#include "board_problem.hpp"
#include "rcpsp_max.hpp"
#include "small_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

struct Case {
  Problem problem;
  Objective objective;
};

Case one_board() {
  Shop shop;
  shop.hours = Shop::Hours::all_day;
  shop.air = made_up_air(shop.days, 22.0, 20.0);
  const std::vector<Board> boards = {{"a", 1.0, false}};
  Problem problem = glass(shop, boards);
  Objective objective = board_objective(problem, boards);
  return {std::move(problem), std::move(objective)};
}

Case three_boards() {
  Shop shop;
  shop.days = 21;
  shop.people = 2;
  shop.hours = Shop::Hours::days_and_saturday;
  shop.air = made_up_air(shop.days, 24.0, 20.0);
  const std::vector<Board> boards = {{"a", 1.0, false}, {"b", 1.1, false}, {"c", 0.9, false}};
  Problem problem = glass(shop, boards);
  Objective objective = board_objective(problem, boards);
  return {std::move(problem), std::move(objective)};
}

void expect_honest(const Case& given, const Answer& answer, const Value& best) {
  EXPECT_EQ(broken_rules(given.problem, answer.schedule), std::vector<std::string>{});
  EXPECT_EQ(evaluate(given.problem, given.objective, answer.schedule), answer.value);
  EXPECT_GE(answer.value, best);
  EXPECT_LE(answer.bound, best);
}

TEST(Limits, StoppedAnywhereTheAnswerIsHonest) {
  const Case given = one_board();
  const Answer whole = solve(given.problem, given.objective);
  ASSERT_EQ(whole.state, State::proved);
  int feasible = 0;
  for (std::uint64_t steps = 1; steps < whole.effort.steps; steps = steps * 2 + 1) {
    Limits limits;
    limits.max_steps = steps;
    const Answer answer = solve(given.problem, given.objective, limits);
    ASSERT_TRUE(answer.state == State::feasible || answer.state == State::stopped);
    EXPECT_LE(answer.bound, whole.value);
    if (answer.state != State::feasible) continue;
    ++feasible;
    expect_honest(given, answer, whole.value);
  }
  EXPECT_GE(feasible, 3);
}

TEST(Limits, TheClockIsTheCallers) {
  const Case given = one_board();
  double now_s = 100.0;
  Limits limits;
  limits.elapsed_s = [&] { return now_s += 0.01; };
  limits.time_limit_s = 100.5;
  const Answer answer = solve(given.problem, given.objective, limits);
  EXPECT_EQ(answer.state, State::feasible);
  expect_honest(given, answer, solve(given.problem, given.objective).value);
  EXPECT_LT(now_s, 102.0);
}

TEST(Limits, AnInterruptionEndsIt) {
  const Case given = three_boards();
  int looks = 0;
  Limits limits;
  limits.interrupted = [&] { return ++looks > 40; };
  const Answer answer = solve(given.problem, given.objective, limits);
  EXPECT_EQ(answer.state, State::feasible);
  EXPECT_EQ(answer.effort.engine, Engine::many);
  EXPECT_EQ(broken_rules(given.problem, answer.schedule), std::vector<std::string>{});
  EXPECT_LT(looks, 60);
}

TEST(Limits, LittleMemoryCostsTheProofNotTheSchedule) {
  const Case given = one_board();
  const Answer whole = solve(given.problem, given.objective);
  Limits limits;
  limits.memory_bytes = 20000;
  const Answer answer = solve(given.problem, given.objective, limits);
  EXPECT_NE(answer.state, State::infeasible);
  EXPECT_NE(answer.state, State::proved);
  EXPECT_LE(answer.bound, whole.value);
  if (answer.state == State::feasible) expect_honest(given, answer, whole.value);
}

TEST(Limits, ProgressOnlyGetsBetter) {
  const Case given = three_boards();
  Value value;
  Value bound;
  int calls = 0;
  Limits limits;
  limits.progress = [&](const Progress& progress) {
    ++calls;
    if (progress.value != nullptr) {
      if (!value.empty()) {
        EXPECT_LE(*progress.value, value);
      }
      value = *progress.value;
      EXPECT_EQ(evaluate(given.problem, given.objective, *progress.best), value);
    }
    if (progress.bound != nullptr) {
      EXPECT_GE(*progress.bound, bound);
      bound = *progress.bound;
    }
  };
  const Answer answer = solve(given.problem, given.objective, limits);
  EXPECT_GT(calls, 10);
  EXPECT_EQ(value, answer.value);
  ASSERT_TRUE(gap(answer).has_value());
  EXPECT_GE(*gap(answer), 0.0);
  EXPECT_LT(*gap(answer), 0.3);
  EXPECT_FALSE(answer.bound_leaves_out.empty());
}

TEST(Limits, TheSameInputGivesTheSameAnswer) {
  const Case given = three_boards();
  Limits limits;
  limits.max_steps = 20000;
  const Answer once = solve(given.problem, given.objective, limits);
  const Answer again = solve(given.problem, given.objective, limits);
  EXPECT_EQ(once.schedule.start, again.schedule.start);
  EXPECT_EQ(once.value, again.value);
}

TEST(Limits, BranchAndBoundStoppedHasABoundBelowTheBest) {
  const auto folder = test_data() / "rcpsp-max";
  if (!std::filesystem::exists(test_data())) {
    GTEST_SKIP() << "no test data at " << test_data() << " (set WETOUT_TEST_DATA)";
  }
  const Problem problem = read_instance(folder / "ubo10" / "psp16.sch");
  for (const std::uint64_t steps : {2U, 10U, 50U, 200U}) {
    Limits limits;
    limits.max_steps = steps;
    const Answer answer = solve(problem, makespan(), limits);
    ASSERT_TRUE(answer.state == State::feasible || answer.state == State::stopped);
    ASSERT_EQ(answer.bound.size(), 1U);
    EXPECT_LE(answer.bound[0], 28);  // the published optimum
    if (answer.state == State::feasible) {
      EXPECT_GE(answer.value[0], 28);
    }
  }
}

}  // namespace
}  // namespace wetout::search::test
