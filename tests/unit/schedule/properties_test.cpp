// What must hold of any answer: more of anything never hurts, less never helps, and a day later is
// a day later.
#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "asked.hpp"
#include "board_work.hpp"
#include "sample.hpp"
#include "small_setting.hpp"

namespace wetout::schedule {
namespace {

using sample::Answered;
using sample::Random;
using std::chrono::hours;
using units::TempDelta;

/// Whatever `change` does to what is asked, it never makes anything end in a later span.
template <class Change>
void expect_never_later(std::uint64_t first_seed, Change change) {
  int compared = 0;
  for (std::uint64_t seed = first_seed; seed < first_seed + 25; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Asked asked = sample::asked(sample::one_face(), sample::random_week(random, 8), 7);
    const Answered before = sample::answer(asked);
    change(random, asked);
    const Answered after = sample::answer(asked);
    if (!before.fits()) continue;
    ASSERT_TRUE(after.fits());
    ++compared;
    EXPECT_LE(after.finish(), before.finish());
  }
  EXPECT_GT(compared, 10);
}

TEST(Properties, ALongerHorizonNeverEndsLater) {
  expect_never_later(100, [](Random& random, Asked& asked) {
    asked.until += hours(random.between(1, 72));
    asked.until = on_grid_after(asked.until);
  });
}

TEST(Properties, MoreHoursNeverEndLater) {
  expect_never_later(200, [](Random& random, Asked& asked) {
    auto& days = asked.people.front().hours.days;
    for (int k = random.between(1, 3); k > 0; --k) {
      auto& day = days[static_cast<std::size_t>(random.between(0, 6))];
      switch (random.between(0, 2)) {
        case 0:
          day.back().until = std::chrono::hours(24);
          break;
        case 1:
          day.front().from -= std::chrono::hours(2);
          break;
        default:
          day.insert(day.begin(), sample::from_to(6, 8));
          break;
      }
    }
  });
}

TEST(Properties, MorePeopleNeverEndLater) {
  expect_never_later(300, [](Random& random, Asked& asked) {
    Person& more = asked.people.emplace_back();
    more.id = "bea";
    const int from = random.between(5, 12);
    more.hours = sample::every_day(from, from + random.between(2, 8));
  });
}

TEST(Properties, MoreStandsNeverEndLater) {
  expect_never_later(400, [](Random&, Asked& asked) { asked.shared = {{"stand", 3}}; });
}

TEST(Properties, ASandingRoomNeverEndsLater) {
  expect_never_later(500, [](Random&, Asked& asked) { asked.room.sanding_room = true; });
}

TEST(Properties, WiderLimitsOfTemperatureAndHumidityNeverEndLater) {
  expect_never_later(600, [](Random& random, Asked& asked) {
    for (resin::Product& product : asked.shop.resins) {
      if (product.lowest_air) *product.lowest_air = *product.lowest_air - TempDelta::kelvin(3);
      if (product.highest_air) *product.highest_air = *product.highest_air + TempDelta::kelvin(3);
      if (product.humidity_limit && random.chance(50)) product.humidity_limit = 0.9;
    }
  });
}

TEST(Properties, ALesserGuardNeverEndsLater) {
  for (const auto& [less, more] : {std::pair{climate::Guard::none, climate::Guard::normal},
                                   std::pair{climate::Guard::normal, climate::Guard::wide}}) {
    int compared = 0, differ = 0;
    for (std::uint64_t seed = 700; seed < 725; ++seed) {
      SCOPED_TRACE("seed " + std::to_string(seed));
      Random random(seed);
      Asked asked = sample::asked(sample::one_face(), sample::random_week(random, 8), 7);
      asked.guard = more;
      const Answered careful = sample::answer(asked);
      asked.guard = less;
      const Answered trusting = sample::answer(asked);
      differ += careful.fits() != trusting.fits() ? 1 : 0;
      if (!careful.fits()) continue;
      ASSERT_TRUE(trusting.fits());
      ++compared;
      EXPECT_LE(trusting.finish(), careful.finish());
      differ += trusting.finish() < careful.finish() ? 1 : 0;
    }
    EXPECT_GT(compared, 8);
    EXPECT_GT(differ, 2);
  }
}

// Several boards, small enough that what is found is proved.
TEST(Properties, MoreStandsOrRacksForTwoBoardsNeverEndLater) {
  int compared = 0, earlier = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Setting setting = sample::small_setting(
        random, {.boards = 2, .least_steps = 3, .most_steps = 5, .different_people = false});
    setting.prefer = Prefer::finish;
    setting.stands = 1;
    const Arrangement before = arrange(setting, arranging(setting), {});
    if (random.chance(70)) setting.stands = 2;
    if (setting.racks) ++*setting.racks;
    const Arrangement after = arrange(setting, arranging(setting), {});
    if (!before.fits()) continue;
    ASSERT_TRUE(after.fits());
    ++compared;
    EXPECT_LE(after.answer.value[0], before.answer.value[0]);
    earlier += after.answer.value[0] < before.answer.value[0] ? 1 : 0;
  }
  EXPECT_GT(compared, 40);
  EXPECT_GT(earlier, 3);
}

TEST(Properties, ADayLaterIsADayLater) {
  int compared = 0;
  for (std::uint64_t seed = 800; seed < 820; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    Asked asked = sample::asked(sample::one_face(), sample::random_week(random, 8), 7);
    asked.people.front().hours = sample::every_day(17, 22);
    asked.prefer = static_cast<Prefer>(random.between(0, 2));
    const Answered today = sample::answer(asked);
    for (climate::WeatherPoint& point : asked.weather.points) point.at += hours(24);
    asked.issued += hours(24);
    asked.from += hours(24);
    asked.until += hours(24);
    const Answered tomorrow = sample::answer(asked);
    ASSERT_EQ(today.arrangement.answer.state, tomorrow.arrangement.answer.state);
    if (!today.fits()) continue;
    ++compared;
    EXPECT_EQ(today.arrangement.answer.value, tomorrow.arrangement.answer.value);
    EXPECT_EQ(today.arrangement.chosen, tomorrow.arrangement.chosen);
    ASSERT_EQ(today.arrangement.steps.size(), tomorrow.arrangement.steps.size());
    for (std::size_t i = 0; i < today.arrangement.steps.size(); ++i) {
      EXPECT_EQ(today.arrangement.steps[i].start + hours(24), tomorrow.arrangement.steps[i].start);
    }
  }
  EXPECT_GT(compared, 8);
}

}  // namespace
}  // namespace wetout::schedule
