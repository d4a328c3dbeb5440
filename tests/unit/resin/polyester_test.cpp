#include "wetout/resin/polyester.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "random_air.hpp"
#include "sheets.hpp"

namespace wetout::resin {
namespace {

using sheets::c;

// An invented sheet.
Product laminating() {
  Product p;
  p.id = "pe";
  p.chemistry = Chemistry::polyester;
  p.styrene = true;
  p.catalyst = {{c(15), 0.01, sheets::minutes(60)}, {c(15), 0.02, sheets::minutes(32)},
                {c(20), 0.01, sheets::minutes(40)}, {c(20), 0.02, sheets::minutes(20)},
                {c(30), 0.01, sheets::minutes(18)}, {c(30), 0.02, sheets::minutes(9)}};
  p.dose_low = 0.01;
  p.dose_high = 0.02;
  p.tack_free = {{c(20), sheets::minutes(90), {}}};
  p.sand = {{c(20), sheets::hours(4), {}}};
  return p;
}
double gel_min(const Product& p, double dose, double celsius) {
  return units::in_minutes(*polyester_gel(p, dose, c(celsius), {}));
}

TEST(Polyester, PrintedGelTimesComeBack) {
  const Product p = laminating();
  for (const CatalystTime& line : p.catalyst) {
    EXPECT_NEAR(gel_min(p, line.dose, line.air.in_celsius()), units::in_minutes(line.gel.low),
                1e-9);
  }
}

TEST(Polyester, BetweenLinesItIsStraightInArrheniusSpace) {
  const Product p = laminating();
  // Half way in 1/T between 15 and 20 C the time is the geometric mean; likewise in ln(dose).
  const double half = 2.0 / (1.0 / 288.15 + 1.0 / 293.15) - 273.15;
  EXPECT_NEAR(gel_min(p, 0.01, half), std::sqrt(60.0 * 40.0), 1e-9);
  EXPECT_NEAR(gel_min(p, std::sqrt(0.01 * 0.02), 20), std::sqrt(40.0 * 20.0), 1e-9);
}

TEST(Polyester, DoseMeetsTheWish) {
  const Product p = laminating();
  const auto dose = dose_for(p, c(23), units::minutes(25), {});
  ASSERT_TRUE(dose);
  EXPECT_GT(dose->share, 0.01);
  EXPECT_LT(dose->share, 0.02);
  EXPECT_NEAR(units::in_minutes(dose->gel), 25.0, 1e-6);
  EXPECT_TRUE(dose->notices.empty());
  EXPECT_NEAR(gel_min(p, dose->share, 23), 25.0, 1e-6);
}

TEST(Polyester, DoseStaysInsideTheSheetsRange) {
  const Product p = laminating();
  const auto cold = dose_for(p, c(15), units::minutes(10), {});
  EXPECT_DOUBLE_EQ(cold->share, 0.02);
  EXPECT_EQ(cold->notices.front().code, "polyester.dose_end");
  const auto hot = dose_for(p, c(30), units::minutes(60), {});
  EXPECT_DOUBLE_EQ(hot->share, 0.01);
  EXPECT_EQ(polyester_gel(p, 0.03, c(20), {}).error().front().code, "polyester.dose");
  EXPECT_EQ(polyester_gel(p, 0.005, c(20), {}).error().front().code, "polyester.dose");
}

TEST(Polyester, MilestonesAreMultiplesOfGel) {
  const Product p = laminating();
  const auto air = time::History::constant(293.15);
  const auto slow = *polyester_times(p, 0.01, air, time::Instant{}, {});
  const auto quick = *polyester_times(p, 0.02, air, time::Instant{}, {});
  using enum Milestone;
  EXPECT_NEAR(slow[gel]->after_s, 40 * 60.0, 1e-6);
  EXPECT_NEAR(slow[tack_free]->after_s / slow[gel]->after_s, 90.0 / std::sqrt(40.0 * 20.0), 1e-9);
  EXPECT_NEAR(quick[tack_free]->after_s / quick[gel]->after_s, 90.0 / std::sqrt(40.0 * 20.0), 1e-9);
  EXPECT_NEAR(slow[recoat_from]->after_s / slow[gel]->after_s, 1.5, 1e-9);
  EXPECT_NEAR(slow[recoat_until]->after_s, 72 * 3600.0, 1e-9);
  EXPECT_FALSE(slow[full_cure]);
}

TEST(Polyester, WaxedIsRecoatedAfterSanding) {
  Product p = laminating();
  p.waxed = true;
  const auto times =
      *polyester_times(p, 0.01, time::History::constant(293.15), time::Instant{}, {});
  EXPECT_EQ(times[Milestone::recoat_from], times[Milestone::sandable]);
  EXPECT_FALSE(times[Milestone::recoat_until]);
}

// The count by a fine sum of its definition.
RC_GTEST_PROP(Polyester, GelInChangingAirMeetsAFineSum, ()) {
  const Product p = laminating();
  const auto air = random_air();
  const double dose = 0.01 + 0.0001 * *rc::gen::inRange(0, 101);
  const int start_min = *rc::gen::inRange(-60, 2000);
  const auto times =
      polyester_times(p, dose, air, time::Instant{} + std::chrono::minutes(start_min), {});
  const double until = (*times)[Milestone::tack_free]->after_s;
  double sum = 0.0;
  const int n = 4000;
  for (int i = 0; i < n; ++i) {
    const double kelvin = air.at_seconds(60.0 * start_min + until * (i + 0.5) / n);
    sum += until / n /
           units::in_seconds(*polyester_gel(p, dose, units::Temperature::kelvin(kelvin), {}));
  }
  RC_ASSERT(std::abs(sum / (90.0 / std::sqrt(40.0 * 20.0)) - 1.0) < 1e-4);
}

RC_GTEST_PROP(Polyester, WarmerOrMoreIsNeverSlower, ()) {
  const Product p = laminating();
  const double a = *rc::gen::inRange(0, 400) / 10.0, b = a + *rc::gen::inRange(0, 100) / 10.0;
  const double x = *rc::gen::inRange(100, 201) / 1e4, y = std::min(0.02, x + 0.001);
  RC_ASSERT(gel_min(p, x, b) <= gel_min(p, x, a) * (1 + 1e-12));
  RC_ASSERT(gel_min(p, y, a) <= gel_min(p, x, a) * (1 + 1e-12));
}

TEST(Polyester, RefusalsSayWhy) {
  Product p = laminating();
  p.light_cured = true;
  EXPECT_EQ(polyester_gel(p, 0.01, c(20), {}).error().front().code, "polyester.light_cured");
  p = laminating();
  p.catalyst.clear();
  EXPECT_EQ(polyester_gel(p, 0.01, c(20), {}).error().front().code, "polyester.no_table");
  p.gel = {{c(20), sheets::minutes(30), {}}};
  EXPECT_NEAR(gel_min(p, std::sqrt(0.01 * 0.02), 20), 30.0, 1e-9);
}

}  // namespace
}  // namespace wetout::resin
