#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

TEST(Needs, ResinInClothIsAsMuchAsTheCloth) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  for (const PlyNeed& ply : plan->plies) {
    EXPECT_NEAR(static_cast<double>(ply.resin.count()), static_cast<double>(ply.fibre.count()),
                1.0);
    EXPECT_NEAR(ply.fibre.in_grams(), 135.62299 * ply.cloth_area.si(), 0.01);
  }
}

TEST(Needs, LapsCoverLessHullThanClothIsCut) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const PlyNeed& ply = plan->plies[0];
  EXPECT_GT(ply.lap_area.si(), 0.0);
  EXPECT_GT(ply.cloth_area.si(), ply.area.si() + ply.lap_area.si());
}

TEST(Needs, OnlyCutLapsAreTrimmed) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_GT(sample::coat(*plan, "bottom-lam").trimmed.count(), 0);
  EXPECT_EQ(sample::coat(*plan, "deck-lam").trimmed.count(), 0);
}

// The trimmed strip by hand: (l + a) and l past a rail line of length P, cloth and resin alike:
// w [P a + pi ((l + a)^2 - l^2)].
TEST(Needs, TrimmedStripByArithmetic) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const auto hull = board::Hull::make(sample::board_spec());
  ASSERT_TRUE(hull);
  // The rail line runs over the rocker; its length out of a strip one millimetre wide.
  const double thin = hull->strip_area(units::metres(1e-3), {}, hull->length()).si();
  const double p = (thin - 3.14159265358979 * 1e-6) / 1e-3;
  const double l = 0.0508, a = 0.0381;
  const double strip = p * a + 3.14159265358979 * ((l + a) * (l + a) - l * l);
  EXPECT_NEAR(sample::coat(*plan, "bottom-lam").trimmed.in_grams(), 135.62299 * strip, 0.02);
}

TEST(Needs, InstallFillsCountTimesItsGap) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  // 5 x 18 ml of a mix of 2 ml at 1.13 and 1 ml at 0.97 g/ml.
  EXPECT_NEAR(sample::coat(*plan, "boxes").kept.in_grams(), 90.0 * (2 * 1.13 + 0.97) / 3.0, 1e-3);
}

TEST(Needs, OverlapIsOnTheFirstFaceDoneOnly) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_GT(sample::coat(*plan, "bottom-hot").area.si(), plan->board.bottom.si() + 0.05);
  EXPECT_DOUBLE_EQ(sample::coat(*plan, "deck-hot").area.si(), plan->board.deck.si());
}

TEST(Needs, FilmIsThicknessTimesAreaTimesCuredDensity) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  const CoatNeed& hot = sample::coat(*plan, "deck-hot");
  EXPECT_NEAR(hot.kept.in_grams(), 0.18e-3 * 1150e3 * hot.area.si(), 1e-3);
  EXPECT_NEAR(hot.sanded.in_grams(), 0.05e-3 * 1150e3 * hot.area.si(), 1e-3);
}

TEST(Needs, HotcoatOnBareFoamIsTakenUpToo) {
  PlanInput in = sample::input();
  in.coats = {sample::film("hot", board::Face::deck, CoatKind::hotcoat)};
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_NEAR(plan->coats[0].uptake.in_grams(), 60.0 * plan->coats[0].area.si(), 1e-2);
}

// Files may mix units. Both boards here are the same to the last bit of a conversion.
TEST(Needs, MetricAndUsBoardsGiveEveryMassWithinOneMilligram) {
  PlanInput us = sample::input();
  PlanInput metric = us;
  const auto mm = [](double inch) { return units::millimetres(inch * 25.4); };
  metric.board.length = mm(76);
  metric.board.width = {
      {mm(0), mm(6)}, {mm(12), mm(15)}, {mm(39), mm(20.75)}, {mm(64), mm(12)}, {mm(76), mm(0)}};
  metric.board.wide_point = mm(39);
  metric.board.thickness = {{mm(12), mm(1.625)}, {mm(38), mm(2.625)}, {mm(64), mm(1.5)}};
  metric.coats[0].plies[0].lap = mm(2);
  const auto a = make_plan(us);
  const auto b = make_plan(metric);
  ASSERT_TRUE(a) << sample::told(a.error());
  ASSERT_TRUE(b) << sample::told(b.error());
  for (std::size_t i = 0; i < a->coats.size(); ++i) {
    EXPECT_NEAR(static_cast<double>(a->coats[i].kept.count()),
                static_cast<double>(b->coats[i].kept.count()), 1.0);
    EXPECT_NEAR(static_cast<double>(a->coats[i].losses.count()),
                static_cast<double>(b->coats[i].losses.count()), 1.0);
    EXPECT_EQ(a->coats[i].mix, b->coats[i].mix);
  }
}

TEST(Needs, CostIsTheCheapestPackPerGram) {
  const auto plan = make_plan(sample::input());
  ASSERT_TRUE(plan) << sample::told(plan.error());
  for (const MaterialTotal& material : plan->totals.materials) {
    if (material.material != "resin-a") continue;
    // One US gallon at 1.13 g/ml for 48.00.
    const double pack_g = 3785.411784 * 1.13;
    ASSERT_TRUE(material.cost);
    EXPECT_EQ(material.cost->minor, std::llround(4800.0 * material.amount / pack_g));
  }
  EXPECT_TRUE(sample::has_notice(*plan, "cost.no_price"));  // part B has no price here
}

}  // namespace
}  // namespace wetout::laminate
