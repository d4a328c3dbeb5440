#include "wetout/climate/lag.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "air_samples.hpp"

namespace wetout::climate {
namespace {

using time::History;
using units::Temperature;

constexpr double closed_form = 1e-9;
constexpr double lag_s = 9000.0;
const units::Duration lag = units::seconds(lag_s);

Temperature k(double kelvin) { return Temperature::kelvin(kelvin); }

double seconds(const History& h) { return static_cast<double>((h.last() - h.first()).count()); }

TEST(Lag, AfterAStepIsExponential) {
  const Lagged room = Lagged::from(k(280), course({{0, 300}, {86400, 300}}), lag);
  for (const double s : {0.0, 1.0, 60.0, 3600.5, 9000.0, 40000.0, 86400.0, 200000.0}) {
    EXPECT_NEAR(room.kelvin_at_seconds(s), 300 - 20 * std::exp(-s / lag_s), closed_form) << s;
  }
  EXPECT_EQ(room.kelvin_at_seconds(-5000), 280.0);
}

TEST(Lag, BehindARampTrailsByTheLag) {
  constexpr double slope = 3.0 / 3600;
  const Lagged room =
      Lagged::from(k(280), course({{0, 280}, {7200, 286}, {86400, 280 + 86400 * slope}}), lag);
  for (const double s : {0.0, 10.0, 3600.0, 7200.0, 7201.5, 50000.0, 86400.0}) {
    const double exact = 280 + slope * (s - lag_s) + slope * lag_s * std::exp(-s / lag_s);
    EXPECT_NEAR(room.kelvin_at_seconds(s), exact, closed_form) << s;
  }
}

/// A sine of the given period as straight lines between points `step` apart.
History sine(int period, int periods, int step) {
  std::vector<std::pair<int, double>> points;
  for (int s = 0; s <= period * periods; s += step) {
    points.emplace_back(s, 290 + 8 * std::sin(turn * s / period));
  }
  return course(points);
}

// The same lag behind a sine, in closed form: Fourier's steady part and what is left of the start.
double behind_sine(double s, double period, double start) {
  const double w = turn / period, wt = w * lag_s;
  const auto steady = [&](double t) {
    return 290 + 8 * (std::sin(w * t) - wt * std::cos(w * t)) / (1 + wt * wt);
  };
  return steady(s) + (start - steady(0)) * std::exp(-s / lag_s);
}

// Straight lines between points of a sine are not the sine: between points h apart they stay
// (w h)^2 / 12 of it inside on the whole, so the answer is extrapolated from two spacings.
TEST(Lag, BehindASineIsDampedAndLate) {
  constexpr int period = 86400;
  const Lagged fine = Lagged::from(k(285), sine(period, 2, 10), lag);
  const Lagged coarse = Lagged::from(k(285), sine(period, 2, 20), lag);
  for (const double s : {20.0, 3600.0, 20000.0, 43200.0, 86400.0, 100000.0, 172800.0}) {
    const double a = fine.kelvin_at_seconds(s), b = coarse.kelvin_at_seconds(s);
    EXPECT_NEAR(a + (a - b) / 3, behind_sine(s, period, 285), closed_form) << s;
  }
}

// The part of a sine that straight lines leave out is (w h)^2 / 12 of its amplitude.
TEST(Lag, BehindHourlyPointsOfASineIsOffByWhatTheLinesLeaveOut) {
  constexpr int period = 86400, h = 3600;
  const Lagged hourly = Lagged::from(k(285), sine(period, 3, h), lag);
  const double left_out = 8 * std::pow(turn / period * h, 2) / 12;
  double most = 0;
  for (int s = 2 * period; s <= 3 * period; s += 600) {
    most = std::max(most, std::abs(hourly.kelvin_at_seconds(s) - behind_sine(s, period, 285)));
  }
  EXPECT_LT(most, left_out);
  EXPECT_GT(most, 0.5 * left_out);
}

TEST(Lag, OfZeroIsTheAirItself) {
  const History air = hourly_air(3, 15, 8, 5);
  const Lagged none = Lagged::settled(air, units::Duration{});
  for (double s = 0; s <= 3 * 86400; s += 777) {
    EXPECT_NEAR(none.kelvin_at_seconds(s), air.at_seconds(s), 1e-12 * 300) << s;
  }
  const Lagged held = Lagged::settled(air, units::Duration{}, Temperature::celsius(12));
  for (double s = 0; s <= 3 * 86400; s += 777) {
    EXPECT_NEAR(held.kelvin_at_seconds(s), std::max(air.at_seconds(s), 285.15), 1e-12 * 300) << s;
  }
}

TEST(Lag, BeyondTheLastPointSettlesToIt) {
  const Lagged room = Lagged::from(k(300), course({{0, 300}, {3600, 280}}), lag);
  const double end = room.kelvin_at_seconds(3600);
  EXPECT_NEAR(room.kelvin_at_seconds(3600 + 20000), 280 + (end - 280) * std::exp(-20000 / lag_s),
              closed_form);
  EXPECT_NEAR(room.kelvin_at_seconds(1e7), 280, closed_form);
}

TEST(Lag, BehindOneValueForEverIsThatValue) {
  const Lagged room = Lagged::settled(History::constant(291), lag);
  EXPECT_EQ(room.at(time::Instant{} + std::chrono::hours(5)), k(291));
  EXPECT_EQ(room.sampled().points().size(), 1U);
}

/// The course held at a floor by the smallest of steps: exact between steps, the floor put in
/// after each.
std::vector<double> by_steps(const History& air, double tau, double floor, double start,
                             double step) {
  std::vector<double> out{start};
  const double kept = std::exp(-step / tau);
  for (double s = 0; s < seconds(air) - 0.5 * step; s += step) {
    const double x = air.at_seconds(s), slope = (air.at_seconds(s + step) - x) / step;
    const double level = x - slope * tau;
    out.push_back(std::max(floor, level + slope * step + (out.back() - level) * kept));
  }
  return out;
}

RC_GTEST_PROP(HeatedRoom, FollowsItsThermostatAsSmallStepsDo, ()) {
  const History air = hourly_air(1, *rc::gen::inRange(-5, 35), *rc::gen::inRange(0, 12),
                                 *rc::gen::arbitrary<unsigned>());
  const double tau = between(600, 40000), floor = 273.15 + *rc::gen::inRange(-5, 30);
  const double start = std::max(floor, 273.15 + *rc::gen::inRange(-5, 35));
  const Lagged room = Lagged::from(k(start), air, units::seconds(tau), k(floor));
  constexpr double step = 4;
  const std::vector<double> steps = by_steps(air, tau, floor, start, step);
  // A step that crosses the floor is off by what the air can do in it.
  for (std::size_t i = 0; i < steps.size(); i += 37) {
    RC_ASSERT(std::abs(room.kelvin_at_seconds(step * static_cast<double>(i)) - steps[i]) < 2e-4);
  }
}

// The switches in closed form: cold air from the start, then a ramp up through the minimum.
TEST(HeatedRoom, SwitchesAtTheExactInstant) {
  constexpr double minimum = 291.15;
  const History air = course({{0, 281.15}, {36000, 281.15}, {43200, 301.15}, {50400, 301.15}});
  const Lagged room = Lagged::from(k(295.15), air, lag, k(minimum));
  // 281.15 + 14 exp(-s / lag) = 291.15
  const double held_s = lag_s * std::log(14.0 / 10.0);
  constexpr double slope = 20.0 / 7200;
  const double freed_s = 36000 + 10.0 / slope;
  ASSERT_EQ(room.pieces().size(), 6U);
  EXPECT_NEAR(room.pieces()[1].start_s, held_s, 1e-6);
  EXPECT_EQ(room.pieces()[2].start_s, 36000) << "held over the bend";
  EXPECT_NEAR(room.pieces()[3].start_s, freed_s, 1e-6);
  EXPECT_NEAR(room.kelvin_at_seconds(held_s + 0.5), minimum, closed_form);
  EXPECT_NEAR(room.kelvin_at_seconds(freed_s), minimum, closed_form);
  const double s = 43000 - freed_s;
  EXPECT_NEAR(room.kelvin_at_seconds(43000),
              minimum + slope * (s - lag_s) + slope * lag_s * std::exp(-s / lag_s), closed_form);
}

RC_GTEST_PROP(HeatedRoom, IsNeverBelowItsMinimumNorBelowTheUnheated, ()) {
  const History air = random_air();
  const auto tau = units::seconds(between(0, 40000));
  const Temperature minimum = Temperature::celsius(*rc::gen::inRange(-5, 30));
  const Lagged heated = Lagged::settled(air, tau, minimum);
  const Lagged unheated = Lagged::settled(air, tau);
  for (double s = 0; s <= seconds(air); s += 1800) {
    RC_ASSERT(heated.kelvin_at_seconds(s) >= minimum.in_kelvin());
    RC_ASSERT(heated.kelvin_at_seconds(s) >= unheated.kelvin_at_seconds(s) - 1e-9);
  }
}

RC_GTEST_PROP(HeatedRoom, BelowTheColdestAirIsUnheated, ()) {
  const History air = random_air();
  const auto tau = units::seconds(between(0, 40000));
  const Lagged heated = Lagged::settled(air, tau, k(air.lowest() - 0.5));
  const Lagged unheated = Lagged::settled(air, tau);
  for (double s = 0; s <= seconds(air); s += 1800) {
    RC_ASSERT(std::abs(heated.kelvin_at_seconds(s) - unheated.kelvin_at_seconds(s)) < 1e-9);
  }
}

RC_GTEST_PROP(Lag, StaysWithinTheAir, ()) {
  const History air = random_air();
  const Lagged room = Lagged::settled(air, units::seconds(between(0, 86400)));
  for (double s = 0; s <= seconds(air); s += 900) {
    RC_ASSERT(room.kelvin_at_seconds(s) >= air.lowest() - 1e-9);
    RC_ASSERT(room.kelvin_at_seconds(s) <= air.highest() + 1e-9);
  }
}

/// A day that ends as it begins, five times: settled from the first.
History same_days(unsigned seed) {
  const History day = hourly_air(1, 18, 9, seed);
  std::vector<std::pair<int, double>> points;
  for (int d = 0; d < 5; ++d) {
    for (int h = 0; h < 24; ++h) {
      points.emplace_back(86400 * d + 3600 * h, day.points()[static_cast<std::size_t>(h)].value);
    }
  }
  points.emplace_back(5 * 86400, day.points()[0].value);
  return course(points);
}

RC_GTEST_PROP(Lag, MoreOfItIsNeverMoreSwing, ()) {
  const History air = same_days(*rc::gen::arbitrary<unsigned>());
  const double tau = between(0, 40000);
  const auto swing = [&](double t) {
    const History drawn = Lagged::settled(air, units::seconds(t)).sampled();
    return drawn.highest() - drawn.lowest();
  };
  // Each end of both is drawn to within a thousandth.
  RC_ASSERT(swing(tau * between(1.0, 3.0)) <= swing(tau) + 4.0 * sampling_tolerance.in_kelvin());
}

RC_GTEST_PROP(SettledStart, OfDaysThatRepeatIsWhereEachDayBegins, ()) {
  const History air = same_days(*rc::gen::arbitrary<unsigned>());
  const auto tau = units::seconds(between(1, 7 * 86400));
  const bool heated = *rc::gen::arbitrary<bool>();
  const std::optional<Temperature> floor =
      heated ? std::optional(Temperature::celsius(*rc::gen::inRange(0, 30))) : std::nullopt;
  const Lagged room = Lagged::settled(air, tau, floor);
  for (int day = 1; day <= 5; ++day) {
    RC_ASSERT(std::abs(room.kelvin_at_seconds(86400.0 * day) - room.kelvin_at_seconds(0)) < 1e-7);
  }
}

TEST(SettledStart, MakesNoJumpOutOfAWarmingDay) {
  // 6 K warmer from one midnight to the next: a short lag must start at the air, behind the ramp.
  const History air = course({{0, 283}, {43200, 290}, {86400, 289}, {172800, 295}});
  EXPECT_NEAR(settled_start(air, units::minutes(2)).in_kelvin(), 283.0, 0.05);
  EXPECT_EQ(settled_start(air, units::Duration{}), k(283));
}

TEST(SettledStart, OfLessThanADayIsTheFirstValue) {
  const History air = course({{0, 283}, {43200, 290}});
  EXPECT_EQ(settled_start(air, lag), k(283));
  EXPECT_EQ(settled_start(air, lag, k(285)), k(285));
}

RC_GTEST_PROP(Samples, StayWithinTheToleranceOfTheExactCourse, ()) {
  const History air = random_air();
  const auto tau = units::seconds(between(60, 40000));
  const bool heated = *rc::gen::arbitrary<bool>();
  const std::optional<Temperature> floor =
      heated ? std::optional(Temperature::celsius(*rc::gen::inRange(-5, 30))) : std::nullopt;
  const double tolerance = *rc::gen::element(1e-3, 1e-2, 1e-1);
  const Lagged room = Lagged::settled(air, tau, floor);
  const History samples = room.sampled(units::TempDelta::kelvin(tolerance));
  RC_ASSERT(samples.first() == air.first() && samples.last() == air.last());
  for (double s = 0; s <= seconds(air); s += 97.3) {
    RC_ASSERT(std::abs(samples.at_seconds(s) - room.kelvin_at_seconds(s)) <= tolerance);
  }
  for (const auto& point : samples.points()) {
    RC_ASSERT(std::abs(point.value - room.at(point.at).in_kelvin()) < 1e-10);
  }
}

TEST(Samples, OfTwoWeeksAreFewEnough) {
  const History air = hourly_air(14, 18, 9, 3);
  const std::size_t fine = Lagged::settled(air, lag).sampled().points().size();
  const std::size_t coarse =
      Lagged::settled(air, lag).sampled(units::TempDelta::kelvin(0.01)).points().size();
  EXPECT_LT(fine, 4032U) << "a 5-minute grid";
  EXPECT_LT(coarse, fine / 2);
}

RC_GTEST_PROP(LowerOf, IsTheLowerAtEveryInstant, ()) {
  const History a = random_air(), b = random_air();
  const History low = lower_of(a, b);
  const double end = std::max(seconds(a), seconds(b));
  RC_ASSERT(seconds(low) == end);
  for (double s = 0; s <= end; s += 131.7) {
    const double exact = std::min(a.at_seconds(s), b.at_seconds(s));
    // Between the two whole seconds of a crossing: what both can move in a second.
    RC_ASSERT(std::abs(low.at_seconds(s) - exact) < 5e-3);
    RC_ASSERT(low.at_seconds(s) <= exact + 1e-9);
  }
}

}  // namespace
}  // namespace wetout::climate
