// An assumption is listed if and only if moving it by 1 % of its stated range, either way, moves a
// mass, a time, a thickness or a notice of the plan. Here every default is moved by hand through
// the public function and the printed lists are compared with what moved.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

bool moves(const Plan& a, const Plan& b) {
  return !(a.plies == b.plies && a.coats == b.coats && a.totals == b.totals &&
           a.notices == b.notices);
}

std::set<std::string> listed(const Plan& plan) {
  std::set<std::string> names;
  for (const Assumption& assumption : plan.assumptions) names.insert(assumption.name);
  return names;
}

// Results are the same with it; it spares the cups that many plans share.
resin::AnswerCache& cups() {
  static resin::MemoryCache cache;
  return cache;
}

enum class Cure { left_alone, moved_too };

void expect_exactly_what_moves(const PlanInput& in, const std::string& what,
                               Cure cure = Cure::left_alone) {
  SCOPED_TRACE(what);
  const auto plan = make_plan(in, defaults(), &cups());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const std::set<std::string> names = listed(*plan);
  Defaults values = defaults();
  const auto check_one = [&](auto& value, const char*) {
    const auto original = value.value;
    bool moved = false;
    for (const double sign : {-1.0, 1.0}) {
      value.value =
          std::clamp(original + (value.high - value.low) * (0.01 * sign), value.low, value.high);
      if (moved || value.value == original) continue;
      const auto other = make_plan(in, values, &cups());
      moved = !other || moves(*plan, *other);
    }
    value.value = original;
    EXPECT_EQ(names.count(std::string(value.name)) == 1, moved) << value.name;
  };
  visit(values, check_one);
  if (cure == Cure::moved_too) visit(values.resin.cure, check_one);
}

TEST(Assumptions, SampleBoardListsExactlyWhatMovesIt) {
  expect_exactly_what_moves(sample::input(), "sample");
}

// The clocks of cup and film name what they hang on; here that is checked by moving it.
TEST(Assumptions, CureOfALaminateAndABox) {
  PlanInput in = sample::input();
  in.coats = {in.coats[1], sample::boxes()};
  in.shop.resins.push_back(sample::quick());
  in.coats[1].resin = "quick";
  expect_exactly_what_moves(in, "cure", Cure::moved_too);
}

TEST(Assumptions, SplitHotcoatWithASlowerHardenerInTheShop) {
  PlanInput in = sample::input();
  in.shop.resins = {sample::quick("slow"), sample::slow()};
  in.shop.resins[1].id = "slower";
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  in.air = units::Temperature::celsius(35);
  in.shop.pace.hotcoat = units::minutes_per_square_metre(20);
  expect_exactly_what_moves(in, "split", Cure::moved_too);
}

TEST(Assumptions, PolyesterOnPu) {
  PlanInput in = sample::input();
  in.board.foam = board::Foam::pu;
  in.shop.resins.push_back(sample::polyester());
  in.coats = {sample::laminate("lam", board::Face::bottom, Laps::free)};
  in.coats[0].resin = "polyester";
  in.shop.scale_step = units::grams(0.1);
  expect_exactly_what_moves(in, "polyester", Cure::moved_too);
}

TEST(Assumptions, SealedPuBoard) {
  PlanInput in = sample::input();
  in.board.foam = board::Foam::pu;
  in.coats.insert(in.coats.begin(), sample::film("seal", board::Face::deck, CoatKind::seal));
  expect_exactly_what_moves(in, "pu");
}

TEST(Assumptions, WhatTheShopSaysIsNotAssumed) {
  PlanInput in = sample::input();
  in.shop.losses.left_in_cup = units::grams(8);
  in.shop.losses.margin = 0.08;
  in.shop.resins[0].cured_density = units::grams_per_millilitre(1.15);
  expect_exactly_what_moves(in, "own values");
  const auto names = listed(*make_plan(in));
  EXPECT_EQ(names.count("loss.left_in_cup"), 0u);
  EXPECT_EQ(names.count("mix.margin"), 0u);
  EXPECT_EQ(names.count("resin.cured_density"), 0u);
  EXPECT_EQ(names.count("loss.brush"), 1u);
}

// Limits only matter beside an input that stands next to them.
TEST(Assumptions, CupFillIsListedWhenTheCupIsJustFullEnough) {
  PlanInput in = sample::input();
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_EQ(listed(*plan).count("cup.fill"), 0u);  // far from the rim
  const Batch& batch = plan->coats[0].batches[0];
  in.shop.cups[0].holds = (batch.part_a_volume + batch.part_b_volume) / 0.8 * 1.0005;
  expect_exactly_what_moves(in, "cup nearly full");
  EXPECT_EQ(listed(*make_plan(in)).count("cup.fill"), 1u);
}

// Until when a film can be spread hangs on when it leaves its cup.
TEST(Assumptions, EmptyingIsListedWithEveryEpoxy) {
  PlanInput in = sample::input();
  in.coats = {sample::boxes()};
  expect_exactly_what_moves(in, "boxes");
  EXPECT_EQ(listed(*make_plan(in)).count("cup.empty_first"), 1u);
}

TEST(Assumptions, FibreFractionLimitIsListedWhenTheShopStandsOnIt) {
  PlanInput in = sample::input();
  in.shop.losses.fibre_mass_fraction = 0.60;
  expect_exactly_what_moves(in, "on the limit");
  EXPECT_EQ(listed(*make_plan(in)).count("laminate.fibre_fraction_reach"), 1u);
}

TEST(Assumptions, ToleranceAndRaiseLimitNextToASmallBatch) {
  PlanInput in = sample::input();
  in.shop.resins[0].tolerance.reset();
  in.shop.resins[0].by_volume.reset();
  in.shop.resins[0].by_mass = resin::Parts{resin::By::mass, 100, 50};
  in.coats = {sample::boxes()};
  in.coats[0].install->count = 1;
  expect_exactly_what_moves(in, "exact ratio");  // 2:1 on whole grams: the tolerance is idle
  // 1 : 0.4902 with 50 g of B on a 1 g scale: 1.96 to 2.04 % off for one more or less of A.
  in.shop.resins[0].by_mass = resin::Parts{resin::By::mass, 100, 49.02};
  for (int ml = 5; ml < 40; ml += 4) {
    in.coats[0].install->fill = units::millilitres(ml);
    expect_exactly_what_moves(in, "fill of " + std::to_string(ml) + " ml");
  }
}

TEST(Assumptions, EachNamesTheCoatsItMoves) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  for (const Assumption& assumption : plan->assumptions) {
    if (assumption.name == "film.gloss") {
      EXPECT_EQ(assumption.used_by, std::vector<std::string>{"bottom-gloss"});
    }
    if (assumption.name == "loss.brush") {
      EXPECT_EQ(assumption.used_by.size(), 6u);
    }
    EXPECT_FALSE(assumption.used_by.empty()) << assumption.name;
  }
}

}  // namespace
}  // namespace wetout::laminate
