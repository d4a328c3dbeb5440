// Values and rules worked out by hand on the small problem.
#include <gtest/gtest.h>

#include "small_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

using Rules = std::vector<std::string>;

/// wet at 2, tack-free at 7; next at 10, two before its window closes at 12.
Schedule in_window() { return {{2, 10, std::nullopt}, {0}}; }
/// wet at 4, tack-free at 13; scuff at 13 is too late for next: only a later span would do.
Schedule scuffed() { return {{0, 11, 10}, {1}}; }

Value value_of(const Term& term, const Schedule& schedule) {
  return evaluate(small_problem(), {{term}}, schedule);
}

TEST(Evaluate, LastEndIsTheEndOrItsSpan) {
  EXPECT_EQ(value_of(LastEnd{}, in_window()), Value{13});
  EXPECT_EQ(value_of(LastEnd{{}, 0}, in_window()), Value{10});
  EXPECT_EQ(value_of(LastEnd{{{0}, {1, 2}}, -1}, in_window()), Value{4 + 13});
  EXPECT_EQ(value_of(LastEnd{{{0, 1}, {2}}, -1}, in_window()), Value{13});
  // An end at the closing slot belongs to the span that closes there.
  EXPECT_EQ(value_of(LastEnd{{{0}}, 0}, {{4, 12, std::nullopt}, {0}}), Value{0});
}

TEST(Evaluate, TightCountsTakesWindowsAndOperations) {
  // 2 slots left of a scale of 10: level 2.
  EXPECT_EQ(value_of(TightCounts{5, 10}, in_window()), (Value{0, 0, 1, 0, 0}));
  EXPECT_EQ(value_of(TightCounts{2, 10}, in_window()), (Value{0, 0}));
  // The window belongs to the option that is not chosen.
  EXPECT_EQ(value_of(TightCounts{5, 10}, scuffed()), (Value{0, 0, 0, 0, 0}));
  Problem problem = small_problem();
  problem.ops[2].tightness.push_back({std::vector<std::uint8_t>(20, 1)});
  EXPECT_EQ(evaluate(problem, {{TightCounts{2, 10}}}, in_window()), (Value{0, 0}));
  EXPECT_EQ(evaluate(problem, {{TightCounts{2, 10}}}, scuffed()), (Value{0, 1}));
}

TEST(Evaluate, VisitsCountGapsOfTheGivenLength) {
  EXPECT_EQ(value_of(Visits{6, {}}, in_window()), Value{2});
  EXPECT_EQ(value_of(Visits{7, {}}, in_window()), Value{1});
  EXPECT_EQ(value_of(Visits{1, {}}, scuffed()), Value{2});
  EXPECT_EQ(value_of(Visits{6, {{0}, {1}, {2}}}, in_window()), Value{2});
}

TEST(Evaluate, SumStartsAndChoices) {
  EXPECT_EQ(value_of(Sum{}, in_window()), Value{12});
  EXPECT_EQ(value_of(Sum{{Slot{5}, Slot{0}, Slot{0}}}, in_window()), Value{17});
  // Order of the ids: next, scuff, wet.
  EXPECT_EQ(value_of(Starts{}, in_window()), (Value{10, -1, 2}));
  EXPECT_EQ(value_of(Starts{}, scuffed()), (Value{11, 10, 0}));
  EXPECT_EQ(value_of(Choices{}, scuffed()), Value{1});
}

TEST(BrokenRules, NamesEachKindOfRule) {
  Problem p = small_problem();
  EXPECT_EQ(broken_rules(p, in_window()), Rules{});
  EXPECT_EQ(broken_rules(p, scuffed()), Rules{});
  const auto rules = [&](Slot wet, Slot next, std::optional<Slot> scuff, int choice) {
    return broken_rules(p, {{wet, next, scuff}, {choice}});
  };
  EXPECT_EQ(rules(5, 12, {}, 0), Rules{"wet leaves its calendar"});
  EXPECT_EQ(rules(0, 11, {}, 0), Rules{"next after wet too late"});
  EXPECT_EQ(rules(3, 2, {}, 0), (Rules{"next after wet too soon", "wet finds no free person"}));
  EXPECT_EQ(rules(2, 10, 11, 0), Rules{"scuff takes place against the choices"});
  EXPECT_EQ(rules(2, 10, {}, 1), Rules{"scuff takes place against the choices"});
  EXPECT_EQ(rules(2, 10, {}, 2), (Rules{"choice of group way"}));
  p.ops[0].allowed = Bits(p.horizon);
  EXPECT_EQ(rules(2, 10, {}, 0), Rules{"wet starts where it may not"});
  p = small_problem();
  p.relations.push_back({0, 1, [](Slot) { return Bits(20); }, {}});
  EXPECT_EQ(rules(2, 10, {}, 0), Rules{"wet and next do not go together"});
  p = small_problem();
  p.resources[0].calendar = 0;
  p.holds.push_back({0, 1, {0, at_start}, {0, 0}, {}});
  EXPECT_EQ(rules(2, 10, {}, 0), (Rules{"wet holds person outside its calendar",
                                        "wet finds no free person", "wet finds no free person"}));
  p = small_problem();
  p.modes.push_back({0, 0, {0, at_start}, {0, 0}, 4, {}});
  p.modes.push_back({0, 1, {1, at_start}, {1, at_end}, 0, {}});
  EXPECT_EQ(rules(2, 10, {}, 0), Rules{"wet and next need the room in different modes"});
  EXPECT_EQ(rules(2, 11, {}, 0), Rules{});
  EXPECT_EQ(broken_rules(p, {}), Rules{"a start or a choice is missing"});
}

TEST(Solve, FindsTheBestOfTheSmallProblem) {
  const Problem problem = small_problem();
  // Worked by hand: next cannot be before 10 (closed 6-10), so 13 is the earliest end. In the
  // window wet may start at 0 - 3: the sooner, the smaller the sum and the tighter the window.
  const Answer answer = solve(problem, {{LastEnd{}, Sum{}, Choices{}}});
  EXPECT_EQ(answer.state, State::proved);
  EXPECT_EQ(answer.value, (Value{13, 0 + 10, 0}));
  EXPECT_EQ(answer.effort.engine, Engine::chain);
  // Without a tight window: scuffed in the last slot of the first span, 5, when wet starts at 0.
  const Answer calm = solve(problem, {{LastEnd{}, TightCounts{5, 10}, Sum{}, Choices{}}});
  EXPECT_EQ(calm.value, (Value{13, 0, 0, 0, 0, 0, 0 + 10 + 5, 1}));
  // When scuffing takes two, it no longer fits there; the best window is left by wet at 3, level 3.
  Problem slow = problem;
  slow.ops[2].attended = Slot{2};
  const Answer late = solve(slow, {{LastEnd{}, TightCounts{5, 10}, Sum{}, Choices{}}});
  EXPECT_EQ(late.value, (Value{13, 0, 0, 0, 1, 0, 3 + 10, 0}));
}

}  // namespace
}  // namespace wetout::search::test
