// NOAA hourly climate normals 1981-2010 of Seattle (npm vega-datasets 3.2.1,
// data/seattle-weather-hourly-normals.csv, public domain), its header line changed as
// docs/formats/weather.md says. Not a case of ctest: tests/long/normals.sh fetches the file and
// names it in WETOUT_NORMALS.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

TEST(Normals, AreReadWithoutHumidityAndSaySo) {
  const char* const file = std::getenv("WETOUT_NORMALS");
  ASSERT_NE(file, nullptr) << "WETOUT_NORMALS names no file";
  std::ifstream in(file, std::ios::binary);
  ASSERT_TRUE(in) << "cannot read " << file;
  const Weather weather = read(std::string{std::istreambuf_iterator<char>(in), {}});
  ASSERT_EQ(weather.points.size(), 8759U);
  EXPECT_EQ(codes(weather.notices), (Codes{"weather.columns_ignored", "weather.no_humidity"}));
  EXPECT_FALSE(dew_point_history(weather));
  EXPECT_TRUE(weather.gaps.empty());
  EXPECT_EQ(weather.first(), at("2010-01-01T01:00-08:00"));
  EXPECT_EQ(weather.last(), at("2010-12-31T23:00-08:00"));
  double air = 0.0;
  double wind = 0.0;
  for (const WeatherPoint& point : weather.points) {
    air += point.air.in_celsius();
    wind += *point.wind_m_s;
  }
  // awk -F, 'NR>1 {s+=$3; w+=$4} END {print s, w}'
  EXPECT_NEAR(air, 97466.8, 1e-6);
  EXPECT_NEAR(wind, 31511.7, 1e-6);

  const Weather placed = place(weather, 2027, 2).value();
  EXPECT_EQ(placed.points.size(), 8759U * 2U + 24U);
  // The file lacks the first hour of the year.
  EXPECT_EQ(placed.gaps,
            (std::vector<Gap>{{at("2027-12-31T23:00-08:00"), at("2028-01-01T01:00-08:00")}}));
  EXPECT_EQ(codes(placed.notices),
            (Codes{"weather.columns_ignored", "weather.gap", "weather.leap_day",
                   "weather.no_humidity", "weather.placed"}));
}

}  // namespace
}  // namespace wetout::climate::test
