#include "wetout/schedule/odds.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

#include "sample.hpp"

namespace wetout::schedule {
namespace {

using sample::film;
using sample::hours_on;

climate::Room room_of(climate::RoomKind kind) {
  climate::Room room;
  room.kind = kind;
  return room;
}

climate::Weather even(double air, double dew, int days = 3) {
  return sample::weather(
      days, [=](double) { return air; }, [=](double) { return dew; });
}

WeatherOdds odds(const climate::Weather& weather,
                 const climate::Room& room = room_of(climate::RoomKind::outdoors)) {
  return *WeatherOdds::of(weather, room, units::minutes(0.5), weather.first());
}

double normal_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

// In even air the lowest comes last: at tack-free, with the guard of that lead.
TEST(WeatherOdds, OfOneLimitAreThoseOfTheNormalDistribution) {
  for (const double above : {0.3, 0.7, 1.1, 1.6}) {
    const double guard = 0.5 + 0.25 * 23.0 / 24.0;  // tack-free at 23 h
    EXPECT_NEAR(odds(even(15.0 + above, 5)).holds(film(17), sample::rules()),
                normal_below(above / guard), 2e-3)
        << above;
  }
  const double guard = 0.5 + 0.25 * 23.0 / 24.0;
  EXPECT_NEAR(odds(even(29.5, 5)).holds(film(17), sample::rules()), normal_below(0.5 / guard),
              2e-3);
}

TEST(WeatherOdds, AreEvenAtTheLimitAndLittleBeyondIt) {
  EXPECT_NEAR(odds(even(15.0, 5)).holds(film(17), sample::rules()), 0.5, 2e-3);
  EXPECT_LT(odds(even(13.5, 5)).holds(film(17), sample::rules()), 0.05);
  EXPECT_GT(odds(even(22, 5)).holds(film(17), sample::rules()), 0.99);
}

TEST(WeatherOdds, ThermostatHoldsWhatTheForecastDoesNot) {
  climate::Room heated = room_of(climate::RoomKind::heated);
  heated.heater = climate::Heater{climate::HeaterKind::electric, units::Temperature::celsius(16)};
  const auto cold = even(15.2, 5);
  EXPECT_LT(odds(cold).holds(film(17), sample::rules()), 0.7);
  EXPECT_GT(odds(cold, heated).holds(film(17), sample::rules()), 0.99);
}

TEST(WeatherOdds, NothingHoldsInUnknownWeatherOrFoulAir) {
  climate::Weather early_end = even(22, 10);
  early_end.points.resize(22);
  EXPECT_EQ(odds(early_end).holds(film(17), sample::rules()), 0.0);
  climate::Room foul = room_of(climate::RoomKind::heated);
  foul.heater = climate::Heater{climate::HeaterKind::unvented_gas, units::Temperature::celsius(18)};
  EXPECT_EQ(odds(even(22, 10), foul).holds(film(17), sample::rules()), 0.0);
  // A core that warms too much does so whatever the forecast's error.
  EXPECT_EQ(odds(sample::fair()).holds(film(8), sample::rules()), 0.0);
}

// Second route: sixty errors at the middles of equal shares of the normal distribution, each
// tried by itself.
RC_GTEST_PROP(WeatherOdds, AgreeWithManyForecastsTriedOneByOne, ()) {
  const double mean = *rc::gen::inRange(150, 230) / 10.0;
  const double dew = mean - *rc::gen::inRange(30, 80) / 10.0;
  const auto weather = sample::weather(
      3, [=](double h) { return sample::daily(h, mean, 1.5); }, [=](double) { return dew; });
  const OpenFilm open = film(*rc::gen::inRange(10, 40));
  // Where the forecast itself breaks a limit the good side would have to be moved too.
  RC_PRE(LimitTester(sample::outdoors(weather)).verdict(open, sample::rules()).state !=
         State::refuse);
  constexpr int many = 60;
  int held = 0;
  for (int i = 0; i < many; ++i) {
    const double share = (i + 0.5) / many;
    double z = 0.0;  // Newton on the distribution
    for (int k = 0; k < 60; ++k) {
      z -= (normal_below(z) - share) * std::sqrt(2.0 * std::numbers::pi) *
           std::exp(std::min(z * z / 2.0, 8.0)) * 0.5;
    }
    RC_ASSERT(std::abs(normal_below(z) - share) < 1e-9);
    climate::ClimateDefaults moved;
    moved.guard_wide.value = std::abs(z);
    const LimitTester tester(*conditions(weather, room_of(climate::RoomKind::outdoors),
                                         units::minutes(0.5), climate::Guard::wide, weather.first(),
                                         moved));
    bool holds = true;
    for (const Tested& tested : tester.details(open, sample::rules())) {
      const bool of_this_side =
          tested.limit == Limit::core_rise || (tested.limit == Limit::warm) == (z > 0.0);
      holds = holds && !(of_this_side && tested.slack < 0.0);
    }
    held += holds ? 1 : 0;
  }
  // Half a share on each side, and 0.005 for straight lines between half guards; 0.0013 of it is
  // what lies beyond three.
  RC_ASSERT(std::abs(odds(weather).holds(open, sample::rules()) -
                     static_cast<double>(held) / many) < 1.0 / many + 0.005);
}

}  // namespace
}  // namespace wetout::schedule
