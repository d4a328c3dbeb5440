// Weather as courses: histories, smoothing, gaps, and what comes after the end.
#include <gtest/gtest.h>
#include <rapidcheck.h>
// after gtest
#include <rapidcheck/gtest.h>

#include <cmath>

#include "weather_texts.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::climate::test {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

/// Rows one hour apart from 2026-06-14T00:00Z; an empty cell stays empty.
std::string hourly(const std::vector<std::string>& air, const std::string& humidity = "50") {
  std::string out = "time,air [C],humidity [%]\n";
  for (std::size_t i = 0; i < air.size(); ++i) {
    out += utc(at("2026-06-14T00:00Z") + hours(i)) + "," + air[i] + "," + humidity + "\n";
  }
  return out;
}

TEST(AirHistory, GoesStraightThroughTheValues) {
  const time::History history = air_history(read(hourly({"10.5", "12.5", "11.5", "11.5"})));
  EXPECT_EQ(history.points().size(), 4U);
  EXPECT_NEAR(history.at(at("2026-06-14T00:30Z")), 273.15 + 11.5, 1e-9);
  EXPECT_NEAR(history.at(at("2026-06-14T01:15Z")), 273.15 + 12.25, 1e-9);
}

TEST(AirHistory, WholeDegreesAreSmoothedThroughTheValues) {
  const Weather weather = read(hourly({"10", "10", "12", "15", "15", "14"}));
  ASSERT_TRUE(weather.whole_degree_air);
  const time::History history = air_history(weather);
  EXPECT_EQ(history.points().size(), 5U * 4U + 1U);
  for (const WeatherPoint& point : weather.points) {
    EXPECT_NEAR(history.at(point.at), point.air.in_kelvin(), 1e-9);
  }
  // Level between equal neighbours; slopes meet instead of jumping.
  EXPECT_NEAR(history.at(at("2026-06-14T00:30Z")), 283.15, 1e-12);
  EXPECT_NEAR(history.at(at("2026-06-14T03:30Z")), 288.15, 1e-12);
  EXPECT_LT(history.at(at("2026-06-14T01:15Z")), 283.15 + 0.4);
}

// [fritsch1984]: slope at a point between secants a and b of equal spacing: 2ab/(a+b), here
// 2*1*3/4 = 1.5 K/h; Hermite's cubic at the middle: mean of the ends + (slope left - right)/8.
TEST(AirHistory, SmoothingIsTheMonotoneCubicOfFritschAndButland) {
  const Weather weather = read(hourly({"10", "11", "14", "15", "15"}));
  const time::History history = air_history(weather);
  EXPECT_NEAR(history.at(at("2026-06-14T01:30Z")), 273.15 + 12.5 + (1.5 - 1.5) / 8.0, 1e-9);
  EXPECT_NEAR(history.at(at("2026-06-14T02:30Z")), 273.15 + 14.5 + (1.5 - 0.0) / 8.0, 1e-9);
}

RC_GTEST_PROP(AirHistory, SmoothingStaysBetweenNeighbours, ()) {
  const auto values = *rc::gen::container<std::vector<int>>(12, rc::gen::inRange(-30, 45));
  std::vector<std::string> cells;
  for (const int value : values) cells.push_back(std::to_string(value));
  const Weather weather = read(hourly(cells));
  const time::History history = air_history(weather);
  for (std::size_t i = 1; i < values.size(); ++i) {
    double before = values[i - 1] + 273.15;
    const bool rises = values[i] >= values[i - 1];
    for (int minute = 5; minute <= 60; minute += 5) {
      const double now = history.at(weather.points[i - 1].at + minutes(minute));
      RC_ASSERT((rises ? now - before : before - now) >= -1e-9);
      before = now;
    }
    RC_ASSERT(std::fabs(before - (values[i] + 273.15)) < 1e-9);
  }
}

TEST(AirHistory, NothingIsSmoothedAcrossAGap) {
  const Weather weather = read(hourly({"10", "11", "13", "16", "", "", "20", "20", "21", "23"}));
  ASSERT_EQ(weather.gaps.size(), 1U);
  const time::History history = air_history(weather);
  // Straight over the gap, level where the values are level after it.
  EXPECT_NEAR(history.at(at("2026-06-14T04:30Z")), 273.15 + 18.0, 1e-9);
  EXPECT_NEAR(history.at(at("2026-06-14T06:30Z")), 273.15 + 20.0, 1e-9);
  EXPECT_EQ(history.points().size(), (3U * 4U + 1U) * 2U);
}

TEST(AirHistory, ShortRunsBetweenGapsStayStraight) {
  const Weather weather = read(hourly({"10", "11", "", "", "14", "", "", "20", "20", "21", "23"}));
  ASSERT_TRUE(weather.whole_degree_air);
  ASSERT_EQ(weather.gaps.size(), 2U);
  EXPECT_NEAR(air_history(weather).at(at("2026-06-14T00:20Z")), 273.15 + 10.0 + 1.0 / 3.0, 1e-9);
}

TEST(AirHistory, MinutesInWholeDegreesNeedNoSmoothing) {
  std::string text = "time,air [C],humidity [%]\n";
  for (int i = 0; i < 10; ++i) {
    text += utc(at("2026-06-14T00:00Z") + minutes(10 * i)) + "," + std::to_string(10 + i) + ",50\n";
  }
  const Weather weather = read(text);
  EXPECT_FALSE(weather.whole_degree_air);
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(AirHistory, ALevelCourseNeedsNoSmoothing) {
  const Weather weather = read(hourly({"10", "10", "10", "10", "10"}));
  EXPECT_FALSE(weather.whole_degree_air);
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(DewPointHistory, ComesFromDewPointOrHumidity) {
  const Weather weather = read(
      "time,air [C],humidity [%],dew point [C]\n2026-06-14T00:00Z,20.5,50,\n"
      "2026-06-14T01:00Z,20.5,50,12.5\n2026-06-14T02:00Z,20.5,,11.5\n");
  const auto history = dew_point_history(weather);
  ASSERT_TRUE(history);
  const double from_humidity = dew_point(units::Temperature::celsius(20.5), 0.5).in_kelvin();
  EXPECT_NEAR(history->at(at("2026-06-14T00:00Z")), from_humidity, 1e-9);
  EXPECT_NEAR(history->at(at("2026-06-14T01:00Z")), 273.15 + 12.5, 1e-9);
  EXPECT_NEAR(history->at(at("2026-06-14T02:00Z")), 273.15 + 11.5, 1e-9);
}

TEST(DewPointHistory, IsNothingWithoutHumidity) {
  const Weather weather = read(hourly({"10.5", "12.5"}, ""));
  EXPECT_FALSE(dew_point_history(weather));
  EXPECT_EQ(weather.humidity_gaps, (std::vector<Gap>{{weather.first(), weather.last()}}));
  EXPECT_EQ(codes(weather.notices), Codes{"weather.no_humidity"});
}

// Gaps: longer than 90 min and 1.5 times the usual spacing, or longer than 6 h.

std::vector<Gap> gaps_at(const std::vector<int>& minutes_from_start) {
  std::string text = "time,air [C],humidity [%]\n";
  for (const int m : minutes_from_start) {
    text += utc(at("2026-06-14T00:00Z") + minutes(m)) + ",10.5,50\n";
  }
  return read(text).gaps;
}

Gap gap(int from_min, int until_min) {
  const time::Instant start = at("2026-06-14T00:00Z");
  return {start + minutes(from_min), start + minutes(until_min)};
}

TEST(Gaps, AreSpansLongerThanTheUsualSpacing) {
  EXPECT_EQ(gaps_at({0, 60, 120, 180, 300, 360}), (std::vector<Gap>{gap(180, 300)}));
  EXPECT_EQ(gaps_at({0, 60, 120, 210, 270}), std::vector<Gap>{});
  EXPECT_EQ(gaps_at({0, 60, 120, 211, 271}), (std::vector<Gap>{gap(120, 211)}));
  EXPECT_EQ(gaps_at({0, 10, 20, 30, 120, 130}), std::vector<Gap>{});
  EXPECT_EQ(gaps_at({0, 180, 360, 630, 810}), std::vector<Gap>{});
  EXPECT_EQ(gaps_at({0, 180, 360, 631, 811}), (std::vector<Gap>{gap(360, 631)}));
  EXPECT_EQ(gaps_at({0, 300, 600, 961, 1261}), (std::vector<Gap>{gap(600, 961)}));
}

TEST(Gaps, OfHumidityReachToTheEndsOfTheWeather) {
  const Weather weather = read(
      "time,air [C],humidity [%]\n2026-06-14T00:00Z,10.5,\n2026-06-14T01:00Z,10.5,\n"
      "2026-06-14T02:00Z,10.5,50\n2026-06-14T03:00Z,10.5,50\n2026-06-14T04:00Z,10.5,\n"
      "2026-06-14T05:00Z,10.5,\n");
  EXPECT_EQ(weather.humidity_gaps, (std::vector<Gap>{gap(0, 120), gap(180, 300)}));
  EXPECT_EQ(notice(weather, "weather.humidity_gap").value, 4.0);
}

TEST(Gaps, AndSmoothingFollowTheDefaults) {
  const std::string text = hourly({"10", "11", "", "13", "15"});
  EXPECT_EQ(read(text).gaps.size(), 1U);
  WeatherOptions options;
  options.defaults.gap_least.value = 120.0;
  options.defaults.smooth_step.value = 7.0;
  const Weather weather = read(text, options);
  EXPECT_TRUE(weather.gaps.empty());
  // 60 min in 9 parts, twice, and 120 min in 18.
  EXPECT_EQ(air_history(weather).points().size(), 2U * 9U + 18U + 1U);
  int visited = 0;
  visit(options.defaults, [&](const auto& value, std::string_view) {
    ++visited;
    EXPECT_LE(value.low, value.value);
    EXPECT_GE(value.high, value.value);
  });
  EXPECT_EQ(visited, 4);
}

// Beyond the end.

Weather two_days() {
  std::vector<std::string> air;
  for (int i = 0; i <= 48; ++i) air.push_back(std::to_string(10.5 + i % 24 + (i >= 24 ? 0.25 : 0)));
  return read(hourly(air));
}

TEST(Extended, RepeatsTheLastDay) {
  const Weather weather = two_days();
  const time::Instant until = weather.last() + hours(60);
  const auto more = extended(weather, until);
  ASSERT_TRUE(more);
  EXPECT_EQ(more->repeated_from, weather.last());
  EXPECT_EQ(more->weather.last(), until);
  EXPECT_EQ(more->weather.points.size(), weather.points.size() + 60);
  EXPECT_TRUE(more->weather.gaps.empty());
  EXPECT_EQ(codes(more->weather.notices), Codes{"weather.repeated"});
  for (std::size_t i = 0; i < weather.points.size(); ++i) {
    ASSERT_EQ(more->weather.points[i], weather.points[i]);
  }
  for (std::size_t i = weather.points.size(); i < more->weather.points.size(); ++i) {
    WeatherPoint same = more->weather.points[i - 24];
    same.at += hours(24);
    ASSERT_EQ(more->weather.points[i], same);
  }
}

TEST(Extended, ChangesNothingThatIsLongEnough) {
  const Weather weather = two_days();
  const auto more = extended(weather, weather.last());
  ASSERT_TRUE(more);
  EXPECT_EQ(more->weather.points, weather.points);
  EXPECT_EQ(more->repeated_from, weather.last());
  EXPECT_EQ(more->weather.notices, weather.notices);
}

TEST(Extended, RepeatsGapsToo) {
  std::vector<std::string> air;
  for (int i = 0; i <= 36; ++i) air.push_back(i > 30 && i < 34 ? "" : "10.5");
  const Weather weather = read(hourly(air));
  ASSERT_EQ(weather.gaps.size(), 1U);
  const auto more = extended(weather, weather.last() + hours(48));
  ASSERT_EQ(more->weather.gaps.size(), 3U);
  EXPECT_EQ(more->weather.gaps[2].from, weather.gaps[0].from + hours(48));
  EXPECT_EQ(notice(more->weather, "weather.gap").value, 12.0);
}

TEST(Extended, WantsADayAndMakesUpAYearAtMost) {
  const Weather short_one = read(hourly(std::vector<std::string>(24, "10.5")));
  EXPECT_EQ(extended(short_one, short_one.last() + hours(1)).error().front().code,
            "weather.too_short");
  const Weather just_enough = read(hourly(std::vector<std::string>(25, "10.5")));
  EXPECT_TRUE(extended(just_enough, just_enough.last() + hours(1)));
  EXPECT_EQ(extended(just_enough, just_enough.last() + hours(367 * 24)).error().front().code,
            "weather.too_far");
}

}  // namespace
}  // namespace wetout::climate::test
