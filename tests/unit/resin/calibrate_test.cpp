#include "wetout/resin/calibrate.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sheets.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/pot_life.hpp"

namespace wetout::resin {
namespace {

using sheets::c;

Calibration fit(const Product& product, const Defaults& defaults = {}) {
  auto result = calibrate(product, defaults);
  EXPECT_TRUE(result) << (result ? "" : result.error().front().message);
  return *std::move(result);
}
bool says(const Calibration& fit, std::string_view code) {
  return std::any_of(fit.notices.begin(), fit.notices.end(),
                     [&](const base::Notice& n) { return n.code == code; });
}
double cup_min(const Cure& cure, double mass_g, double celsius) {
  const auto life = pot_life(cure, {units::grams(mass_g), c(celsius), c(celsius), {}, {}});
  EXPECT_TRUE(life);
  return units::in_minutes(life->gel);
}

// Closure: what the fit makes true.
TEST(Calibrate, PotLifeComesBackAtTheSheetsMass) {
  for (const Product& p : {sheets::quick(), sheets::medium(), sheets::slow(), sheets::tropical()}) {
    const Calibration fitted = fit(p);
    const SheetTime& line = p.pot_life.front();
    EXPECT_NEAR(
        cup_min(fitted.cure, units::in_grams(*line.mass), 25) / units::in_minutes(line.time.low),
        1.0, 0.005)
        << p.id;
    EXPECT_LE(std::abs(fitted.cure.lever), 2.0);
    ASSERT_TRUE(fitted.pot_life);
    EXPECT_LT(fitted.pot_life->shortest, line.time.low);
    EXPECT_GT(fitted.pot_life->longest, line.time.low);
    EXPECT_EQ(fitted.pot_life->used, line.time.low);
  }
}

TEST(Calibrate, UsablePotLifeFitsTheUsableTime) {
  Product p = sheets::medium();
  p.pot_life_means = PotLifeMeans::usable;
  p.pot_life[0].time = sheets::minutes(20);
  const Cure cure = fit(p).cure;
  const auto life = pot_life(cure, {units::grams(150), c(25), c(25), {}, {}});
  ASSERT_TRUE(life);
  EXPECT_NEAR(units::in_minutes(life->use_within), 20.0, 0.1);
  EXPECT_GT(units::in_minutes(life->gel), 23.0);
}

TEST(Calibrate, LeverMovesNoFilmTime) {
  Product p = sheets::medium();
  const Cure a = fit(p).cure;
  p.pot_life[0].time = sheets::minutes(20);
  const Cure b = fit(p).cure;
  EXPECT_GT(b.lever, a.lever + 0.2);
  EXPECT_EQ(a.ages, b.ages);
  EXPECT_EQ(a.kinetics.energy_j_per_mol, b.kinetics.energy_j_per_mol);
}

// The heat of reaction by mass ratio: 414, 389, 345 J/g for 0.25, 0.33, 0.50 parts of hardener
// (103.5 kJ/eq, 190 g/eq, 0.95; arithmetic).
TEST(Calibrate, HeatFollowsTheMixingRatio) {
  Product p = sheets::medium();
  p.pot_life.clear();  // lever in the middle
  for (const auto& [b, heat] : {std::pair{25.0, 414.0}, {33.0, 389.0}, {50.0, 345.0}}) {
    p.by_mass = Parts{By::mass, 100, b};
    EXPECT_NEAR(fit(p).cure.bulk.heat_j_per_kg * 1e-3, heat, 0.6);
  }
  p.by_mass = Parts{By::mass, 100, 300};
  EXPECT_EQ(fit(p).cure.bulk.heat_j_per_kg, 250e3);
}

// One pair 2.0 x between 25 and 15 C gives 53.7 (raw 49.5), six pairs 51.4 (computed by hand).
TEST(Calibrate, SecondTemperatureIsWeighedAgainstTheUsualEnergy) {
  Product p = sheets::medium();
  p.tack_free.push_back({c(15), sheets::hours(10), {}});
  Calibration fitted = fit(p);
  EXPECT_NEAR(*fitted.sheet_energy_kj_mol, 49.5, 0.05);
  EXPECT_NEAR(fitted.cure.kinetics.energy_j_per_mol * 1e-3, 53.7, 0.05);
  const auto pair = std::find_if(fitted.residuals.begin(), fitted.residuals.end(),
                                 [](const Residual& r) { return r.air == c(15); });
  ASSERT_NE(pair, fitted.residuals.end());
  EXPECT_NEAR(pair->model / pair->printed, 1.06, 0.01);
  EXPECT_FALSE(pair->closure);

  p.gel.push_back({c(15), sheets::minutes(320), {}});
  p.recoat.push_back({c(15), sheets::hours(7), sheets::hours(24)});
  p.sand.push_back({c(15), sheets::hours(32), {}});
  p.full_cure.push_back({c(15), sheets::hours(336), {}});
  fitted = fit(p);
  EXPECT_NEAR(fitted.cure.kinetics.energy_j_per_mol * 1e-3, 51.4, 0.1);
  for (const Residual& r : fitted.residuals) {
    EXPECT_LT(std::abs(r.model / r.printed - 1.0), 0.05) << r.key;
  }
}

TEST(Calibrate, ContradictingSecondTemperatureIsLeftOut) {
  Product p = sheets::medium();
  p.tack_free.push_back({c(15), sheets::hours(5.5), {}});
  const Calibration fitted = fit(p);
  EXPECT_NEAR(*fitted.sheet_energy_kj_mol, 6.8, 0.05);
  EXPECT_EQ(fitted.cure.kinetics.energy_j_per_mol, 55e3);
  ASSERT_TRUE(says(fitted, "cure.second_temperature"));
  EXPECT_NE(fitted.notices.front().text.find("1.1 x"), std::string::npos);
  EXPECT_NE(fitted.notices.front().text.find("1.6 to 3.1"), std::string::npos);
  EXPECT_TRUE(says(fitted, "cure.residual"));
}

TEST(Calibrate, RangesAreFittedByTheirMiddleAndRunOnTheSafeEnd) {
  Product p = sheets::medium();
  p.gel[0].time = sheets::minutes(150, 170);
  p.tack_free[0].time = sheets::hours(4, 6);
  p.tack_free.push_back({c(15), sheets::hours(8, 12), {}});  // middles 5 and 10
  p.recoat[0].until = sheets::hours(10, 14);
  p.pot_life[0].time = sheets::minutes(25, 30);
  const Calibration fitted = fit(p);
  EXPECT_NEAR(*fitted.sheet_energy_kj_mol, 49.5, 0.05);
  EXPECT_DOUBLE_EQ(units::in_minutes(*fitted.cure.ages[Milestone::gel]), 170.0);
  EXPECT_DOUBLE_EQ(units::in_hours(*fitted.cure.ages[Milestone::tack_free]), 6.0);
  EXPECT_DOUBLE_EQ(units::in_hours(*fitted.cure.ages[Milestone::recoat_until]), 10.0);
  EXPECT_NEAR(fitted.cure.earliest_gel, 150.0 / 170.0, 1e-12);
  EXPECT_NEAR(cup_min(fitted.cure, 150, 25), 25.0, 0.1);
}

// Worked out before the program was built: a cup of 150 g whose film gels in 90 min lasts 7 to 22
// min, the sheet says 60; whose film gels in 180 min 15 to 46 min, the sheet says 4.
TEST(Calibrate, PotLifeTooLongKeepsTheLongestTheCupCanDo) {
  Product p = sheets::quick();
  p.by_mass = Parts{By::mass, 100, 28};
  p.gel[0].time = sheets::minutes(90);
  p.pot_life[0].time = sheets::minutes(60);
  const Calibration fitted = fit(p);
  EXPECT_EQ(fitted.cure.lever, -2.0);
  EXPECT_EQ(fitted.cure.cup_factor, 1.0);
  EXPECT_NEAR(units::in_minutes(fitted.pot_life->longest), 22.2, 0.2);
  EXPECT_NEAR(units::in_minutes(fitted.pot_life->shortest), 7.0, 0.5);
  EXPECT_NEAR(cup_min(fitted.cure, 150, 25), 22.2, 0.2);
  ASSERT_TRUE(says(fitted, "cure.pot_life_too_long"));
  EXPECT_NE(fitted.notices.front().text.find("7 to 22 min"), std::string::npos);
  EXPECT_EQ(fitted.notices.front().value, 60.0);
  const auto life = pot_life(fitted.cure, {units::grams(150), c(25), c(25), {}, {}});
  EXPECT_NEAR(units::in_minutes(life->use_within), 19.0, 0.1);
  EXPECT_NEAR(life->followed_peak.in_celsius(), 193.0, 1.0);
}

TEST(Calibrate, PotLifeTooShortScalesTheCupAndLeavesTheFilm) {
  Product p = sheets::slow();
  p.by_mass = Parts{By::mass, 100, 28};
  p.gel[0].time = sheets::minutes(180);
  p.pot_life[0].time = sheets::minutes(4);
  const Calibration fitted = fit(p);
  EXPECT_EQ(fitted.cure.lever, 2.0);
  EXPECT_NEAR(units::in_minutes(fitted.pot_life->shortest), 15.1, 0.1);
  EXPECT_NEAR(units::in_minutes(fitted.pot_life->longest), 46.0, 1.0);
  EXPECT_NEAR(cup_min(fitted.cure, 150, 25), 4.0, 0.02);
  EXPECT_LT(cup_min(fitted.cure, 500, 25), 4.0);
  EXPECT_NEAR(units::in_minutes(*fitted.cure.ages[Milestone::gel]), 180.0, 1e-9);
  EXPECT_TRUE(says(fitted, "cure.pot_life_too_short"));
}

TEST(Calibrate, LeverFarOutIsNoticed) {
  Product p = sheets::medium();
  p.pot_life[0].time = sheets::minutes(15);
  const Calibration fitted = fit(p);
  EXPECT_GT(fitted.cure.lever, 1.0);
  EXPECT_TRUE(says(fitted, "cure.pot_life_at_the_edge"));
  EXPECT_FALSE(says(fit(sheets::medium()), "cure.pot_life_at_the_edge"));
}

TEST(Calibrate, WithoutGelItComesFromTackFree) {
  Product p = sheets::medium();
  p.gel.clear();
  const Calibration fitted = fit(p);
  EXPECT_NEAR(units::in_hours(*fitted.cure.ages[Milestone::gel]), 5.0 / 1.75, 1e-9);
  EXPECT_TRUE(says(fitted, "cure.gel_from_tack_free"));
  EXPECT_EQ(fitted.missing, std::vector<std::string>{"gel"});
}

TEST(Calibrate, WithoutFilmTimesTheyAreGuessedFromThePotLife) {
  Product p = sheets::medium();
  p.gel.clear();
  p.tack_free.clear();
  p.recoat.clear();
  p.sand.clear();
  p.full_cure.clear();
  const Calibration fitted = fit(p);
  EXPECT_TRUE(says(fitted, "cure.film_from_pot_life"));
  EXPECT_EQ(fitted.cure.lever, 0.0);
  const double times = units::in_minutes(*fitted.cure.ages[Milestone::gel]) / 25.0;
  EXPECT_GT(times, 5.8);  // 6.4 to 5.8 up to a film gel of 4 h
  EXPECT_LT(times, 6.4);
  EXPECT_NEAR(cup_min(fitted.cure, 150, 25), 25.0, 0.1);
}

TEST(Calibrate, WithoutPotLifeTheLeverStaysInTheMiddle) {
  Product p = sheets::medium();
  p.pot_life.clear();
  const Calibration fitted = fit(p);
  EXPECT_TRUE(says(fitted, "cure.cup_guessed"));
  EXPECT_EQ(fitted.cure.lever, 0.0);
  EXPECT_FALSE(fitted.pot_life);
  const double ratio = cup_min(fitted.cure, 150, 25) / 160.0;
  EXPECT_GT(ratio, 0.150);  // the usual model: 0.155 to 0.165
  EXPECT_LT(ratio, 0.170);
}

TEST(Calibrate, NothingThatSaysHowFastIsAProblem) {
  Product p = sheets::medium();
  p.gel.clear();
  p.tack_free.clear();
  p.pot_life.clear();
  const auto result = calibrate(p, {});
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().front().code, "resin.no_time");
  EXPECT_EQ(result.error().front().key, "gel");
}

TEST(Calibrate, WrongOrderIsAProblemAlsoAcrossTemperatures) {
  Product p = sheets::medium();
  p.tack_free[0].time = sheets::hours(1);
  auto result = calibrate(p, {});
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().front().code, "sheet.order");
  EXPECT_EQ(result.error().front().key, "tack_free");
  EXPECT_EQ(result.error().front().message, "tack-free (60 min) comes before gel (2.67 h)");
  // 5 h at 40 C are 14 h at 25 C: after sanding at 25 C would be no contradiction, before gel is.
  p = sheets::medium();
  p.tack_free = {{c(5), sheets::hours(10), {}}};  // 2 h at 25 C
  result = calibrate(p, {});
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().front().key, "tack_free");
}

TEST(Calibrate, TimesMustBeAboveZero) {
  Product p = sheets::medium();
  p.sand[0].time = sheets::hours(0);
  const auto result = calibrate(p, {});
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().front().code, "sheet.time");
  EXPECT_EQ(result.error().front().key, "sand");
}

TEST(Calibrate, PolyesterHasNoConversion) {
  Product p = sheets::medium();
  p.chemistry = Chemistry::polyester;
  EXPECT_EQ(calibrate(p, {}).error().front().code, "cure.polyester");
}

TEST(Calibrate, AsCuredTgIsNoticedAndTheSheetStillHolds) {
  Product p = sheets::medium();
  p.tg = c(35);
  const Calibration fitted = fit(p);
  EXPECT_TRUE(says(fitted, "cure.as_cured_tg"));
  EXPECT_EQ(fitted.cure.glass.cured, c(45));
  const auto times = Film(fitted.cure, time::History::constant(298.15)).times(time::Instant{});
  EXPECT_NEAR(times[Milestone::sandable]->after_s, 16 * 3600.0, 1e-3);
  EXPECT_NEAR(times[Milestone::full_cure]->after_s, 168 * 3600.0, 1e-3);
}

TEST(Calibrate, HotCuredTgDoesNotStopTheFilmBeforeItGels) {
  Product p = sheets::medium();
  p.tg = c(250);
  const Calibration fitted = fit(p);
  EXPECT_TRUE(says(fitted, "cure.hot_cured_tg"));
  const Film film(fitted.cure, time::History::constant(298.15));
  EXPECT_GT(film.state(time::Instant{}, 160 * 60.0).conversion, 0.57);
}

TEST(Calibrate, MissingLinesAreNamed) {
  Product p;
  p.id = "bare";
  p.by_mass = Parts{By::mass, 2, 1};
  p.gel = {{c(25), sheets::hours(3), {}}};
  const std::vector<std::string> missing{"pot_life", "tack_free", "recoat",
                                         "sand",     "full_cure", "tg"};
  EXPECT_EQ(fit(p).missing, missing);
}

TEST(Calibrate, OtherPotLifeLinesAreJudgedNotFitted) {
  Product p = sheets::medium();
  p.pot_life.push_back({c(15), sheets::minutes(55), units::grams(150)});
  p.pot_life.push_back({c(25), sheets::minutes(60), units::grams(1000)});  // nonsense
  const Calibration fitted = fit(p);
  EXPECT_EQ(fitted.cure, fit(sheets::medium()).cure);
  std::vector<Residual> pots;
  std::copy_if(fitted.residuals.begin(), fitted.residuals.end(), std::back_inserter(pots),
               [](const Residual& r) { return r.key == "pot_life"; });
  ASSERT_EQ(pots.size(), 3u);
  EXPECT_TRUE(pots[0].closure);
  EXPECT_LT(std::abs(pots[1].model / pots[1].printed - 1.0), 0.1);
  EXPECT_LT(pots[2].model / pots[2].printed, 0.5);
  EXPECT_TRUE(says(fitted, "cure.residual"));
}

// Ratios at the sheet's mass worked out before the program was built: medium 6.3, 3.6, 2.2, 1.5,
// .70, .57, .50, .37 at 5, 10, 15, 20, 30, 33, 35, 40 C. Its film gel time is not on record; any
// near it gives them to a few per cent.
TEST(Calibrate, CupTimesFollowTheTemperatureAsWorkedOut) {
  const Cure cure = fit(sheets::medium()).cure;
  const double at_25 = cup_min(cure, 150, 25);
  for (const auto& [celsius, ratio] :
       {std::pair{10.0, 3.6}, {15.0, 2.2}, {20.0, 1.5}, {30.0, 0.70}, {33.0, 0.57}, {40.0, 0.37}}) {
    EXPECT_NEAR(cup_min(cure, 150, celsius) / at_25 / ratio, 1.0, 0.03) << celsius;
  }
}

TEST(Calibrate, CacheChangesNothing) {
  for (const Product& p : {sheets::quick(), sheets::tropical()}) {
    MemoryCache cache;
    const Calibration without = fit(p);
    const auto first = calibrate(p, {}, &cache);
    const std::size_t kept = cache.size();
    const auto second = calibrate(p, {}, &cache);
    EXPECT_EQ(cache.size(), kept);
    EXPECT_GT(kept, 3u);
    EXPECT_EQ(first->cure, without.cure);
    EXPECT_EQ(second->cure, without.cure);
    EXPECT_EQ(second->notices, without.notices);
  }
}

// Each default is moved by a hundredth of its range: the fit changes if and only if it is listed.
TEST(Calibrate, AssumedListsExactlyWhatMovesTheFit) {
  Product two_temperatures = sheets::medium();
  two_temperatures.tack_free.push_back({c(15), sheets::hours(10), {}});
  Product bare = sheets::medium();
  bare.tg.reset();
  bare.gel.clear();
  bare.recoat.clear();
  bare.sand.clear();
  bare.pot_life.clear();
  Product only_pot = sheets::medium();
  only_pot.gel.clear();
  only_pot.tack_free.clear();
  only_pot.recoat.clear();
  only_pot.sand.clear();
  only_pot.full_cure.clear();
  only_pot.pot_life[0].mass.reset();
  Product usable_line = sheets::slow();
  usable_line.pot_life_means = PotLifeMeans::usable;
  usable_line.density_a = units::grams_per_millilitre(1.13);
  usable_line.density_b = units::grams_per_millilitre(0.98);
  for (const Product& p : {two_temperatures, bare, only_pot, usable_line}) {
    const Calibration fitted = fit(p);
    Defaults moved;
    const auto check = [&](auto& value, const char*) {
      const double original = value.value;
      bool moves = false;
      for (const double sign : {-1.0, 1.0}) {
        if (moves) break;
        value.value = original + sign * 0.01 * (value.high - value.low);
        moves = moves || !(fit(p, moved).cure == fitted.cure);
      }
      value.value = original;
      const bool listed = std::find(fitted.assumed.begin(), fitted.assumed.end(), value.name) !=
                          fitted.assumed.end();
      EXPECT_EQ(listed, moves) << p.id << " " << value.name;
    };
    visit(moved.cure, check);
    check(moved.energy_kj_mol, "");
    check(moved.tack_free_of_gel, "");
  }
}

}  // namespace
}  // namespace wetout::resin
