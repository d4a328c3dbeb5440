// From what is asked to a setting.
#include "wetout/schedule/set_up.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "asked.hpp"
#include "board_work.hpp"
#include "sample.hpp"

namespace wetout::schedule {
namespace {

using sample::Answered;
using sample::hours_on;
using sample::Random;
using std::chrono::minutes;

TEST(SetUp, TakesTheCoreFromThePlan) {
  laminate::BoardSummary board;
  board.foam = board::Foam::xps;
  board.volume = units::litres(30);
  board.planform = units::square_metres(0.6);
  const CoreOf core = core_of(board, {});
  EXPECT_EQ(core.foam, climate::FoamKind::xps);
  EXPECT_NEAR(units::in_millimetres(core.thickness), 50, 1e-9);
  EXPECT_GT(units::in_minutes(core.lag), 1);
  EXPECT_LT(units::in_minutes(core.lag), 120);
}

TEST(SetUp, BeginsTheGridWhereItIsAsked) {
  const Asked asked = sample::asked(sample::one_face(), {}, 3);
  const auto made = set_up(asked, {}, nullptr);
  ASSERT_TRUE(made.has_value());
  const Setting& s = made->setting;
  EXPECT_EQ(s.begin, 0);
  EXPECT_EQ(s.grid.at(s.begin), asked.from);
  EXPECT_EQ(s.grid.at(s.grid.slots - 1), asked.until);
  EXPECT_EQ(s.stands, 1);
  EXPECT_FALSE(s.racks.has_value());
  EXPECT_EQ(made->known_until, asked.weather.last());
}

// Films are followed only where a coat may begin: nothing that is found depends on it.
TEST(SetUp, FollowsEveryFilmThatMatters) {
  int fits = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Asked asked = sample::asked(sample::one_face(), sample::random_week(random, 8), 6);
    if (random.chance(30)) {
      asked.boards[0].fixed = {
          {{"lam", StepWord::wet, ""}, hours_on(random.between(20, 30)) + minutes(10)}};
    }
    Answered sparse = sample::answer(asked);
    Setting full = sparse.set_up.setting;
    for (auto& [resin, table] : full.films) {
      const auto slots = static_cast<Slot>(table->at.size());
      table = std::make_shared<const FilmTable>(
          film_table(*full.sources.at(resin), *full.air, full.grid, slots));
    }
    const Arrangement found = arrange(full, arranging(full), {});
    EXPECT_EQ(found.answer.state, sparse.arrangement.answer.state);
    EXPECT_EQ(found.answer.value, sparse.arrangement.answer.value);
    fits += found.fits() ? 1 : 0;
  }
  EXPECT_GE(fits, 4);
}

// Somebody comes for what has a fixed start, and stays for the looks after it.
TEST(SetUp, HasSomebodyThereForAFixedStart) {
  Asked asked = sample::asked(sample::one_face(), {.mean_c = 21, .swing_k = 2, .dew_c = 8}, 6);
  asked.boards[0].fixed = {{{"lam", StepWord::wet, ""}, hours_on(20) + minutes(62 * 60 + 3)}};
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  const PlacedStep* wet = found.placed("lam/wet");
  EXPECT_EQ(wet->state, PlacedStep::State::fixed);
  EXPECT_EQ(wet->start, hours_on(82));  // on the grid, at ten in the morning
  for (const int m : {15, 30, 60}) {
    const PlacedStep* look = found.placed("lam/watch-" + std::to_string(m));
    ASSERT_NE(look, nullptr);
    EXPECT_GE(look->start, wet->attended_until + minutes(m));
    EXPECT_LE(look->start, wet->attended_until + minutes(m + 10));
  }
}

// ... also where two have hours of their own.
TEST(SetUp, HasSomebodyOfTwoThereForAFixedStart) {
  Asked asked = sample::asked(sample::one_face(), {.mean_c = 21, .swing_k = 2, .dew_c = 8}, 6);
  asked.people.push_back({"bea", sample::every_day(7, 9)});
  asked.boards[0].fixed = {{{"lam", StepWord::wet, ""}, hours_on(82)}};
  const Answered found = sample::answer(asked);
  ASSERT_TRUE(found.fits());
  for (const PlacedStep& placed : found.arrangement.steps) EXPECT_GE(placed.person, 0);
}

}  // namespace
}  // namespace wetout::schedule
