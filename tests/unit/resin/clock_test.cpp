#include "wetout/resin/clock.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

#include "random_air.hpp"
#include "wetout/resin/arrhenius.hpp"

namespace wetout::resin {
namespace {

using units::Temperature;

// Adaptive quadrature of the definition, kink by kink.
double by_quadrature(double energy, Temperature sheet, const time::History& air, double from,
                     double until) {
  const auto speed = [&](double t) {
    return 1.0 / arrhenius_factor(energy * 1e-3, sheet, Temperature::kelvin(air.at_seconds(t)));
  };
  double sum = 0.0;
  double a = from;
  for (const time::HistoryPoint& point : air.points()) {
    const double b = static_cast<double>((point.at - air.first()).count());
    if (b <= a) continue;
    if (b >= until) break;
    sum += boost::math::quadrature::gauss_kronrod<double, 31>::integrate(speed, a, b, 15, 1e-13);
    a = b;
  }
  return sum +
         boost::math::quadrature::gauss_kronrod<double, 31>::integrate(speed, a, until, 15, 1e-13);
}

RC_GTEST_PROP(Clock, AgesMeetAdaptiveQuadratureToANinthDigit, ()) {
  const auto air = random_air();
  const double energy = *rc::gen::inRange(35000, 80000);
  const Clock clock(energy, Temperature::celsius(25), air);
  const double last = static_cast<double>((air.last() - air.first()).count());
  const double from = last * *rc::gen::inRange(-100, 1000) / 1000.0;
  const double until = from + last * *rc::gen::inRange(1, 1200) / 1000.0;
  const double age = clock.age(until) - clock.age(from);
  const double expected = by_quadrature(energy, Temperature::celsius(25), air, from, until);
  RC_ASSERT(std::abs(age / expected - 1.0) < 1e-9);
}

RC_GTEST_PROP(Clock, WhenIsTheInverseOfAge, ()) {
  const auto air = random_air();
  const Clock clock(55e3, Temperature::celsius(25), air);
  const double last = static_cast<double>((air.last() - air.first()).count());
  Clock::Place there = 0, back = 0;
  double time = -0.2 * last;
  for (int i = 0; i < 50; ++i) {
    time += last * *rc::gen::inRange(0, 60) / 1000.0;
    const double age = clock.age(time, there);
    RC_ASSERT(std::abs(clock.when(age, back) - time) < 1e-9 * (std::abs(time) + last));
    RC_ASSERT(std::abs(clock.age(time) - age) < 1e-12 * (1.0 + std::abs(age)));
  }
}

TEST(Clock, ConstantAirIsTheArrheniusFactor) {
  const Clock clock(52e3, Temperature::celsius(25), time::History::constant(288.15));
  const double factor = arrhenius_factor(52, Temperature::celsius(25), Temperature::celsius(15));
  EXPECT_NEAR(clock.age(factor * 3600.0) - clock.age(0.0), 3600.0, 1e-8);
  EXPECT_NEAR(clock.when(3600.0), factor * 3600.0, 1e-8);
}

TEST(Clock, AtTheSheetsTemperatureAgeIsTime) {
  const Clock clock(52e3, Temperature::celsius(25), time::History::constant(298.15));
  EXPECT_DOUBLE_EQ(clock.age(86400.0), 86400.0);
}

// A step of 40 K in an hour is divided into panels.
TEST(Clock, SteepAirIsStillExact) {
  const auto air = *time::History::of({{time::Instant{}, 273.15},
                                       {time::Instant{} + std::chrono::hours(1), 313.15},
                                       {time::Instant{} + std::chrono::hours(2), 274.15}});
  const Clock clock(80e3, Temperature::celsius(25), air);
  EXPECT_NEAR(clock.age(7000.0) / by_quadrature(80e3, Temperature::celsius(25), air, 0.0, 7000.0),
              1.0, 1e-11);
}

}  // namespace
}  // namespace wetout::resin
