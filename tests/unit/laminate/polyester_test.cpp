// A polyester's catalyst is dosed inside its sheet's range, so that each batch lasts as long as it
// takes.
#include <gtest/gtest.h>

#include "sample.hpp"

namespace wetout::laminate {
namespace {

PlanInput on_pu(double air_c) {
  PlanInput in = sample::input();
  in.board.foam = board::Foam::pu;
  in.air = units::Temperature::celsius(air_c);
  in.shop.scale_step = units::grams(0.1);
  in.shop.resins.push_back(sample::polyester());
  in.coats = {sample::laminate("lam", board::Face::bottom, Laps::free),
              sample::film("hot", board::Face::bottom, CoatKind::hotcoat)};
  for (CoatSpec& coat : in.coats) coat.resin = "polyester";
  return in;
}

double dose(const Batch& batch) { return batch.part_b.in_grams() / batch.part_a.in_grams(); }

TEST(Polyester, DoseStaysInsideTheSheetsRangeAndLastsLongEnough) {
  for (const double air : {15.0, 20.0, 25.0, 30.0}) {
    const auto plan = make_plan(on_pu(air));
    ASSERT_TRUE(plan) << sample::told(plan.error());
    for (const CoatNeed& coat : plan->coats) {
      for (const Batch& batch : coat.batches) {
        EXPECT_GE(dose(batch), 0.01);
        EXPECT_LE(dose(batch), 0.025);
        const double share = batch.mix.in_grams() / coat.mix.in_grams();
        const double takes =
            2.0 + batch.mix.in_grams() / 200.0 + units::in_minutes(*coat.spread) * share;
        ASSERT_TRUE(batch.spread_within);
        EXPECT_LE(takes, units::in_minutes(*batch.spread_within) + 1e-9);
        EXPECT_FALSE(batch.peak);
        EXPECT_FALSE(batch.runs_away);
      }
    }
  }
}

TEST(Polyester, ColderIsDosedHigher) {
  const auto warm = make_plan(on_pu(25)), cold = make_plan(on_pu(12));
  ASSERT_TRUE(warm && cold);
  EXPECT_GT(cold->coats[1].ratio.b, warm->coats[1].ratio.b);
}

TEST(Polyester, CautionsAreThoseOfPeroxideAndStyrene) {
  const auto plan = make_plan(on_pu(20));
  ASSERT_TRUE(plan);
  std::string all;
  for (const Caution& caution : plan->cautions) all += caution.text + "\n";
  EXPECT_NE(all.find("rinse with water at once"), std::string::npos);
  EXPECT_NE(all.find("promoter"), std::string::npos);
  EXPECT_NE(all.find("no flame"), std::string::npos);
  EXPECT_EQ(all.find("uncured epoxy"), std::string::npos);
}

TEST(Polyester, TopUpKeepsTheCoatsDose) {
  const Shop shop = on_pu(20).shop;
  const auto loose = mix(
      shop, {"polyester", units::grams(150), {}, units::Temperature::celsius(20), {}, {}, 0.015});
  ASSERT_TRUE(loose);
  EXPECT_NEAR(dose(loose->batches.front()), 0.015, 0.0015);
}

}  // namespace
}  // namespace wetout::laminate
