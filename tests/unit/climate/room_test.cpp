#include "wetout/climate/room.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <limits>

#include "air_samples.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::climate {
namespace {

using std::chrono::seconds;
using time::History;
using time::Instant;
using units::Temperature;

Temperature c(double celsius) { return Temperature::celsius(celsius); }

Room heated(double minimum_c, HeaterKind kind = HeaterKind::electric) {
  Room room;
  room.kind = RoomKind::heated;
  room.heater = Heater{kind, c(minimum_c)};
  return room;
}

RoomAir air_of(const Room& room, const History& air, std::optional<History> dew = std::nullopt) {
  auto result = RoomAir::of(room, air, std::move(dew));
  EXPECT_TRUE(result.has_value());
  return std::move(*result);
}

/// A dew point some way below the air of each hour, never above it.
History dew_below(const History& air, double below_k, unsigned seed) {
  std::vector<time::HistoryPoint> points(air.points().begin(), air.points().end());
  unsigned state = seed | 1U;
  for (auto& point : points) {
    state = state * 1664525U + 1013904223U;
    point.value -= below_k * static_cast<double>(state >> 8U) / (1U << 24U);
  }
  return *History::of(std::move(points));
}

TEST(Room, OutdoorsIsTheOutdoorAir) {
  Room room;
  room.kind = RoomKind::outdoors;
  room.lag = units::hours(2.5);
  room.humidity_max = 0.3;
  const History air = hourly_air(2, 15, 8, 1), dew = dew_below(air, 6, 2);
  const RoomAir shade = air_of(room, air, dew);
  for (int s = 0; s <= 2 * 86400; s += 1234) {
    const Instant at = air.first() + seconds(s);
    EXPECT_NEAR(shade.air(at).in_kelvin(), air.at(at), 1e-9);
    EXPECT_NEAR(shade.dew_point(at)->in_kelvin(), dew.at(at), 1e-9);
  }
}

TEST(Room, WithoutALagTakesTheDefault) {
  EXPECT_EQ(room_lag(Room{}), units::hours(2.5));
  Room quick;
  quick.lag = units::hours(1);
  EXPECT_EQ(room_lag(quick), units::hours(1));
  ClimateDefaults slow;
  slow.room_lag.value = 5;
  EXPECT_EQ(room_lag(Room{}, slow), units::hours(5));
}

TEST(Room, UnheatedIgnoresAHeater) {
  Room cold = heated(25);
  cold.kind = RoomKind::unheated;
  const History air = hourly_air(3, 5, 4, 7);
  const RoomAir a = air_of(cold, air), b = air_of(Room{}, air);
  EXPECT_EQ(a.air(air.first() + std::chrono::hours(40)),
            b.air(air.first() + std::chrono::hours(40)));
}

TEST(Room, HeatedIsHeldAtItsMinimum) {
  const History air = hourly_air(3, 5, 4, 7);
  const RoomAir room = air_of(heated(18), air);
  EXPECT_EQ(room.air(air.first() + std::chrono::hours(40)), c(18));
  const History samples = room.air_history();
  EXPECT_EQ(samples.lowest(), c(18).in_kelvin());
  EXPECT_EQ(samples.highest(), c(18).in_kelvin());
}

TEST(Room, OnlyUnventedGasFoulsTheAir) {
  EXPECT_TRUE(fouls_the_air(heated(18, HeaterKind::unvented_gas)));
  EXPECT_FALSE(fouls_the_air(heated(18, HeaterKind::vented)));
  EXPECT_FALSE(fouls_the_air(heated(18)));
  Room off = heated(18, HeaterKind::unvented_gas);
  off.kind = RoomKind::unheated;
  EXPECT_FALSE(fouls_the_air(off)) << "it stands there and is off";
}

TEST(Room, WithoutHumidityOutdoorsHasNoneInside) {
  const RoomAir room = air_of(Room{}, hourly_air(1, 15, 8, 1));
  EXPECT_FALSE(room.dew_point(Instant{}));
  EXPECT_FALSE(room.humidity(Instant{}));
  EXPECT_FALSE(room.dew_point_history());
}

TEST(Room, WarmedAirKeepsItsDewPointAndIsDrier) {
  // 5 C and 90 % outdoors, heated to 20 C: the dew point stays, the humidity falls to about 33 %.
  const Temperature dew = dew_point(c(5), 0.9);
  const RoomAir room =
      air_of(heated(20), History::constant(278.15), History::constant(dew.in_kelvin()));
  EXPECT_EQ(room.dew_point(Instant{}), dew);
  EXPECT_NEAR(*room.humidity(Instant{}),
              0.9 * saturation_pressure_pa(c(5)) / saturation_pressure_pa(c(20)), 1e-12);
}

TEST(Room, ColderThanTheOutdoorDewPointIsSaturated) {
  // A cold garage on the morning of a warm, damp front.
  const History air = course({{0, 278}, {86400, 278}, {93600, 292}, {172800, 292}});
  const History dew = course({{0, 275}, {86400, 275}, {93600, 290}, {172800, 290}});
  const RoomAir room = air_of(Room{}, air, dew);
  const Instant front = Instant{} + seconds(93600);
  EXPECT_LT(room.air(front).in_kelvin(), 290);
  EXPECT_EQ(room.dew_point(front), room.air(front));
  EXPECT_EQ(room.humidity(front), 1.0);
}

RC_GTEST_PROP(Room, DewPointIsNeverAboveItsAir, ()) {
  const History air = random_air();
  const History dew = dew_below(air, *rc::gen::inRange(0, 12), *rc::gen::arbitrary<unsigned>());
  Room room = *rc::gen::arbitrary<bool>() ? heated(*rc::gen::inRange(5, 25)) : Room{};
  if (*rc::gen::arbitrary<bool>()) room.humidity_max = between(0.2, 1.0);
  const RoomAir inside = air_of(room, air, dew);
  for (int s = 0; Instant{} + seconds(s) <= air.last(); s += 1777) {
    const Instant at = Instant{} + seconds(s);
    RC_ASSERT(*inside.dew_point(at) <= inside.air(at));
    RC_ASSERT(*inside.humidity(at) <= 1.0);
  }
}

RC_GTEST_PROP(Dehumidifier, NeverRaisesHumidityAndHoldsItsLimit, ()) {
  const History air = random_air();
  const History dew = dew_below(air, *rc::gen::inRange(0, 12), *rc::gen::arbitrary<unsigned>());
  Room room = *rc::gen::arbitrary<bool>() ? heated(*rc::gen::inRange(5, 25)) : Room{};
  const RoomAir without = air_of(room, air, dew);
  room.humidity_max = between(0.2, 1.0);
  const RoomAir with = air_of(room, air, dew);
  for (int s = 0; Instant{} + seconds(s) <= air.last(); s += 1777) {
    const Instant at = Instant{} + seconds(s);
    RC_ASSERT(*with.dew_point(at) <= *without.dew_point(at));
    RC_ASSERT(*with.humidity(at) <= *without.humidity(at));
    RC_ASSERT(*with.humidity(at) <= *room.humidity_max + 1e-12);
    RC_ASSERT(with.air(at) == without.air(at));
  }
}

RC_GTEST_PROP(Room, HistoriesStayWithinTheirTolerance, ()) {
  const History air = random_air();
  const History dew = dew_below(air, *rc::gen::inRange(0, 12), *rc::gen::arbitrary<unsigned>());
  Room room = *rc::gen::arbitrary<bool>() ? heated(*rc::gen::inRange(5, 25)) : Room{};
  room.lag = units::minutes(between(30, 600));
  if (*rc::gen::arbitrary<bool>()) room.humidity_max = between(0.2, 1.0);
  const double tolerance = *rc::gen::element(1e-3, 1e-2);
  const RoomAir inside = air_of(room, air, dew);
  const History a = inside.air_history(units::TempDelta::kelvin(tolerance));
  const History d = *inside.dew_point_history(units::TempDelta::kelvin(tolerance));
  for (int s = 0; Instant{} + seconds(s) <= air.last(); s += 311) {
    const Instant at = Instant{} + seconds(s);
    RC_ASSERT(std::abs(a.at(at) - inside.air(at).in_kelvin()) <= tolerance);
    RC_ASSERT(std::abs(d.at(at) - inside.dew_point(at)->in_kelvin()) <= tolerance + 1e-4);
  }
}

std::string code_of(const Room& room) {
  const auto result = RoomAir::of(room, History::constant(290), std::nullopt);
  return result ? "none" : result.error().front().code;
}

TEST(Room, RefusesWhatCannotBe) {
  Room room;
  EXPECT_EQ(code_of(room), "none");
  room.kind = RoomKind::heated;
  EXPECT_EQ(code_of(room), "room.no_minimum");
  EXPECT_EQ(code_of(heated(61)), "room.minimum");
  EXPECT_EQ(code_of(heated(-21)), "room.minimum");
  room = Room{};
  room.lag = units::days(8);
  EXPECT_EQ(code_of(room), "room.lag");
  room.lag = units::seconds(-1);
  EXPECT_EQ(code_of(room), "room.lag");
  room.lag = units::seconds(std::numeric_limits<double>::quiet_NaN());
  EXPECT_EQ(code_of(room), "room.lag");
  room = Room{};
  room.humidity_max = 0.0;
  EXPECT_EQ(code_of(room), "room.humidity");
  room.humidity_max = 55.0;
  EXPECT_EQ(code_of(room), "room.humidity") << "a percentage is no share";
}

}  // namespace
}  // namespace wetout::climate
