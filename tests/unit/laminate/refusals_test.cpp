#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

base::Problem refused(const PlanInput& in) {
  const auto plan = make_plan(in);
  EXPECT_FALSE(plan);
  return plan ? base::Problem{} : plan.error().front();
}

TEST(Refusals, UnknownClothNamesPlaceAndNearest) {
  PlanInput in = sample::input();
  in.coats[0].plies[0].cloth = "e5";
  const base::Problem p = refused(in);
  EXPECT_EQ(p.code, "reference.cloth");
  EXPECT_EQ(p.key, "coat[0].ply[0].cloth");
  EXPECT_EQ(p.hint, "did you mean \"e4\"?");
}

TEST(Refusals, UnknownResinPartAdditiveAndCup) {
  PlanInput in = sample::input();
  in.coats[3].resin = "sloww";
  in.coats[2].install->part = "fin-bx";
  in.coats[1].additives[0].material = "wite";
  in.cup = "pint";
  const auto plan = make_plan(in);
  ASSERT_FALSE(plan);
  std::string keys;
  for (const base::Problem& problem : plan.error()) keys += problem.key + " ";
  EXPECT_EQ(keys, " coat[1].additives[0].material coat[2].part coat[3].resin ");
}

TEST(Refusals, StyreneNeverOnPolystyrene) {
  PlanInput in = sample::input();
  in.shop.resins[0].chemistry = resin::Chemistry::polyester;
  EXPECT_EQ(refused(in).code, "chemistry.styrene");
  in.board.foam = board::Foam::xps;
  in.coats.insert(in.coats.begin(), sample::film("seal", board::Face::deck, CoatKind::seal));
  EXPECT_EQ(refused(in).code, "chemistry.styrene");  // sealed or not
}

TEST(Refusals, StyreneInAFillerCounts) {
  PlanInput in = sample::input();
  in.shop.materials[2].styrene = true;
  EXPECT_EQ(refused(in).key, "coat[1].additives[0].material");
}

TEST(Refusals, PolyesterWithoutATableOrCuredByLight) {
  PlanInput in = sample::input();
  in.board.foam = board::Foam::pu;
  in.shop.resins[0] = sample::polyester();
  in.shop.resins[0].id = "slow";
  in.shop.resins[0].catalyst.clear();
  EXPECT_EQ(refused(in).code, "polyester.no_table");
  EXPECT_EQ(refused(in).key, "resin[0].catalyst");
  in.shop.resins[0].light_cured = true;
  EXPECT_EQ(refused(in).code, "polyester.light_cured");
}

TEST(Refusals, SheetThatContradictsItself) {
  PlanInput in = sample::input();
  in.shop.resins[0].tack_free = {
      {units::Temperature::celsius(25), {units::hours(2), units::hours(2)}, {}}};
  const base::Problem p = refused(in);
  EXPECT_EQ(p.code, "sheet.order");
  EXPECT_EQ(p.key.rfind("resin[0].", 0), 0u) << p.key;
}

TEST(Refusals, PeroxideIsNoEpoxyHardener) {
  PlanInput in = sample::input();
  in.shop.resins[0].part_b = "mekp-catalyst";
  EXPECT_EQ(refused(in).code, "chemistry.peroxide");
}

TEST(Refusals, LapWiderThanTheOtherFace) {
  PlanInput in = sample::input();
  in.coats[0].plies[0].lap = units::inches(14);
  const base::Problem p = refused(in);
  EXPECT_EQ(p.code, "board.lap_too_wide");
  EXPECT_EQ(p.key, "coat[0].ply[0].lap");
}

TEST(Refusals, AirBeyondSense) {
  PlanInput in = sample::input();
  in.air = units::Temperature::celsius(45);
  EXPECT_EQ(refused(in).code, "air.out_of_range");
  in.air = units::Temperature::celsius(-1);
  EXPECT_EQ(refused(in).code, "air.out_of_range");
}

TEST(Refusals, PlyThatEndsBeforeItBegins) {
  PlanInput in = sample::input();
  in.coats[1].plies[0].from_tail = units::inches(60);
  EXPECT_EQ(refused(in).code, "ply.empty");
}

TEST(Refusals, CoatThatGoesOffWhateverIsTried) {
  PlanInput in = sample::input();
  in.shop.resins[0].pot_life[0].time = {units::minutes(2), units::minutes(2)};
  in.shop.resins[0].gel[0].time = {units::minutes(5), units::minutes(5)};
  in.air = units::Temperature::celsius(35);
  const base::Problem p = refused(in);
  EXPECT_EQ(p.code, "plan.goes_off");
  EXPECT_EQ(p.key, "coat[0]");
}

TEST(Refusals, PartsOfAResinAreNeitherAdditiveNorInsert) {
  PlanInput in = sample::input();
  in.coats[1].additives[0].material = "slow-b";
  EXPECT_EQ(refused(in).code, "additive.wrong_kind");
  in = sample::input();
  in.coats[1].additives[0].material = "fin-box";
  EXPECT_EQ(refused(in).code, "additive.wrong_kind");
  in = sample::input();
  in.coats[2].install->part = "resin-a";
  EXPECT_EQ(refused(in).code, "install.wrong_kind");
}

TEST(Refusals, StyreneInAPartCounts) {
  PlanInput in = sample::input();
  in.shop.materials[0].styrene = true;
  EXPECT_EQ(refused(in).code, "chemistry.styrene");
}

// Measures with a steep shoulder near a round end: the tip still opens out.
TEST(Refusals, SteepOutlinesStayMeasurable) {
  for (const double width_in : {60.0, 69.0, 70.0, 85.0, 100.0}) {
    PlanInput in = sample::input();
    in.board = sample::board_spec(74, width_in);
    in.shop.cups[0].holds = units::litres(20);
    in.shop.resins[0].pot_life[0].time = {units::hours(9), units::hours(9)};
    const auto plan = make_plan(in);
    ASSERT_TRUE(plan) << width_in << sample::told(plan.error());
    EXPECT_GT(plan->board.deck.si(), plan->board.planform.si());
    EXPECT_LT(plan->board.deck.si(), 1.3 * plan->board.planform.si());
  }
}

TEST(Notices, NarrowClothSaysHowWide) {
  PlanInput in = sample::input();
  in.shop.cloths[0].width = units::inches(24);
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_TRUE(sample::has_notice(*plan, "cloth.narrow"));
  in.shop.cloths[0].width = units::inches(40);
  EXPECT_FALSE(sample::has_notice(*make_plan(in), "cloth.narrow"));
}

TEST(Notices, FibreFractionBeyondHandLayUp) {
  PlanInput in = sample::input();
  in.shop.losses.fibre_mass_fraction = 0.62;
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_TRUE(sample::has_notice(*plan, "laminate.fibre_fraction"));
}

TEST(Notices, BelowTheSheetsLowestAir) {
  PlanInput in = sample::input();
  in.air = units::Temperature::celsius(12);
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_TRUE(sample::has_notice(*plan, "resin.below_lowest"));
}

TEST(Notices, CoreMassUnknownGivesNoFinishedWeight) {
  PlanInput in = sample::input();
  in.board.foam_density.reset();
  const auto plan = make_plan(in);
  ASSERT_TRUE(plan) << sample::told(plan.error());
  EXPECT_FALSE(plan->totals.finished_weight);
  EXPECT_TRUE(sample::has_notice(*plan, "weight.core_unknown"));
}

}  // namespace
}  // namespace wetout::laminate
