// Two boards that share people, stands, racks and a room, against an outside solver.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "small_setting.hpp"
#include "time_indexed.hpp"
#include "wetout/schedule/arrange.hpp"

namespace wetout::schedule {
namespace {

using sample::Random;

std::int64_t total_of(const Setting& setting, const Arrangement& found) {
  std::vector<std::int64_t> last(setting.boards.size(), 0);
  for (const PlacedStep& placed : found.steps) {
    if (placed.state == PlacedStep::State::done) continue;
    auto& end = last[static_cast<std::size_t>(placed.board)];
    const auto& board = setting.boards[static_cast<std::size_t>(placed.board)];
    const double attended =
        units::in_seconds(board.steps.steps[static_cast<std::size_t>(placed.step)].attended);
    const Slot slots = static_cast<Slot>((attended - 1e-6) / setting.grid.step_s()) + 1;
    end = std::max<std::int64_t>(end, setting.grid.not_after(placed.start) + slots);
  }
  std::int64_t sum = 0;
  for (const std::int64_t end : last) sum += end;
  return sum;
}

TEST(TwoBoards, EndInAllAsEarlyAsAnIntegerProgramFindsThem) {
  int feasible = 0, infeasible = 0, of_two = 0, racks = 0;
  for (std::uint64_t seed = 1; seed <= 250; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Setting setting = sample::small_setting(
        random,
        {.boards = 2, .least_steps = 3, .most_steps = 4, .slots = 14, .different_people = false});
    setting.prefer = Prefer::finish;
    const auto expected = sample::least_total(setting);
    const Arrangement found = arrange(setting, arranging(setting), {});
    if (!expected) {
      ++infeasible;
      EXPECT_EQ(found.answer.state, search::State::infeasible);
      continue;
    }
    ++feasible;
    of_two += setting.people.size() > 1 ? 1 : 0;
    racks += setting.racks ? 1 : 0;
    ASSERT_EQ(found.answer.state, search::State::proved);
    EXPECT_EQ(total_of(setting, found), *expected);
  }
  EXPECT_GT(feasible, 50);
  EXPECT_GT(infeasible, 50);
  EXPECT_GT(of_two, 15);
  EXPECT_GT(racks, 5);
}

// With hours of their own it is not proved, but sound.
TEST(TwoBoards, OfPeopleWithHoursOfTheirOwnEndNoEarlierThanCanBe) {
  int feasible = 0, equal = 0, missed = 0;
  for (std::uint64_t seed = 1; seed <= 250; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Setting setting = sample::small_setting(
        random, {.boards = 2, .least_steps = 3, .most_steps = 4, .slots = 14});
    setting.prefer = Prefer::finish;
    const auto expected = sample::least_total(setting);
    const Arrangement found = arrange(setting, arranging(setting), {});
    if (!expected) {
      EXPECT_FALSE(found.fits());
      continue;
    }
    ++feasible;
    if (!found.fits()) {
      EXPECT_NE(found.answer.state, search::State::infeasible);
      ++missed;
      continue;
    }
    EXPECT_GE(total_of(setting, found), *expected);
    equal += total_of(setting, found) == *expected ? 1 : 0;
    for (const PlacedStep& placed : found.steps) {
      EXPECT_TRUE(placed.state == PlacedStep::State::done || placed.person >= 0);
    }
  }
  EXPECT_GT(feasible, 50);
  EXPECT_GE(equal * 10, feasible * 9);
  EXPECT_LE(missed * 50, feasible);
}

}  // namespace
}  // namespace wetout::schedule
