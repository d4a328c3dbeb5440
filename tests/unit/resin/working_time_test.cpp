#include "wetout/resin/working_time.hpp"

#include <gtest/gtest.h>

namespace wetout::resin {
namespace {

using units::Temperature;

Product with_pot_life() {
  Product product;
  product.id = "slow";
  product.pot_life = {
      {Temperature::celsius(25), {units::minutes(25), units::minutes(30)}, units::grams(150)}};
  return product;
}

Situation at(double resin_c, double mass_g = 150.0) {
  return {units::grams(mass_g), Temperature::celsius(resin_c), Temperature::celsius(resin_c),
          nullptr};
}

TEST(ArrheniusFactor, MatchesPublishedRatioForTenKelvin) {
  // Rate ratio 20 -> 30 C, computed from the definition of the law: 1.839, 1.967, 2.105. The
  // trade's "twice as fast per 10 degrees" (a supplier's page) lies between the last two.
  for (const auto& [energy, ratio] : {std::pair{45.0, 1.839}, {50.0, 1.967}, {55.0, 2.105}}) {
    EXPECT_NEAR(1.0 / arrhenius_factor(energy, Temperature::celsius(20), Temperature::celsius(30)),
                ratio, 0.0005);
  }
}

TEST(TemperatureForFactor, UndoesTheFactor) {
  const Temperature from = Temperature::celsius(25);
  const double factor = arrhenius_factor(55.0, from, Temperature::celsius(17));
  EXPECT_NEAR(temperature_for_factor(55.0, from, factor).in_celsius(), 17.0, 1e-9);
}

TEST(SheetWorkingTimes, HalfTheLowerEndAtTheSheetsOwnTemperature) {
  const auto time = SheetWorkingTimes({}).of(with_pot_life(), at(25));
  ASSERT_TRUE(time);
  EXPECT_NEAR(units::in_minutes(time->use_within), 12.5, 1e-12);
  EXPECT_TRUE(time->notices.empty());
}

TEST(SheetWorkingTimes, WarmerIsShorter) {
  double last = 1e9;
  for (double celsius = 0; celsius <= 40; celsius += 1) {
    const auto time = SheetWorkingTimes({}).of(with_pot_life(), at(celsius));
    ASSERT_TRUE(time);
    EXPECT_LT(units::in_minutes(time->use_within), last);
    last = units::in_minutes(time->use_within);
  }
}

TEST(SheetWorkingTimes, LargerCupThanTheSheetsIsNoticed) {
  const auto time = SheetWorkingTimes({}).of(with_pot_life(), at(25, 400));
  ASSERT_TRUE(time);
  ASSERT_EQ(time->notices.size(), 1u);
  EXPECT_EQ(time->notices[0].code, "cup.above_sheet_mass");
  EXPECT_EQ(time->notices[0].value, 400.0);
  EXPECT_EQ(time->notices[0].limit, 150.0);
}

TEST(SheetWorkingTimes, NearestPrintedTemperatureIsUsed) {
  Product product = with_pot_life();
  product.pot_life.push_back(
      {Temperature::celsius(15), {units::minutes(70), units::minutes(70)}, units::grams(150)});
  const auto time = SheetWorkingTimes({}).of(product, at(15));
  ASSERT_TRUE(time);
  EXPECT_NEAR(units::in_minutes(time->use_within), 35.0, 1e-12);
}

TEST(SheetWorkingTimes, FilmTimesStandInAndSaySo) {
  Product product;
  product.id = "x";
  product.gel = {{Temperature::celsius(25), {units::hours(4), units::hours(4)}, {}}};
  const auto time = SheetWorkingTimes({}).of(product, at(25));
  ASSERT_TRUE(time);
  EXPECT_NEAR(units::in_minutes(time->use_within), 240 * 0.16 * 0.5, 1e-9);
  ASSERT_EQ(time->notices.size(), 1u);
  EXPECT_EQ(time->notices[0].code, "resin.pot_life_guessed");
}

TEST(SheetWorkingTimes, NoLineIsAProblemThatNamesTheLine) {
  const auto time = SheetWorkingTimes({}).of(Product{}, at(25));
  ASSERT_FALSE(time);
  EXPECT_EQ(time.error().front().code, "resin.no_time");
  EXPECT_EQ(time.error().front().key, "pot_life");
}

}  // namespace
}  // namespace wetout::resin
