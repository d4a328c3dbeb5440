// Which steps a board has, and in which order.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "board_work.hpp"
#include "random_coats.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::schedule {
namespace {

using sample::find;
using sample::Random;
using Names = std::vector<std::string>;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

TEST(StepsOf, AreThoseOfTheUsualBoardInTheOrderOfTheWork) {
  const BoardSteps steps = sample::steps(sample::planned(sample::usual_coats()));
  const Names expected = {"acclimatise",
                          "bottom-lam/prepare",
                          "bottom-lam/wet",
                          "bottom-lam/watch-15",
                          "bottom-lam/watch-30",
                          "bottom-lam/watch-60",
                          "bottom-lam/trim",
                          "deck-lam/flip",
                          "bottom-lam/feather-edge",
                          "bottom-lam/feather",
                          "deck-lam/scuff-laps",
                          "deck-lam/prepare",
                          "deck-lam/wet",
                          "deck-lam/watch-15",
                          "deck-lam/watch-30",
                          "deck-lam/watch-60",
                          "boxes/flip",
                          "boxes/prepare",
                          "boxes/wet",
                          "boxes/watch-30",
                          "bottom-hot/wash",
                          "bottom-hot/scuff",
                          "bottom-hot/scuff-laps",
                          "bottom-hot/prepare",
                          "bottom-hot/wet",
                          "bottom-hot/watch-15",
                          "bottom-hot/watch-30",
                          "bottom-hot/watch-60",
                          "bottom-hot/peel",
                          "deck-hot/flip",
                          "deck-hot/wash",
                          "deck-hot/scuff",
                          "deck-hot/scuff-laps",
                          "deck-hot/prepare",
                          "deck-hot/wet",
                          "deck-hot/watch-15",
                          "deck-hot/watch-30",
                          "deck-hot/watch-60",
                          "deck-hot/peel",
                          "boxes/open",
                          "bottom-hot/sand",
                          "deck-hot/sand",
                          "weigh"};
  EXPECT_EQ(sample::names(steps), expected);
}

TEST(StepsOf, LetCoatsFollowOneAnotherAsTheirOrderSays) {
  Random random(11);
  for (int k = 0; k < 200; ++k) {
    const auto coats = sample::random_coats(random);
    const BoardSteps steps = sample::steps(sample::rough(coats));
    const auto order = laminate::order_of_coats(coats);
    ASSERT_TRUE(order.has_value());
    std::vector<std::size_t> wets;
    for (const Step& step : steps.steps) {
      if (step.is_wet()) wets.push_back(u(step.coat));
    }
    EXPECT_EQ(wets, *order);
    for (std::size_t c = 0; c < coats.size(); ++c) {
      EXPECT_EQ(steps.steps[u(steps.wets[c])].coat, static_cast<int>(c));
      EXPECT_EQ(steps.steps[u(steps.wets[c]) - 1].name,
                (StepName{coats[c].id, StepWord::prepare, ""}));
    }
  }
}

TEST(StepsOf, HaveNamesOfTheirOwn) {
  Random random(12);
  for (int k = 0; k < 300; ++k) {
    const BoardSteps steps = sample::steps(sample::rough(sample::random_coats(random)));
    const Names names = sample::names(steps);
    std::set<std::string> different(names.begin(), names.end());
    EXPECT_EQ(different.size(), names.size()) << ::testing::PrintToString(names);
    std::set<std::string> groups;
    for (const StepGroup& group : steps.groups) {
      EXPECT_TRUE(groups.insert(group.id).second) << group.id;
      EXPECT_EQ(group.options.size(), 2U);
      EXPECT_EQ(group.texts.size(), 2U);
    }
    for (const Step& step : steps.steps) {
      EXPECT_EQ(read_step_name(to_string(step.name)), step.name);
      EXPECT_FALSE(step.title.empty());
    }
  }
}

// However the choices fall, each step that takes place comes after the one before it.
TEST(StepsOf, FollowOneAnother) {
  Random random(13);
  for (int k = 0; k < 100; ++k) {
    const BoardSteps steps = sample::steps(sample::rough(sample::random_coats(random)));
    std::vector<int> chosen;
    for (std::size_t g = 0; g < steps.groups.size(); ++g) chosen.push_back(random.between(0, 1));
    const auto on = [&](When when) {
      return when.group < 0 || chosen[u(when.group)] == when.option;
    };
    int before = -1;
    for (int i = 0; u(i) < steps.steps.size(); ++i) {
      if (!on(steps.steps[u(i)].when)) continue;
      const bool follows =
          std::any_of(steps.links.begin(), steps.links.end(), [&](const Link& link) {
            return link.from == before && link.to == i && link.moment == Moment::end && link.min &&
                   !link.to_end && on(link.when);
          });
      EXPECT_TRUE(before < 0 || follows) << sample::names(steps)[u(i)];
      before = i;
    }
    for (const Link& link : steps.links) {
      EXPECT_LT(link.from, link.to);
      EXPECT_GE(link.from, 0);
      EXPECT_TRUE(link.good_film ? !link.min && !link.max : link.min || link.max);
      EXPECT_TRUE(link.moment == Moment::end || steps.steps[u(link.from)].is_wet());
    }
  }
}

TEST(StepsOf, TurnTheBoardExactlyWhenTheFaceChanges) {
  Random random(14);
  for (int k = 0; k < 200; ++k) {
    const auto coats = sample::random_coats(random);
    const BoardSteps steps = sample::steps(sample::rough(coats));
    std::optional<board::Face> up;
    std::vector<int> since;  // wets that no flip has waited for
    for (int i = 0; u(i) < steps.steps.size(); ++i) {
      const Step& step = steps.steps[u(i)];
      if (step.coat < 0) continue;
      const auto& coat = coats[u(step.coat)];
      if (step.name.word == StepWord::flip) {
        ASSERT_TRUE(up.has_value());
        EXPECT_NE(*up, coat.face);
        up = coat.face;
        for (const int wet : since) {
          EXPECT_TRUE(sample::waits(steps, to_string(step.name),
                                    to_string(steps.steps[u(wet)].name), Moment::handle));
        }
        since.clear();
      }
      if (!step.is_wet()) continue;
      EXPECT_EQ(up.value_or(coat.face), coat.face) << coat.id;
      up = coat.face;
      since.push_back(i);
    }
  }
}

TEST(StepsOf, TakeFiveMinutesOrAWholeMultiple) {
  Random random(15);
  for (int k = 0; k < 50; ++k) {
    BoardWork board = sample::rough(sample::random_coats(random), 0.3 + 0.02 * k);
    board.spackle = units::minutes(1 + k);
    for (const Step& step : sample::steps(board).steps) {
      const double fives = units::in_minutes(step.attended) / 5.0;
      EXPECT_NEAR(fives, std::round(fives), 1e-9) << to_string(step.name);
      EXPECT_GE(fives, 1.0 - 1e-9) << to_string(step.name);
    }
  }
}

TEST(StepsOf, TakeLongerOnALargerBoard) {
  auto coats = sample::usual_coats();
  coats.push_back(sample::coat("deck-gloss", board::Face::deck, laminate::CoatKind::gloss));
  const BoardSteps small = sample::steps(sample::planned(coats, 54, 17));
  const BoardSteps large = sample::steps(sample::planned(coats, 110, 24));
  ASSERT_EQ(sample::names(small), sample::names(large));
  std::set<StepWord> longer;
  for (std::size_t i = 0; i < small.steps.size(); ++i) {
    EXPECT_GE(large.steps[i].attended, small.steps[i].attended) << to_string(small.steps[i].name);
    if (large.steps[i].attended > small.steps[i].attended) longer.insert(large.steps[i].name.word);
  }
  EXPECT_EQ(longer, (std::set{StepWord::wet, StepWord::trim, StepWord::feather, StepWord::wash,
                              StepWord::scuff, StepWord::sand, StepWord::polish}));
}

// By hand: 10 min fixed, 35 a square metre.
TEST(StepsOf, TakeWhatTheirDefaultsAddUpTo) {
  StepDefaults defaults;
  defaults.sand.value = 10;
  defaults.sand_area.value = 35;
  defaults.mixing.value = 3;
  defaults.work_over.value = 10;
  defaults.work_over_ply.value = 6;
  const BoardWork board = sample::rough(sample::usual_coats(), 0.8);
  const BoardSteps steps = sample::steps(board, defaults);
  const auto minutes = [&](const char* name) {
    return units::in_minutes(steps.steps[u(find(steps, name))].attended);
  };
  EXPECT_NEAR(minutes("deck-hot/sand"), 40, 1e-9);    // 38
  EXPECT_NEAR(minutes("deck-hot/wet"), 20, 1e-9);     // 3 + 4 + 10
  EXPECT_NEAR(minutes("deck-lam/wet"), 25, 1e-9);     // 3 + 4 + 10 + 4.8
  EXPECT_NEAR(minutes("boxes/prepare"), 50, 1e-9);    // 10 + 5 * 8
  EXPECT_NEAR(minutes("boxes/wet"), 25, 1e-9);        // 3 + 4 + 5 * 3
  EXPECT_NEAR(minutes("bottom-lam/trim"), 15, 1e-9);  // 5 + 2 * 3.5
}

TEST(StepsOf, HaveSpackleArtworkAndSpotOnlyWhereTheyAreNamed) {
  BoardWork board = sample::rough(sample::usual_coats());
  const BoardSteps without = sample::steps(board);
  for (const char* name : {"spackle", "artwork", "spot"}) EXPECT_EQ(find(without, name), -1);
  board.spackle = units::minutes(20);
  board.artwork = units::minutes(61);
  board.spot = units::minutes(10);
  const BoardSteps with = sample::steps(board);
  EXPECT_EQ(find(with, "acclimatise"), 0);
  EXPECT_EQ(find(with, "spackle"), 1);
  EXPECT_EQ(find(with, "artwork"), 2);
  EXPECT_EQ(units::in_minutes(with.steps[2].attended), 65);
  EXPECT_EQ(find(with, "spot"), static_cast<int>(with.steps.size()) - 2);
  EXPECT_GT(find(with, "spot"), find(with, "deck-hot/sand"));
  // The first wet waits until it is dry.
  const auto dries = [&](const char* step) {
    double most = 0;
    for (const Link& link : sample::links(with, step, "bottom-lam/wet")) {
      if (link.min) most = std::max(most, units::in_minutes(*link.min));
    }
    return most;
  };
  EXPECT_EQ(dries("acclimatise"), 120);
  EXPECT_EQ(dries("spackle"), 240);
  EXPECT_EQ(dries("artwork"), 120);
}

TEST(StepsOf, AreRefusedWhereCoatsWaitForEachOther) {
  auto coats = sample::usual_coats();
  coats[0].after = {"deck-lam"};
  coats[1].after = {"bottom-lam"};
  const auto steps = steps_of(sample::rough(coats), sample::shop());
  ASSERT_FALSE(steps.has_value());
  EXPECT_EQ(steps.error().front().code, "coat.order_loop");
}

}  // namespace
}  // namespace wetout::schedule
