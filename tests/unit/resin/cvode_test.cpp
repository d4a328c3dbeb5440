// Against SUNDIALS: 500 random paths within 1e-5 of conversion, and the cup on the same grid.
#include <gtest/gtest.h>

#include <random>

#include "cvode_reference.hpp"
#include "random_air.hpp"
#include "sheets.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {
namespace {

TEST(Cvode, FiveHundredPathsThroughWeather) {
  std::vector<Cure> cures;
  for (const Product& p : {sheets::quick(), sheets::medium(), sheets::slow(), sheets::tropical()}) {
    cures.push_back(calibrate(p, {})->cure);
  }
  std::mt19937 random(20240611);  // the same numbers everywhere
  const auto real = [&](double low, double high) {
    return low + (high - low) * std::uniform_real_distribution<double>()(random);
  };
  double worst_conversion = 0.0, worst_tg = 0.0;
  for (int i = 0; i < 500; ++i) {
    const Cure& cure = cures[static_cast<std::size_t>(i) % cures.size()];
    const auto air = air_of_days(10, real(3, 35), real(0, 9), real(0, 6.28), real(0, 3),
                                 static_cast<unsigned>(random()));
    const double start = 60.0 * std::floor(real(0, 4000));
    std::vector<double> after;
    for (double t = real(600, 7200); t < 7 * 86400.0; t *= real(1.3, 2.5)) after.push_back(t);
    std::vector<double> at = after;
    for (double& t : at) t += start;
    const auto expected = cvode::path(cure, air, start, at, 1e-10);
    const auto states = Film(cure, air).states(
        time::Instant{} + std::chrono::seconds(static_cast<long>(start)), after);
    for (std::size_t j = 0; j < after.size(); ++j) {
      worst_conversion = std::max(worst_conversion, std::abs(states[j].conversion - expected[j]));
      worst_tg = std::max(
          worst_tg,
          std::abs((states[j].tg - glass_transition(cure.glass, expected[j])).in_kelvin()));
    }
  }
  std::printf("[ cvode ] worst conversion %.2g, worst Tg %.2g K\n", worst_conversion, worst_tg);
  EXPECT_LT(worst_conversion, 1e-5);
  EXPECT_LT(worst_tg, 5e-3);
}

TEST(Cvode, CupOnTheSameGrid) {
  for (const Product& p : {sheets::quick(), sheets::medium(), sheets::tropical()}) {
    const Cure cure = calibrate(p, {})->cure;
    struct Case {
      double mass, air, resin;
      Grid grid;
    };
    for (const Case& at :
         {Case{150, 25, 25, {16, 24}}, Case{400, 18, 26, {8, 12}}, Case{60, 32, 24, {8, 12}}}) {
      const auto volume = units::grams(at.mass) / cure.bulk.density;
      CupRun run = cup_run(cure, fill_of(volume), units::Temperature::celsius(at.air),
                           units::Temperature::celsius(at.resin));
      run.grid = at.grid;
      const CupCourse course = follow(run);
      const auto expected = cvode::cup(run, 1e-7, true);
      const double gel = units::in_seconds(*course.gel) / expected.gel_s - 1.0;
      const double peak = course.peak.in_kelvin() - expected.peak_kelvin;
      std::printf("[ cvode ] %s %g g: gel %+.4f %%, peak %+.2f K\n", p.id.c_str(), at.mass,
                  100.0 * gel, peak);
      EXPECT_LT(std::abs(gel), 1e-3) << p.id << " " << at.mass;
      EXPECT_LT(std::abs(peak), 0.3) << p.id << " " << at.mass;
    }
  }
}

}  // namespace
}  // namespace wetout::resin
