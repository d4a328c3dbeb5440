// Hourly JSON with one array for each quantity, its shape and its traps.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

struct Parts {
  std::string offset = R"("utc_offset_seconds":-25200,)";
  std::string units =
      R"("time":"iso8601","temperature_2m":"°C","relative_humidity_2m":"%","dew_point_2m":"°C",)"
      R"("precipitation":"mm","wind_speed_10m":"km/h")";
  std::string time = R"(["2026-05-01T00:00","2026-05-01T01:00","2026-05-01T02:00"])";
  std::string arrays =
      R"("temperature_2m":[12.5,12.1,11.8],"relative_humidity_2m":[80,82,85],)"
      R"("dew_point_2m":[9.1,9.1,9.3],"precipitation":[0,0,0.1],"wind_speed_10m":[18,3.6,0])";
};

std::string document(const Parts& p = {}) {
  return R"({"latitude":36.0,"longitude":-121.0,"generationtime_ms":0.1,)" + p.offset +
         R"("timezone":"America/Los_Angeles","timezone_abbreviation":"PDT","elevation":10.0,)"
         R"("hourly_units":{)" +
         p.units + R"(},"hourly":{"time":)" + p.time + "," + p.arrays + "}}";
}

TEST(HourlyArrays, ThePublishedShapeIsRead) {
  const Weather weather = read(document());
  EXPECT_EQ(weather.kind, WeatherKind::hourly_arrays);
  ASSERT_EQ(weather.points.size(), 3U);
  EXPECT_EQ(weather.day_offset, std::chrono::hours(-7));
  const WeatherPoint& point = weather.points[0];
  EXPECT_EQ(utc(point.at), "2026-05-01T07:00:00Z");
  EXPECT_NEAR(point.air.in_celsius(), 12.5, 1e-12);
  EXPECT_NEAR(point.dew_point->in_celsius(), 9.1, 1e-12);
  EXPECT_DOUBLE_EQ(*point.relative_humidity, 0.80);
  EXPECT_DOUBLE_EQ(*point.wind_m_s, 5.0);
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(HourlyArrays, OlderSpellingsAndOtherUnitsAreRead) {
  const Weather weather = read(
      document({.units = R"("temperature_2m":"°F","relativehumidity_2m":"%","dewpoint_2m":"°F",)"
                         R"("windspeed_10m":"mp/h","shortwave_radiation":"W/m²")",
                .arrays = R"("temperature_2m":[68,69.5,68],"relativehumidity_2m":[61,60,59],)"
                          R"("dewpoint_2m":[54,54,53.5],"windspeed_10m":[10,10,10],)"
                          R"("shortwave_radiation":[0,1,2])"}));
  const WeatherPoint& point = weather.points[0];
  EXPECT_NEAR(point.air.in_celsius(), 20.0, 1e-9);
  EXPECT_NEAR(point.dew_point->in_fahrenheit(), 54.0, 1e-9);
  EXPECT_DOUBLE_EQ(*point.relative_humidity, 0.61);
  EXPECT_DOUBLE_EQ(*point.wind_m_s, 10 * 0.44704);
  EXPECT_DOUBLE_EQ(*weather.points[2].sun_w_m2, 2.0);
}

TEST(HourlyArrays, TimesAreOfTheOffset) {
  const Weather utc_times = read(document({.offset = R"("utc_offset_seconds":0,)"}));
  EXPECT_EQ(utc(utc_times.first()), "2026-05-01T00:00:00Z");
  const Weather nepal = read(document({.offset = R"("utc_offset_seconds":20700,)"}));
  EXPECT_EQ(utc(nepal.first()), "2026-04-30T18:15:00Z");
  const Weather own = read(
      document({.offset = "",
                .time = R"(["2026-05-01T00:00Z","2026-05-01T01:00Z","2026-05-01T04:00+02:00"])"}));
  EXPECT_EQ(utc(own.last()), "2026-05-01T02:00:00Z");
}

TEST(HourlyArrays, UnixTimesAreUtc) {
  const Weather weather = read(document({.units = R"("time":"unixtime","temperature_2m":"°C")",
                                         .time = "[1777593600,1777597200,1777600800]",
                                         .arrays = R"("temperature_2m":[12.5,12.1,11.8])"}));
  EXPECT_EQ(utc(weather.first()), "2026-05-01T00:00:00Z");
}

TEST(HourlyArrays, TheOffsetHoldsThroughAChangeOfClocks) {
  const Weather weather =
      read(document({.offset = R"("utc_offset_seconds":-28800,)",
                     .time = R"(["2026-03-08T01:00","2026-03-08T02:00","2026-03-08T03:00"])"}));
  EXPECT_EQ(weather.points[1].at, at("2026-03-08T02:00-08:00"));
  EXPECT_TRUE(weather.gaps.empty());
}

TEST(HourlyArrays, NullsAreMissing) {
  const Weather weather = read(document(
      {.arrays = R"("temperature_2m":[12.5,null,11.8],"relative_humidity_2m":[80,82,null])"}));
  ASSERT_EQ(weather.points.size(), 2U);
  EXPECT_FALSE(weather.points[1].relative_humidity);
  EXPECT_EQ(codes(weather.notices),
            (Codes{"weather.gap", "weather.humidity_gap", "weather.missing_air"}));
}

struct Bad {
  Parts parts;
  std::string_view code;
  std::string_view key;
  std::string_view found;
};

TEST(HourlyArrays, WhatDoesNotFitIsRefusedWithItsPath) {
  const std::vector<Bad> cases = {
      {{.offset = ""}, "weather.no_zone", "hourly.time[0]", "2026-05-01T00:00"},
      {{.offset = R"("utc_offset_seconds":"-7",)"}, "weather.bad_zone", "utc_offset_seconds", "-7"},
      {{.offset = R"("utc_offset_seconds":1e9,)"},
       "weather.bad_zone",
       "utc_offset_seconds",
       "1000000000.0"},
      {{.offset = R"("utc_offset_seconds":18446744073709551615,)"},
       "weather.bad_zone",
       "utc_offset_seconds",
       "18446744073709551615"},
      {{.arrays = R"("temperature_2m":[12.5,12.1])"},
       "weather.array_length",
       "hourly.temperature_2m",
       "2 values"},
      {{.arrays = R"("temperature_2m":[1,2,3.5],"rain":[1,2,3,4])"},
       "weather.array_length",
       "hourly.rain",
       "4 values"},
      {{.arrays = R"("temperature_2m":12)"}, "weather.array_length", "hourly.temperature_2m", "12"},
      {{.arrays = R"("temperature_80m":[1,2,3])"},
       "weather.no_air",
       "hourly",
       "temperature_80m, time"},
      {{.time = "7"}, "weather.json_shape", "hourly.time", "7"},
      {{.time = R"([1,2,3])"}, "time.bad", "hourly.time[0]", "1"},
      {{.units = R"("relative_humidity_2m":"%","dew_point_2m":"°C","wind_speed_10m":"km/h")"},
       "unit.missing",
       "hourly_units.temperature_2m",
       "null"},
      {{.units = R"("temperature_2m":"x","relative_humidity_2m":"%","dew_point_2m":"°C",)"
                 R"("wind_speed_10m":"km/h")"},
       "unit.unknown",
       "hourly_units.temperature_2m",
       "x"},
      {{.arrays = R"("temperature_2m":[12.5,"12",11.8])"},
       "number.bad",
       "hourly.temperature_2m[1]",
       "12"},
      {{.arrays = R"("temperature_2m":[12.5,12.1,300])"},
       "weather.absurd",
       "hourly.temperature_2m[2]",
       "300 C"},
      {{.units = R"("temperature_2m":"°C","dew_point_2m":"°C","dewpoint_2m":"°C")",
        .arrays = R"("temperature_2m":[1,2,3.5],"dew_point_2m":[1,1,1],"dewpoint_2m":[1,1,1])"},
       "weather.column_twice",
       "hourly.dewpoint_2m",
       "the other is hourly.dew_point_2m"},
      {{.time = R"(["2026-05-01T00:00","2026-05-01T00:00","2026-05-01T02:00"])"},
       "weather.duplicate",
       "hourly.time[1]",
       "2026-05-01T07:00:00Z"},
  };
  for (const Bad& bad : cases) {
    const std::string text = document(bad.parts);
    SCOPED_TRACE(text);
    const auto weather = read_weather(text, "w");
    ASSERT_FALSE(weather);
    const base::Problem& problem = weather.error().front();
    EXPECT_EQ(problem.code, bad.code);
    EXPECT_EQ(problem.key, bad.key);
    EXPECT_EQ(problem.found, bad.found);
  }
}

TEST(HourlyArrays, EveryTimeWithoutItsZoneIsTold) {
  const auto weather = read_weather(document({.offset = ""}), "w");
  ASSERT_FALSE(weather);
  EXPECT_EQ(weather.error().size(), 3U);
}

TEST(HourlyArrays, HourlyThatIsNoObjectIsRefused) {
  EXPECT_EQ(refusal(R"({"hourly":[1,2]})").key, "hourly");
  EXPECT_EQ(refusal(R"({"hourly":{}})").key, "hourly.time");
}

}  // namespace
}  // namespace wetout::climate::test
