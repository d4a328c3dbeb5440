// Conservation, in whole milligrams.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

void expect_balanced(const Plan& plan) {
  for (const CoatNeed& coat : plan.coats) {
    SCOPED_TRACE(coat.id);
    Milligrams poured;
    for (const Batch& batch : coat.batches) {
      Milligrams in_cup = batch.part_a + batch.part_b;
      for (const AdditiveAmount& additive : batch.additives) in_cup += additive.mass;
      EXPECT_EQ(in_cup, batch.mix);
      // Running totals end at the batch.
      Milligrams reads;
      for (const Pour& pour : batch.pours) {
        reads += pour.add;
        EXPECT_EQ(pour.reads, reads);
      }
      EXPECT_EQ(reads, batch.mix);
      poured += in_cup;
    }
    EXPECT_EQ(poured, coat.mix);
    EXPECT_EQ(coat.mix, coat.kept + coat.losses + coat.margin + coat.rounding);
    EXPECT_GE(coat.rounding.count(), 0);
    EXPECT_LE(coat.trimmed, coat.losses);
    EXPECT_LE(coat.uptake, coat.kept);
  }
}

TEST(Balance, SampleBoardAddsUp) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  expect_balanced(*plan);
  Milligrams mix;
  for (const CoatNeed& coat : plan->coats) mix += coat.mix;
  EXPECT_EQ(plan->totals.mix, mix);
  Milligrams by_resin;
  for (const ResinTotal& resin : plan->totals.by_resin) by_resin += resin.mix;
  EXPECT_EQ(by_resin, mix);
}

TEST(Balance, FinishedWeightIsItsParts) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const Totals& totals = plan->totals;
  ASSERT_TRUE(totals.finished_weight);
  ASSERT_TRUE(plan->board.core_weight);
  const Milligrams boxes(5 * 28'000);
  EXPECT_EQ(*totals.finished_weight,
            *plan->board.core_weight + totals.fibre + totals.kept + boxes - totals.sanded);
}

TEST(Balance, UptakeDoesNotDependOnWhichFaceIsFirst) {
  PlanInput in = sample::input();
  const auto one = make_plan(in);
  std::swap(in.coats[0], in.coats[1]);
  const auto other = make_plan(in);
  ASSERT_TRUE(one) << sample::told(one.error());
  ASSERT_TRUE(other) << sample::told(other.error());
  Milligrams first, second;
  for (const CoatNeed& coat : one->coats) first += coat.uptake;
  for (const CoatNeed& coat : other->coats) second += coat.uptake;
  // Each wet region is rounded to a milligram: a patch, a face, a lap, each twice.
  EXPECT_NEAR(static_cast<double>(first.count()), static_cast<double>(second.count()), 6.0);
  const double foam_g = 60.0 * (one->board.deck.si() + one->board.bottom.si());
  EXPECT_NEAR(first.in_grams(), foam_g, 0.006);
}

TEST(Balance, SealedCoreTakesNothingUpLater) {
  PlanInput in = sample::input();
  in.coats.insert(in.coats.begin(), sample::film("deck-seal", board::Face::deck, CoatKind::seal));
  in.coats.insert(in.coats.begin(),
                  sample::film("bottom-seal", board::Face::bottom, CoatKind::seal));
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_GT(sample::coat(*plan, "deck-seal").uptake.count(), 0);
  EXPECT_EQ(sample::coat(*plan, "bottom-lam").uptake.count(), 0);
  EXPECT_EQ(sample::coat(*plan, "deck-lam").uptake.count(), 0);
  expect_balanced(*plan);
}

// Random boards, losses, scales and temperatures.
RC_GTEST_PROP(Balance, HoldsForAnyBoardAndShop, ()) {
  PlanInput in = sample::input();
  in.board = sample::board_spec(*rc::gen::inRange(62, 120), *rc::gen::inRange(170, 240) / 10.0);
  in.coats[0] = sample::laminate("bottom-lam", board::Face::bottom,
                                 *rc::gen::element(Laps::cut, Laps::free), *rc::gen::inRange(1, 4));
  in.coats = {in.coats[0], in.coats[2], in.coats[3]};  // each coat more is cups to follow
  in.shop.scale_step = units::grams(*rc::gen::element(0.1, 0.5, 1.0, 2.0, 5.0));
  in.shop.losses.left_in_cup = units::grams(*rc::gen::inRange(0, 40));
  in.shop.losses.margin = *rc::gen::inRange(0, 30) / 100.0;
  in.air = units::Temperature::celsius(*rc::gen::inRange(15, 35));
  const auto plan = make_plan(in);
  if (!plan) {
    RC_TAG(plan.error().front().code);
    for (const base::Problem& problem : plan.error()) {
      RC_ASSERT(problem.code == "pour.step_too_coarse" || problem.code == "plan.goes_off");
    }
    return;
  }
  for (const CoatNeed& coat : plan->coats) {
    Milligrams poured;
    for (const Batch& batch : coat.batches) {
      poured += batch.mix;
      RC_ASSERT(batch.pours.back().reads == batch.mix);
      RC_ASSERT(std::abs(batch.off_ratio) <= coat.ratio.tolerance * (1 + 1e-9));
    }
    RC_ASSERT(poured == coat.mix);
    RC_ASSERT(coat.mix == coat.kept + coat.losses + coat.margin + coat.rounding);
    RC_ASSERT(coat.rounding.count() >= 0);
  }
}

// What a coat needs before it is rounded to cups.
std::int64_t needed(const CoatNeed& coat) { return coat.kept.count() + coat.trimmed.count(); }

RC_GTEST_PROP(Monotone, MoreBoardLapOrClothNeverNeedsLessResin, ()) {
  PlanInput less = sample::input();
  const double width = *rc::gen::inRange(175, 230) / 10.0;
  less.board = sample::board_spec(76, width);
  const units::Length lap = units::millimetres(*rc::gen::inRange(20, 90));
  less.coats[0].plies[0].lap = lap;
  less.coats.resize(2);  // each coat more is cups to follow
  PlanInput more = less;
  switch (*rc::gen::inRange(0, 3)) {
    case 0:
      more.board = sample::board_spec(76, width + *rc::gen::inRange(1, 20) / 10.0);
      break;
    case 1:
      more.coats[0].plies[0].lap = lap + units::millimetres(*rc::gen::inRange(1, 20));
      break;
    default:
      more.shop.cloths[0].weight = more.shop.cloths[0].weight * 1.2;
  }
  const auto a = make_plan(less);
  const auto b = make_plan(more);
  RC_ASSERT(a.has_value());
  RC_ASSERT(b.has_value());
  RC_ASSERT(needed(a->coats[0]) <= needed(b->coats[0]));
  // Foam that one coat wets first the other does not wet: only together they are comparable.
  RC_ASSERT(needed(a->coats[0]) + needed(a->coats[1]) <= needed(b->coats[0]) + needed(b->coats[1]));
}

}  // namespace
}  // namespace wetout::laminate
