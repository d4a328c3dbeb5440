#include "wetout/resin/cup.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "reference_cup.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/conversion_curve.hpp"

namespace wetout::resin {
namespace {

using units::Temperature;

struct Mix {
  double energy_kj = 55, m = 0.6, n = 1.5, heat_j_g = 400, r = 0.1, film_gel_min = 160;
};

CupRun cup(const Mix& mix, double mass_g, double air_c, double resin_c) {
  CupRun run;
  run.kinetics = {1.0, mix.r, mix.m, mix.n, mix.energy_kj * 1e3, Temperature::celsius(25)};
  run.kinetics.k_per_s = ConversionCurve(mix.r, mix.m, mix.n).reduced_time(run.gel_conversion) /
                         (60.0 * mix.film_gel_min);
  run.bulk.heat_j_per_kg = mix.heat_j_g * 1e3;
  run.fill = fill_of(units::grams(mass_g) / run.bulk.density);
  run.air = Temperature::celsius(air_c);
  run.resin = Temperature::celsius(resin_c);
  return run;
}
double gel_min(CupRun run) {
  run.until = CupUntil::gel;
  return units::in_minutes(*follow(run).gel);
}
double use_min(CupRun run) {
  run.until = CupUntil::usable;
  return units::in_minutes(*usable(follow(run)));
}

// Made once with another program (CVODE, band, on the same grids): E 55, m 0.8, n 1.6, 450 J/g,
// 150 g at 25 C, film 193.9 min: gel 30.0 min (30.04 on 8 x 12), peak 240.9 C; 50 g 32.6, 1000 g
// 28.9 min; at 15 C 85.0 and 59.7 min; risen by 20 K at 24 min. r was not written down: it is the
// one that gives 30.04, and everything else is then met.
TEST(Cup, MeetsAnotherProgramsCup) {
  const Mix mix{55, 0.8, 1.6, 450, 0.0996, 193.9};
  CupRun coarse = cup(mix, 150, 25, 25);
  coarse.grid = coarse_grid;
  EXPECT_NEAR(gel_min(coarse), 30.04, 0.01);
  const CupCourse course = follow(cup(mix, 150, 25, 25));
  EXPECT_NEAR(units::in_minutes(*course.gel), 30.01, 0.015);
  EXPECT_NEAR(course.peak.in_celsius(), 240.9, 0.3);
  EXPECT_NEAR(units::in_minutes(*course.risen), 24.0, 0.15);
  EXPECT_NEAR(gel_min(cup(mix, 50, 25, 25)), 32.6, 0.05);
  EXPECT_NEAR(gel_min(cup(mix, 1000, 25, 25)), 28.9, 0.05);
  EXPECT_NEAR(gel_min(cup(mix, 50, 15, 15)), 85.0, 0.15);
  EXPECT_NEAR(gel_min(cup(mix, 1000, 15, 15)), 59.7, 0.15);
}

// Published sets with E2 for both terms, 150 g at 25 C: cup gel over film gel. H of W1 is measured
// (446 J/g); none is printed for the other two, theory gives 480 to 540 J/g.
TEST(Cup, PublishedSetsGiveTheirRatioOfCupToFilm) {
  const auto ratio = [](double energy, double m, double n, double k1, double k2, double heat) {
    const double film = ConversionCurve(k1 / k2, m, n).reduced_time(0.57735) / k2 / 60.0;
    return gel_min(cup({energy, m, n, heat, k1 / k2, film}, 150, 25, 25)) / film;
  };
  const auto k = [](double factor, double kj) {
    return factor * std::exp(-kj * 1e3 / (8.314462618 * 298.15));
  };
  EXPECT_NEAR(ratio(44.289, 0.39845, 1.5361, 8.462718e-6, 6.224e-5, 446), 0.168, 0.0005);
  const auto eda = [&](double heat) {
    return ratio(46.1, 0.622, 1.306, k(2.383e4, 51.7), k(2.284e4, 46.1), heat);
  };
  const auto dab = [&](double heat) {
    return ratio(48.5, 0.697, 1.290, k(2.845e4, 52.8), k(7.145e4, 48.5), heat);
  };
  EXPECT_LT(eda(540), 0.156);
  EXPECT_GT(eda(500), 0.156);
  EXPECT_LT(dab(500), 0.191);
  EXPECT_GT(dab(460), 0.191);
}

// Two routes: the same grid by an explicit method of lines at small steps; a cup, a warm mix, a
// cold one in a warm room, a tray.
TEST(Cup, MeetsTheMethodOfLines) {
  struct Case {
    Mix mix;
    double mass, air, resin, diameter_mm;
  };
  for (const Case& at :
       {Case{{}, 150, 25, 25, 0}, Case{{60, 0.5, 1.6, 380, 0.05, 300}, 400, 20, 20, 0},
        Case{{50, 0.6, 1.5, 420, 0.3, 90}, 60, 30, 30, 0}, Case{{}, 150, 20, 35, 0},
        Case{{}, 150, 32, 12, 0}, Case{{}, 500, 25, 25, 250}}) {
    CupRun run = cup(at.mix, at.mass, at.air, at.resin);
    if (at.diameter_mm > 0.0) {
      run.fill =
          fill_of(units::grams(at.mass) / run.bulk.density, units::millimetres(at.diameter_mm));
    }
    run.grid = {8, 12};
    const CupCourse course = follow(run);
    const reference::Resin resin{at.mix.r * run.kinetics.k_per_s,
                                 at.mix.energy_kj * 1e3,
                                 run.kinetics.k_per_s,
                                 at.mix.energy_kj * 1e3,
                                 at.mix.m,
                                 at.mix.n,
                                 at.mix.heat_j_g * 1e3};
    const auto slow = reference::cup(resin, units::in_metres(run.fill.diameter),
                                     units::in_metres(run.fill.height), run.air.in_kelvin(),
                                     run.resin.in_kelvin(), run.gel_conversion, 8, 12);
    const std::string name = std::to_string(at.mass) + " g, " + std::to_string(at.resin) + " C";
    EXPECT_NEAR(units::in_seconds(*course.gel) / slow.gel_s, 1.0, 1e-3) << name;
    if (at.air == at.resin) {
      EXPECT_NEAR(units::in_seconds(*course.risen) / slow.risen_s, 1.0, 1e-3) << name;
    }
  }
}

TEST(Cup, GelIsWithinAThousandthOfFineGridsAndSteps) {
  double worst = 0.0;
  for (const Mix& mix :
       {Mix{}, Mix{55, 0.6, 1.5, 331, 0.016, 90}, Mix{55, 0.6, 1.5, 430, 0.24, 510}}) {
    for (const double mass : {50.0, 300.0}) {
      CupRun fine = cup(mix, mass, 25, 25);
      fine.grid = {32, 48};
      fine.most_kelvin_a_step = 0.5;
      const double usual = gel_min(cup(mix, mass, 25, 25)) / gel_min(fine) - 1.0;
      worst = std::max(worst, std::abs(usual));
    }
  }
  EXPECT_LT(worst, 1e-3);
  RecordProperty("worst_gel_error", std::to_string(worst));
}

// Steps after gel are longer; the peak must not mind.
TEST(Cup, PeakHoldsWithSmallSteps) {
  for (const double mass : {50.0, 150.0, 1000.0}) {
    CupRun run = cup({}, mass, 25, 25);
    const CupCourse usual = follow(run);
    run.most_kelvin_after_gel = 2.0;
    EXPECT_NEAR(usual.peak.in_kelvin(), follow(run).peak.in_kelvin(), 0.2) << mass;
  }
}

TEST(Cup, HeatMadeIsStoredOrLost) {
  for (const double mass : {30.0, 150.0, 2000.0}) {
    for (const double resin : {15.0, 25.0, 38.0}) {
      const CupCourse course = follow(cup({}, mass, 25, resin));
      EXPECT_NEAR((course.stored_kelvin + course.lost_kelvin) / course.made_kelvin, 1.0, 1e-3);
    }
  }
}

TEST(Cup, InsulatedEndsAtFullRise) {
  CupRun run = cup({}, 150, 25, 25);
  run.cooling = {0.0, 0.0, 0.0};
  const CupCourse course = follow(run);
  EXPECT_NEAR(course.peak.in_celsius(), 25.0 + 400e3 / 1900.0, 0.01);
  EXPECT_EQ(course.lost_kelvin, 0.0);
}

TEST(Cup, VanishingMassIsAFilm) {
  for (const double celsius : {10.0, 25.0, 35.0}) {
    const Mix mix;
    const double film = 60.0 * mix.film_gel_min *
                        std::exp(55e3 / 8.314462618 * (1.0 / (celsius + 273.15) - 1.0 / 298.15)) /
                        60.0;
    double last = 0.0;
    for (const double mass : {1.0, 0.01, 1e-6}) {
      CupRun run = cup(mix, mass, celsius, celsius);
      run.grid = coarse_grid;
      const double gel = gel_min(run);
      EXPECT_GT(gel, last);
      EXPECT_LT(gel, film * 1.0001);
      last = gel;
    }
    EXPECT_NEAR(last / film, 1.0, 0.01) << celsius;
  }
}

// A mix spread in a tray keeps cool; of one mass the cup as high as wide is the worst.
TEST(Cup, TrayLastsLongerThanCup) {
  CupRun run = cup({}, 300, 25, 25);
  const double in_cup = use_min(run);
  run.fill = fill_of(units::grams(300) / run.bulk.density, units::millimetres(300));
  EXPECT_NEAR(units::in_millimetres(run.fill.height), 300.0 / 1.1 / (0.25 * M_PI * 900.0) * 10.0,
              1e-9);
  EXPECT_GT(use_min(run), 1.5 * in_cup);
}

TEST(Cup, SubcriticalCupNeverRises) {
  const CupCourse course = follow(cup({55, 0.6, 1.5, 430, 0.24, 510}, 30, 10, 10));
  EXPECT_FALSE(course.risen);
  EXPECT_TRUE(course.part_gelled);
  EXPECT_TRUE(course.gel);
  EXPECT_LT(course.peak.in_celsius(), 30.0);
  EXPECT_EQ(*usable(course), *course.part_gelled);
}

// Cold resin in a warm room is warmed by the air; that is no rise of its own.
TEST(Cup, WarmedByTheAirIsNotRisen) {
  Mix slow;
  slow.film_gel_min = 5000;
  CupRun run = cup(slow, 100, 35, 10);
  const CupCourse course = follow(run);
  ASSERT_TRUE(course.part_gelled);
  EXPECT_TRUE(!course.risen || units::in_hours(*course.risen) > 3.0);
}

TEST(Cup, PouredStateIsThatOfTheTimeAsked) {
  CupRun run = cup({}, 150, 25, 25);
  run.pour_after = units::minutes(12);
  run.until = CupUntil::usable;
  const CupCourse course = follow(run);
  ASSERT_TRUE(course.poured_conversion);
  // Between a film's conversion and what the middle would need to be unusable.
  const double film = ConversionCurve(0.1, 0.6, 1.5).conversion(run.kinetics.k_per_s * 720.0);
  EXPECT_GT(*course.poured_conversion, film);
  EXPECT_LT(*course.poured_conversion, 2.0 * film);
  EXPECT_GT(course.poured_temperature->in_celsius(), 26.0);
  // It changes nothing else, but for where the steps lie.
  run.pour_after.reset();
  EXPECT_EQ(*follow(run).risen, *course.risen);
}

struct Situation {
  Mix mix;
  double mass, air, resin;
};
Situation any() {
  const auto real = [](int low, int high) {
    return 0.01 * *rc::gen::inRange(low * 100, high * 100);
  };
  Situation s;
  s.mix.r = 0.016 * std::pow(10.0, real(0, 1));
  s.mix.film_gel_min = real(60, 600);
  s.mix.heat_j_g = real(330, 450);
  s.mass = real(20, 600);
  s.air = real(0, 40);
  s.resin = real(5, 40);
  return s;
}
CupRun quick_cup(const Situation& s) {
  CupRun run = cup(s.mix, s.mass, s.air, s.resin);
  run.grid = coarse_grid;
  return run;
}
constexpr double noise = 1.0 + 5e-4;  // of the coarse grid's steps

RC_GTEST_PROP(CupProperty, HotterIsNeverSlower, ()) {
  Situation s = any();
  const double gel = gel_min(quick_cup(s)), use = use_min(quick_cup(s));
  (*rc::gen::arbitrary<bool>() ? s.air : s.resin) += *rc::gen::inRange(1, 15);
  RC_ASSERT(gel_min(quick_cup(s)) <= gel * noise);
  RC_ASSERT(use_min(quick_cup(s)) <= use * noise);
}

RC_GTEST_PROP(CupProperty, MoreMassNeverLastsLongerWhenTheResinIsAsWarmAsTheAir, ()) {
  Situation s = any();
  s.resin = s.air + *rc::gen::inRange(0, 15);
  const double gel = gel_min(quick_cup(s)), use = use_min(quick_cup(s));
  s.mass *= 1.0 + 0.1 * *rc::gen::inRange(1, 20);
  RC_ASSERT(gel_min(quick_cup(s)) <= gel * noise);
  RC_ASSERT(use_min(quick_cup(s)) <= use * noise);
}

RC_GTEST_PROP(CupProperty, MoreInOneCupNeverLastsLonger, ()) {
  Situation s = any();
  s.resin = s.air + *rc::gen::inRange(0, 15);
  const units::Length diameter = units::millimetres(*rc::gen::inRange(60, 300));
  const auto filled = [&](double mass) {
    CupRun run = quick_cup(s);
    run.fill = fill_of(units::grams(mass) / run.bulk.density, diameter);
    return run;
  };
  const double more = s.mass * (1.0 + 0.1 * *rc::gen::inRange(1, 20));
  RC_ASSERT(gel_min(filled(more)) <= gel_min(filled(s.mass)) * noise);
  RC_ASSERT(use_min(filled(more)) <= use_min(filled(s.mass)) * noise);
}

}  // namespace
}  // namespace wetout::resin
