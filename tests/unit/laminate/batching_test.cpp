#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

TEST(Batching, EveryBatchHoldsBothClocks) {
  PlanInput in = sample::input();
  for (const double air : {15.0, 22.0, 30.0, 35.0}) {
    in.air = units::Temperature::celsius(air);
    const auto plan = make_plan(in);
    ASSERT_TRUE(plan) << sample::told(plan.error());
    for (const CoatNeed& coat : plan->coats) {
      for (const Batch& batch : coat.batches) {
        EXPECT_LE((batch.part_a_volume + batch.part_b_volume).si(), 900e-6 * 0.8 * (1 + 1e-12));
        const double emptied = 2.0 + batch.mix.in_grams() / 200.0;
        EXPECT_LE(emptied, units::in_minutes(batch.use_within) + 1e-9);
        ASSERT_TRUE(batch.spread_within);
        const double share = batch.mix.in_grams() / coat.mix.in_grams();
        const double spread = coat.spread ? units::in_minutes(*coat.spread) * share : 0.0;
        EXPECT_LE(emptied + spread, units::in_minutes(*batch.spread_within) + 1e-9);
        ASSERT_TRUE(batch.gel && batch.runs_away);
        EXPECT_GT(*batch.gel, batch.use_within);
        EXPECT_EQ(batch.peak.has_value(), !*batch.runs_away);
      }
    }
  }
}

TEST(Batching, WarmerNeverNeedsFewerBatches) {
  PlanInput in = sample::input();
  in.coats = {sample::laminate("lam", board::Face::deck, Laps::free, 2)};
  in.shop.resins = {sample::quick("slow")};
  std::size_t last = 0;
  for (double air = 10; air <= 40; air += 2) {
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
  in.shop.cups[0].holds = units::millilitres(450);
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const auto& batches = plan->coats[0].batches;
  ASSERT_GE(batches.size(), 3u);
  for (std::size_t i = 0; i + 1 < batches.size(); ++i) {
    EXPECT_EQ(batches[i].mix, batches[0].mix);
    EXPECT_EQ(batches[i].n, static_cast<int>(i) + 1);
  }
  EXPECT_LE(batches.back().mix, batches[0].mix);
  // Six plies do not fit the cup, and that is what is found first.
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

// A quick hardener in warm air.
PlanInput hurried() {
  PlanInput in = sample::input();
  in.shop.resins = {sample::quick("slow"), sample::slow()};
  in.shop.resins[1].id = "slower";
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  in.air = units::Temperature::celsius(35);
  return in;
}

// A film so thick that a bucket of it goes off while it is poured out, by little.
PlanInput heated() {
  PlanInput in = hurried();
  const auto at_25 = [](double minutes, double gel_hours) {
    resin::Product product = sample::slow();
    product.pot_life[0].time = {units::minutes(minutes), units::minutes(minutes)};
    product.gel[0].time = {units::hours(gel_hours), units::hours(gel_hours)};
    return product;
  };
  in.shop.resins = {at_25(40, 4), at_25(70, 7)};
  in.shop.resins[1].id = "slower";
  in.shop.cups = {{"bucket", units::litres(5), units::millimetres(180)}};
  in.shop.cup = "bucket";
  in.shop.losses.film_hotcoat = units::millimetres(2.3);
  in.shop.pace.hotcoat = units::minutes_per_square_metre(1);
  return in;
}

std::string coat_codes(const Plan& plan) {
  std::string codes;
  for (const base::Notice& notice : plan.notices) {
    if (notice.code.rfind("coat.", 0) == 0) codes += notice.code + " ";
  }
  return codes;
}

TEST(Batching, FilmThatGoesOffInTheCupSaysWhatWouldHelpInOrder) {
  const PlanInput in = heated();
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  ASSERT_GT(plan->coats[0].batches.size(), 1u);
  EXPECT_EQ(coat_codes(*plan),
            "coat.split.heat coat.one_pour.tray coat.one_pour.slower coat.one_pour.cooler "
            "coat.join_shows ");
}

TEST(Batching, FilmThatSetsBeforeItIsSpreadSaysWhatWouldHelpInOrder) {
  PlanInput in = hurried();
  in.shop.pace.hotcoat = units::minutes_per_square_metre(16);
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  ASSERT_GT(plan->coats[0].batches.size(), 1u);
  EXPECT_EQ(coat_codes(*plan),
            "coat.split.film coat.one_pour.slower coat.one_pour.two_people coat.join_shows ");
}

// Each proposal, taken, makes it one batch.
TEST(Batching, WhatIsProposedKeepsItToOnePour) {
  const PlanInput in = heated();
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  int tried = 0;
  for (const base::Notice& notice : plan->notices) {
    PlanInput other = in;
    if (notice.code == "coat.one_pour.tray") {
      other.shop.cups.push_back(
          {"tray", units::litres(9), units::millimetres(*notice.value * (1 + 1e-6))});
    } else if (notice.code == "coat.one_pour.slower") {
      other.coats[0].resin = "slower";
    } else if (notice.code == "coat.one_pour.cooler") {
      other.resin_temp = units::Temperature::celsius(*notice.value);
    } else {
      continue;
    }
    const auto changed = make_plan(other);
    ASSERT_TRUE(changed) << sample::told(changed.error());
    EXPECT_EQ(changed->coats[0].batches.size(), 1u) << notice.code;
    ++tried;
  }
  EXPECT_EQ(tried, 3);
}

TEST(Batching, MoreThanAnyNumberOfCupsIsRefusedWithTheReason) {
  PlanInput in = hurried();
  in.shop.resins[0].pot_life = {
      {units::Temperature::celsius(25), {units::minutes(3), units::minutes(3)}, units::grams(20)}};
  in.shop.resins[0].gel = {
      {units::Temperature::celsius(25), {units::minutes(9), units::minutes(9)}, {}}};
  in.air = units::Temperature::celsius(40);
  const auto plan = make_plan(in);
  ASSERT_FALSE(plan);
  EXPECT_EQ(plan.error().front().code, "plan.goes_off");
  EXPECT_NE(plan.error().front().expected.find("slower resin"), std::string::npos);
}

TEST(Batching, CacheChangesNothing) {
  resin::MemoryCache cache;
  const PlanInput in = sample::input();
  const auto cold = make_plan(in), filling = make_plan(in, defaults(), &cache);
  const std::size_t cups = cache.size();
  const auto warm = make_plan(in, defaults(), &cache);
  ASSERT_TRUE(cold && filling && warm);
  EXPECT_EQ(*cold, *filling);
  EXPECT_EQ(*cold, *warm);
  EXPECT_GT(cups, 0u);
  EXPECT_EQ(cache.size(), cups);
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

TEST(Installs, HotFillSaysWhatWouldDo) {
  PlanInput in = sample::input();
  in.coats = {sample::boxes()};
  in.coats[0].install->gap = units::millimetres(2);
  auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  ASSERT_TRUE(plan->coats[0].fill_peak);
  EXPECT_LT(plan->coats[0].fill_peak->in_celsius(), 70.0);
  EXPECT_FALSE(sample::has_notice(*plan, "install.fill_hot"));
  in.coats[0].install->gap = units::millimetres(8);
  plan = make_plan(in);
  EXPECT_GT(plan->coats[0].fill_peak->in_celsius(), 70.0);
  EXPECT_TRUE(sample::has_notice(*plan, "install.fill_hot"));
  EXPECT_TRUE(sample::has_notice(*plan, "install.fills"));
  // Polyurethane takes more, and a slower hardener comes before a second fill.
  in.shop.resins = {sample::quick("slow"), sample::slow()};
  in.shop.resins[1].id = "slower";
  in.coats[0].install->gap = units::millimetres(2);
  plan = make_plan(in);
  EXPECT_TRUE(sample::has_notice(*plan, "install.fill_hot"));
  EXPECT_TRUE(sample::has_notice(*plan, "install.slower"));
  EXPECT_FALSE(sample::has_notice(*plan, "install.fills"));
}

TEST(LooseMix, KeepsTheRatioForAnyMass) {
  const Shop shop = sample::shop();
  const auto loose =
      mix(shop, {"slow", units::grams(180), {}, units::Temperature::celsius(22), {}, {}, {}});
  ASSERT_TRUE(loose);
  const double wanted = loose->batches.front().part_a.in_grams() * 0.97 / 2.26;
  EXPECT_NEAR(loose->batches.front().part_b.in_grams() / wanted, 1.0, 0.03);
  EXPECT_GE(loose->batches.front().mix.in_grams(), 180.0);
}

TEST(LooseMix, IsSharedOutWhereOneCupDoesNotHoldIt) {
  const auto loose = mix(
      sample::shop(), {"slow", units::grams(900), {}, units::Temperature::celsius(22), {}, {}, {}});
  ASSERT_TRUE(loose);
  ASSERT_EQ(loose->batches.size(), 2u);
  EXPECT_EQ(loose->batches[1].n, 2);
  EXPECT_GE(loose->batches[0].mix.in_grams() * 2.0, 900.0);
  EXPECT_EQ(loose->notices.back().code, "mix.split.cup");
}

TEST(LooseMix, NothingThatGoesOffInEveryCup) {
  Shop shop = sample::shop();
  shop.resins = {sample::quick("slow")};
  shop.resins[0].gel = {
      {units::Temperature::celsius(25), {units::minutes(9), units::minutes(9)}, {}}};
  shop.resins[0].pot_life = {
      {units::Temperature::celsius(25), {units::minutes(3), units::minutes(3)}, units::grams(20)}};
  const auto loose =
      mix(shop, {"slow", units::grams(300), {}, units::Temperature::celsius(40), {}, {}, {}});
  ASSERT_FALSE(loose);
  EXPECT_EQ(loose.error().front().code, "mix.goes_off");
}

}  // namespace
}  // namespace wetout::laminate
