#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

TEST(Batching, EveryBatchFitsCupAndPotLife) {
  PlanInput in = sample::input();
  for (const double air : {15.0, 22.0, 30.0, 35.0}) {
    in.air = units::Temperature::celsius(air);
    const auto plan = make_plan(in);
    ASSERT_TRUE(plan) << sample::told(plan.error());
    for (const CoatNeed& coat : plan->coats) {
      for (const Batch& batch : coat.batches) {
        EXPECT_LE((batch.part_a_volume + batch.part_b_volume).si(), 900e-6 * 0.8 * (1 + 1e-12));
        const double share = batch.mix.in_grams() / coat.mix.in_grams();
        if (coat.spread) {
          EXPECT_LE(units::in_minutes(*coat.spread) * share,
                    units::in_minutes(batch.use_within) + 1e-9);
        }
        EXPECT_LE(2.0 + batch.mix.in_grams() / 200.0, units::in_minutes(batch.use_within) + 1e-9);
      }
    }
  }
}

TEST(Batching, WarmerNeverNeedsFewerBatches) {
  PlanInput in = sample::input();
  in.coats = {sample::laminate("lam", board::Face::deck, Laps::free, 2)};
  std::size_t last = 0;
  for (double air = 10; air <= 40; air += 1) {
    in.air = units::Temperature::celsius(air);
    const auto plan = make_plan(in);
    ASSERT_TRUE(plan) << sample::told(plan.error());
    EXPECT_GE(plan->coats[0].batches.size(), last) << air;
    last = plan->coats[0].batches.size();
  }
  EXPECT_GT(last, 1u);
}

TEST(Batching, CountNeverFallsAsTheNeedGrows) {
  PlanInput in = sample::input();
  std::size_t last = 0;
  for (int plies = 1; plies <= 6; ++plies) {
    in.coats = {sample::laminate("lam", board::Face::deck, Laps::free, plies)};
    const auto plan = make_plan(in);
    ASSERT_TRUE(plan) << sample::told(plan.error());
    EXPECT_GE(plan->coats[0].batches.size(), last);
    last = plan->coats[0].batches.size();
  }
}

TEST(Batching, EqualButForTheLast) {
  PlanInput in = sample::input();
  in.coats = {sample::laminate("lam", board::Face::deck, Laps::free, 6)};
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const auto& batches = plan->coats[0].batches;
  ASSERT_GE(batches.size(), 3u);
  for (std::size_t i = 0; i + 1 < batches.size(); ++i) {
    EXPECT_EQ(batches[i].mix, batches[0].mix);
    EXPECT_EQ(batches[i].n, static_cast<int>(i) + 1);
  }
  EXPECT_LE(batches.back().mix, batches[0].mix);
  // Six plies do not fit the quart, and that is what is found first.
  EXPECT_TRUE(sample::has_notice(*plan, "coat.split.cup"));
}

TEST(Batching, FilmTakesALargerCupBeforeASecondBatch) {
  PlanInput in = sample::input();
  in.shop.cups = {{"pint", units::millilitres(200), units::millimetres(80)},
                  {"bucket", units::litres(2.5), units::millimetres(180)},
                  {"quart", units::millilitres(900), units::millimetres(105)}};
  in.shop.cup = "pint";
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  ASSERT_EQ(plan->coats[0].batches.size(), 1u);
  EXPECT_EQ(plan->coats[0].batches[0].cup, "quart");  // the smallest that takes it
}

TEST(Batching, FilmThatMustBeSplitSaysWhatWouldHelpInOrder) {
  PlanInput in = sample::input();
  resin::Product slower = sample::slow();
  slower.id = "slower";
  slower.pot_life[0].time = {units::minutes(60), units::minutes(60)};
  in.shop.resins.push_back(slower);
  in.shop.resins[0].pot_life[0].time = {units::minutes(8), units::minutes(8)};
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  in.shop.losses.left_in_cup = units::grams(0);
  in.shop.pace.hotcoat = units::minutes_per_square_metre(6);
  in.air = units::Temperature::celsius(25);
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  ASSERT_GT(plan->coats[0].batches.size(), 1u);
  std::string codes;
  for (const base::Notice& notice : plan->notices) {
    if (notice.code.rfind("coat.", 0) == 0) codes += notice.code + " ";
  }
  EXPECT_EQ(codes,
            "coat.split.time coat.one_pour.slower coat.one_pour.cooler coat.one_pour.two_people "
            "coat.join_shows ");
}

TEST(Batching, NamedCupIsTheOnlyOne) {
  PlanInput in = sample::input();
  in.shop.cups.push_back({"pint", units::millilitres(400), units::millimetres(80)});
  in.cup = "pint";
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  for (const CoatNeed& coat : plan->coats) {
    for (const Batch& batch : coat.batches) EXPECT_EQ(batch.cup, "pint");
  }
}

TEST(LooseMix, KeepsTheRatioForAnyMass) {
  const Shop shop = sample::shop();
  const auto loose =
      mix(shop, {"slow", units::grams(180), {}, units::Temperature::celsius(22), {}, {}});
  ASSERT_TRUE(loose);
  const double wanted = loose->batch.part_a.in_grams() * 0.97 / 2.26;
  EXPECT_NEAR(loose->batch.part_b.in_grams() / wanted, 1.0, 0.03);
  EXPECT_GE(loose->batch.mix.in_grams(), 180.0);
}

TEST(LooseMix, SaysWhenItDoesNotFitTheCup) {
  const auto loose =
      mix(sample::shop(), {"slow", units::grams(900), {}, units::Temperature::celsius(22), {}, {}});
  ASSERT_TRUE(loose);
  bool said = false;
  for (const base::Notice& notice : loose->notices) said = said || notice.code == "cup.too_small";
  EXPECT_TRUE(said);
}

}  // namespace
}  // namespace wetout::laminate
