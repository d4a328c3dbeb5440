// Problems of the size and kind that the search is for.
#include <gtest/gtest.h>

#include "board_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

Shop shop(Shop::Hours hours, double mean, double heated) {
  Shop shop;
  shop.hours = hours;
  shop.air = made_up_air(shop.days, mean, heated);
  return shop;
}

TEST(OneBoard, IsProvedAndKeepsTheRules) {
  int proved = 0;
  int infeasible = 0;
  for (const double mean : {16.0, 19.0, 22.0, 25.0}) {
    for (const auto hours : {Shop::Hours::evenings, Shop::Hours::days_and_saturday}) {
      for (const double heated : {-50.0, 20.0}) {
        const std::vector<Board> boards = {{"a", 1.0, hours != Shop::Hours::evenings}};
        const Problem problem = glass(shop(hours, mean, heated), boards);
        const Objective objective = board_objective(problem, boards);
        const Answer answer = solve(problem, objective);
        EXPECT_EQ(answer.effort.engine, Engine::chain);
        if (answer.state == State::infeasible) {
          ++infeasible;
          continue;
        }
        ++proved;
        ASSERT_EQ(answer.state, State::proved);
        EXPECT_EQ(broken_rules(problem, answer.schedule), std::vector<std::string>{});
        EXPECT_EQ(evaluate(problem, objective, answer.schedule), answer.value);
      }
    }
  }
  EXPECT_GE(proved, 8);
  EXPECT_GE(infeasible, 2);
}

TEST(OneBoard, MoreHoursNeverFinishInALaterSpan) {
  // The spans keep their starts, so that the first term can be compared; they only last longer.
  Shop given = shop(Shop::Hours::evenings, 22.0, 20.0);
  const std::vector<Board> boards = {{"a", 1.0, false}};
  std::int64_t last = std::numeric_limits<std::int64_t>::max();
  Problem problem = glass(given, boards);
  for (int extra = 0; extra < 3; ++extra) {
    const Answer answer = solve(problem, board_objective(problem, boards));
    ASSERT_EQ(answer.state, State::proved);
    EXPECT_LE(answer.value[0], last);
    last = answer.value[0];
    for (auto& span : problem.calendars[0].spans) span.second += slots_per_hour / 2;
  }
}

TEST(OneBoard, ATighterRuleNeverGivesABetterValue) {
  const std::vector<Board> boards = {{"a", 1.0, false}};
  const Problem problem = glass(shop(Shop::Hours::evenings, 24.0, 20.0), boards);
  const Objective objective = board_objective(problem, boards);
  const Answer free = solve(problem, objective);
  ASSERT_EQ(free.state, State::proved);
  // Each step in turn may not start where the best schedule has it.
  for (std::size_t op = 0; op < problem.ops.size(); op += 7) {
    if (!free.schedule.start[op]) continue;
    Problem tighter = problem;
    if (tighter.ops[op].allowed.size() == 0) tighter.ops[op].allowed = Bits(problem.horizon, true);
    tighter.ops[op].allowed.reset(*free.schedule.start[op]);
    const Answer answer = solve(tighter, objective);
    ASSERT_EQ(answer.state, State::proved);
    EXPECT_GT(answer.value, free.value) << problem.ops[op].id;
  }
}

TEST(ManyBoards, KeepTheRulesAndStayAboveTheirBound) {
  for (const bool sanding_room : {true, false}) {
    Shop given = shop(Shop::Hours::days_and_saturday, 24.0, 20.0);
    given.days = 28;
    given.air = made_up_air(given.days, 24.0, 20.0);
    given.people = 2;
    given.stands = 2;
    given.sanding_room = sanding_room;
    const std::vector<Board> boards = {
        {"a", 0.9, false}, {"b", 1.0, true}, {"c", 1.1, false}, {"d", 1.0, false}};
    const Problem problem = glass(given, boards);
    const Objective objective = board_objective(problem, boards);
    Limits limits;
    limits.max_steps = 60000;
    const Answer answer = solve(problem, objective, limits);
    EXPECT_EQ(answer.effort.engine, Engine::many);
    ASSERT_EQ(answer.state, State::feasible);
    EXPECT_EQ(broken_rules(problem, answer.schedule), std::vector<std::string>{});
    EXPECT_EQ(evaluate(problem, objective, answer.schedule), answer.value);
    EXPECT_LE(answer.bound, answer.value);
    EXPECT_LT(*gap(answer), 0.35);
    // The bound knows about the stands: it is above that of the boards one by one.
    std::int64_t alone = 0;
    for (const Board& board : boards) {
      Shop single = given;
      const Problem one = glass(single, {board});
      alone += solve(one, {{LastEnd{}}}).value[0];
    }
    EXPECT_GE(answer.bound[0], alone);
  }
}

}  // namespace
}  // namespace wetout::search::test
