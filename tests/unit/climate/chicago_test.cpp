// A whole typical year: US National Renewable Energy Laboratory, TMY3, station 725300 (Chicago
// O'Hare). Single values are those of the file's own lines.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "weather_texts.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::climate::test {
namespace {

std::filesystem::path test_data() {
  if (const char* given = std::getenv("WETOUT_TEST_DATA")) return given;
  return WETOUT_TEST_DATA;
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  EXPECT_TRUE(in) << "cannot read " << file;
  return {std::istreambuf_iterator<char>(in), {}};
}

class Chicago : public testing::Test {
 protected:
  void SetUp() override {
    if (!std::filesystem::exists(test_data())) {
      GTEST_SKIP() << "no test data at " << test_data() << " (set WETOUT_TEST_DATA)";
    }
    weather_ = read(bytes_of(test_data() / "weather" / "chicago.epw"));
  }

  Weather weather_;
};

TEST_F(Chicago, HasEveryHourOfAYear) {
  EXPECT_EQ(weather_.kind, WeatherKind::epw);
  EXPECT_EQ(weather_.place, "Chicago Ohare Intl Ap, IL, USA");
  EXPECT_TRUE(weather_.typical_year);
  ASSERT_EQ(weather_.points.size(), 8760U);
  for (std::size_t i = 1; i < weather_.points.size(); ++i) {
    ASSERT_EQ(weather_.points[i].at - weather_.points[i - 1].at, std::chrono::hours(1)) << i;
    ASSERT_TRUE(weather_.points[i].dew_point && weather_.points[i].relative_humidity &&
                weather_.points[i].wind_m_s && weather_.points[i].sun_w_m2)
        << i;
  }
  EXPECT_TRUE(weather_.gaps.empty());
  EXPECT_TRUE(weather_.humidity_gaps.empty());
  EXPECT_EQ(codes(weather_.notices), Codes{});
}

TEST_F(Chicago, SumsAreThoseOfTheFile) {
  double air = 0.0;
  double dew = 0.0;
  double humidity = 0.0;
  double wind = 0.0;
  double sun = 0.0;
  double coldest = 1e9;
  double hottest = -1e9;
  for (const WeatherPoint& point : weather_.points) {
    air += point.air.in_celsius();
    dew += point.dew_point->in_celsius();
    humidity += *point.relative_humidity * 100.0;
    wind += *point.wind_m_s;
    sun += *point.sun_w_m2;
    coldest = std::min(coldest, point.air.in_celsius());
    hottest = std::max(hottest, point.air.in_celsius());
  }
  // awk -F, 'NR>8 {s+=$7; d+=$8; h+=$9; w+=$22; r+=$14} END {print s, d, h, w, r}'
  EXPECT_NEAR(air, 87494.8, 1e-6);
  EXPECT_NEAR(dew, 37764.9, 1e-6);
  EXPECT_NEAR(humidity, 616138.0, 1e-6);
  EXPECT_NEAR(wind, 39949.7, 1e-6);
  EXPECT_NEAR(sun, 1406646.0, 1e-6);
  EXPECT_NEAR(coldest, -22.8, 1e-9);
  EXPECT_NEAR(hottest, 35.0, 1e-9);
}

TEST_F(Chicago, DewPointAndHumidityOfTheFileAgree) {
  // Both are rounded, and the file's own conversion is another: within 2 points in all but cold
  // air.
  double sum = 0.0;
  for (const WeatherPoint& point : weather_.points) {
    const double computed = relative_humidity(point.air, *point.dew_point);
    const double off = std::fabs(computed - *point.relative_humidity);
    sum += off;
    EXPECT_LE(off, 0.16) << utc(point.at);
  }
  EXPECT_LT(sum / 8760.0, 0.01);
}

TEST_F(Chicago, StandsOnThisYearsDates) {
  const Weather placed = place(weather_, 2026).value();
  ASSERT_EQ(placed.points.size(), 8760U);
  EXPECT_EQ(placed.first(), at("2026-01-01T01:00-06:00"));
  EXPECT_EQ(placed.last(), at("2027-01-01T00:00-06:00"));
  // Line 9: 1986,1,1,1,0: -12.2 C, dew point -16.1 C, 73 %, 2.6 m/s.
  EXPECT_NEAR(placed.points[0].air.in_celsius(), -12.2, 1e-9);
  EXPECT_NEAR(placed.points[0].dew_point->in_celsius(), -16.1, 1e-9);
  EXPECT_DOUBLE_EQ(*placed.points[0].relative_humidity, 0.73);
  EXPECT_DOUBLE_EQ(*placed.points[0].wind_m_s, 2.6);
  // Line 4703: 1986,7,15,15,0: 31.7 C, dew point 23.3 C, 61 %, 646 Wh/m2, 7.2 m/s.
  const WeatherPoint& july = placed.points[4703 - 9];
  EXPECT_EQ(july.at, at("2026-07-15T15:00-06:00"));
  EXPECT_NEAR(july.air.in_celsius(), 31.7, 1e-9);
  EXPECT_NEAR(july.dew_point->in_celsius(), 23.3, 1e-9);
  EXPECT_DOUBLE_EQ(*july.relative_humidity, 0.61);
  EXPECT_DOUBLE_EQ(*july.sun_w_m2, 646.0);
  EXPECT_DOUBLE_EQ(*july.wind_m_s, 7.2);
  const Weather leap = place(weather_, 2028).value();
  EXPECT_EQ(leap.points.size(), 8784U);
  EXPECT_TRUE(leap.gaps.empty());
}

}  // namespace
}  // namespace wetout::climate::test
