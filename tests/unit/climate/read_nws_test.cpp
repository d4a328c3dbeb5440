// The hourly forecast of the US National Weather Service [nwsapi], its shape and its traps.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

struct Period {
  std::string start = "2026-05-01T08:00:00-04:00";
  std::string temperature = R"("temperature":68,"temperatureUnit":"F")";
  std::string dew = R"({"unitCode":"wmoUnit:degC","value":12.2})";
  std::string humidity = R"({"unitCode":"wmoUnit:percent","value":61})";
  std::string wind = R"("10 mph")";
};

std::string period(const Period& p = {}) {
  return R"({"number":1,"name":"","startTime":")" + p.start +
         R"(","endTime":"","isDaytime":true,)" + p.temperature +
         R"(,"temperatureTrend":null,"probabilityOfPrecipitation":{"unitCode":"wmoUnit:percent",)"
         R"("value":10},"dewpoint":)" +
         p.dew + R"(,"relativeHumidity":)" + p.humidity + R"(,"windSpeed":)" + p.wind +
         R"(,"windDirection":"NE","icon":"","shortForecast":"Sunny","detailedForecast":""})";
}

std::string forecast(const std::vector<std::string>& periods, std::string_view units = "us") {
  std::string out = R"({"type":"Feature","geometry":null,"properties":{"units":")" +
                    std::string(units) +
                    R"(","generatedAt":"2026-05-01T12:00:00+00:00",)"
                    R"("validTimes":"2026-05-01T06:00:00+00:00/P7DT19H",)"
                    R"("elevation":{"unitCode":"wmoUnit:m","value":12.2},"periods":[)";
  for (std::size_t i = 0; i < periods.size(); ++i) out += (i == 0 ? "" : ",") + periods[i];
  return out + "]}}";
}

std::string hour(int h) {
  return "2026-05-01T" + std::string(h < 10 ? "0" : "") + std::to_string(h) + ":00:00-04:00";
}

/// One period of the kind, and a plain one an hour later.
Weather read_one(const Period& p) {
  return read(forecast({period(p), period({.start = hour(9)})}));
}

TEST(Nws, ThePublishedShapeIsRead) {
  const Weather weather = read_one({});
  EXPECT_EQ(weather.kind, WeatherKind::nws);
  EXPECT_EQ(weather.made, at("2026-05-01T12:00Z"));
  ASSERT_EQ(weather.points.size(), 2U);
  const WeatherPoint& point = weather.points[0];
  EXPECT_EQ(utc(point.at), "2026-05-01T12:00:00Z");
  EXPECT_NEAR(point.air.in_celsius(), 20.0, 1e-9);
  EXPECT_NEAR(point.dew_point->in_celsius(), 12.2, 1e-12);
  EXPECT_DOUBLE_EQ(*point.relative_humidity, 0.61);
  EXPECT_DOUBLE_EQ(*point.wind_m_s, 10 * 0.44704);
  EXPECT_FALSE(point.sun_w_m2);
}

TEST(Nws, TemperatureIsANumberOrAnObject) {
  for (const char* const text :
       {R"("temperature":68,"temperatureUnit":"F")", R"("temperature":20,"temperatureUnit":"C")",
        R"("temperature":68)", R"("temperature":68,"temperatureUnit":null)",
        R"("temperature":{"unitCode":"wmoUnit:degF","value":68})",
        R"("temperature":{"unitCode":"wmoUnit:degC","value":20.0},"temperatureUnit":"F")",
        R"("temperature":{"unitCode":"unit:degC","value":20})",
        R"("temperature":{"unitCode":"https://codes.wmo.int/common/unit/degC","value":20})",
        R"("temperature":{"unitCode":"wmoUnit:K","value":293.15})"}) {
    SCOPED_TRACE(text);
    EXPECT_NEAR(read_one({.temperature = text}).points[0].air.in_celsius(), 20.0, 1e-9);
  }
}

TEST(Nws, UnitsOfTheDocumentAreTheFallback) {
  const std::string without = R"("temperature":20)";
  const Weather si = read(forecast(
      {period({.temperature = without}), period({.start = hour(9), .temperature = without})},
      "si"));
  EXPECT_NEAR(si.points[0].air.in_celsius(), 20.0, 1e-9);
  const base::Problem problem = refusal(forecast({period({.temperature = without})}, "ours"));
  EXPECT_EQ(problem.code, "unit.unknown");
  EXPECT_EQ(problem.key, "properties.periods[0].temperatureUnit");
}

TEST(Nws, WindIsATextARangeOrAnObject) {
  const auto wind = [](std::string text) { return read_one({.wind = std::move(text)}); };
  EXPECT_DOUBLE_EQ(*wind(R"("5 to 10 mph")").points[0].wind_m_s, 10 * 0.44704);
  EXPECT_DOUBLE_EQ(*wind(R"("18 km/h")").points[0].wind_m_s, 5.0);
  EXPECT_DOUBLE_EQ(*wind(R"({"unitCode":"wmoUnit:km_h-1","value":18})").points[0].wind_m_s, 5.0);
  EXPECT_DOUBLE_EQ(*wind(R"({"unitCode":"wmoUnit:km_h-1","value":null,"minValue":9,"maxValue":18})")
                        .points[0]
                        .wind_m_s,
                   5.0);
  for (const char* const nothing :
       {"null", R"("")", R"({"unitCode":"wmoUnit:km_h-1","value":null})"}) {
    const Weather weather = wind(nothing);
    EXPECT_FALSE(weather.points[0].wind_m_s) << nothing;
    EXPECT_EQ(codes(weather.notices), Codes{}) << nothing;
  }
}

TEST(Nws, WindThatCannotBeReadIsLeftOutAndSaid) {
  for (const char* const text :
       {R"("calm")", R"("mph")", R"("10 to mph")", R"("x to 10 mph")", R"("10 bft")",
        R"("500 mph")", "10", "[]", R"({"unitCode":"wmoUnit:degC","value":3})",
        R"({"unitCode":"wmoUnit:km_h-1","value":"3"})"}) {
    SCOPED_TRACE(text);
    const Weather weather = read_one({.wind = text});
    EXPECT_FALSE(weather.points[0].wind_m_s);
    EXPECT_EQ(codes(weather.notices), Codes{"weather.wind_unread"});
  }
}

TEST(Nws, AnyValueMayBeNull) {
  const Weather weather = read(forecast(
      {period(), period({.start = hour(9), .temperature = R"("temperature":null)"}),
       period({.start = hour(10), .dew = "null", .humidity = R"({"unitCode":"x","value":null})"}),
       period({.start = hour(11)})}));
  ASSERT_EQ(weather.points.size(), 3U);
  EXPECT_FALSE(weather.points[1].dew_point || weather.points[1].relative_humidity);
  ASSERT_EQ(weather.gaps.size(), 1U);
  ASSERT_EQ(weather.humidity_gaps.size(), 1U);
}

TEST(Nws, ForecastsWithoutHumiditySaySo) {
  std::string text = forecast({period({.dew = "null", .humidity = "null"}),
                               period({.start = hour(9), .dew = "null", .humidity = "null"})});
  EXPECT_EQ(codes(read(text).notices), Codes{"weather.no_humidity"});
}

TEST(Nws, WholeFahrenheitIsSeenThroughCelsius) {
  std::vector<std::string> periods;
  for (int i = 0; i < 6; ++i) {
    // Dew points of 54 F to 59 F as the service prints them.
    periods.push_back(period(
        {.start = hour(8 + i),
         .temperature = R"("temperature":)" + std::to_string(60 + i) + R"(,"temperatureUnit":"F")",
         .dew =
             R"({"unitCode":"wmoUnit:degC","value":)" + std::to_string((22.0 + i) / 1.8) + "}"}));
  }
  const Weather weather = read(forecast(periods));
  EXPECT_TRUE(weather.whole_degree_air);
  EXPECT_TRUE(weather.whole_degree_dew_point);
  EXPECT_EQ(codes(weather.notices), Codes{"weather.smoothed"});
  periods.push_back(
      period({.start = hour(14), .dew = R"({"unitCode":"wmoUnit:degC","value":12.5})"}));
  EXPECT_FALSE(read(forecast(periods)).whole_degree_dew_point);
}

struct Bad {
  Period period;
  std::string_view code;
  std::string_view key;
  std::string_view found;
};

TEST(Nws, BadValuesAreRefusedWithTheirPath) {
  const std::string there = "properties.periods[1]";
  const std::vector<Bad> cases = {
      {{.start = "2026-05-01T08:00:00"}, "weather.no_zone", ".startTime", "2026-05-01T08:00:00"},
      {{.start = "soon"}, "time.bad", ".startTime", "soon"},
      {{.temperature = R"("temperature":"68","temperatureUnit":"F")"},
       "number.bad",
       ".temperature",
       "68"},
      {{.temperature = R"("temperature":300,"temperatureUnit":"F")"},
       "weather.absurd",
       ".temperature",
       "300 F"},
      {{.temperature = R"("temperature":95,"temperatureUnit":"C")"},
       "weather.absurd",
       ".temperature",
       "95 C"},
      {{.temperature = R"("temperature":68,"temperatureUnit":"R")"},
       "unit.unknown",
       ".temperatureUnit",
       "R"},
      {{.temperature = R"("temperature":{"unitCode":"wmoUnit:m","value":68})"},
       "unit.unknown",
       ".temperature.unitCode",
       "wmoUnit:m"},
      {{.dew = "12.2"}, "unit.missing", ".dewpoint", "12.2"},
      {{.dew = R"({"value":12.2})"}, "unit.unknown", ".dewpoint.unitCode", "null"},
      {{.dew = R"({"unitCode":"wmoUnit:degC","value":54})"},
       "weather.dew_above_air",
       "",
       "air 20.0 C, dew point 54.0 C"},
      {{.humidity = R"({"unitCode":"wmoUnit:percent","value":[]})"},
       "number.bad",
       ".relativeHumidity.value",
       "an array"},
      {{.humidity = R"({"unitCode":"wmoUnit:percent","value":-1})"},
       "weather.absurd",
       ".relativeHumidity.value",
       "-1 %"},
  };
  for (const Bad& bad : cases) {
    Period second = bad.period;
    if (second.start == Period{}.start) second.start = hour(9);
    SCOPED_TRACE(period(second));
    const base::Problem problem =
        refusal(forecast({period(), period(second), period({.start = hour(10)})}));
    EXPECT_EQ(problem.code, bad.code);
    EXPECT_EQ(problem.key, there + std::string(bad.key));
    EXPECT_EQ(problem.found, bad.found);
  }
}

TEST(Nws, ShapesThatAreNoForecastAreRefused) {
  EXPECT_EQ(refusal(forecast({"7", period(), period({.start = hour(9)})})).key,
            "properties.periods[0]");
  EXPECT_EQ(refusal(forecast({})).code, "weather.too_short");
  const base::Problem twice =
      refusal(forecast({period(), period({.wind = R"("12 mph")"}), period({.start = hour(9)})}));
  EXPECT_EQ(twice.code, "weather.duplicate");
  EXPECT_EQ(twice.key, "properties.periods[1]");
  EXPECT_EQ(twice.hint, "the other stands in properties.periods[0]");
  // Twelve hours apart: the forecast by day and night.
  const base::Problem daily =
      refusal(forecast({period(), period({.start = "2026-05-01T20:00:00-04:00"})}));
  EXPECT_EQ(daily.code, "weather.not_hourly");
}

TEST(Nws, PeriodsMayChangeTheirUnitsAndOffsets) {
  const Weather weather = read(
      forecast({period(), period({.start = "2026-05-01T13:00:00+00:00",
                                  .temperature = R"("temperature":20,"temperatureUnit":"C")"})}));
  EXPECT_EQ(weather.last() - weather.first(), std::chrono::hours(1));
  EXPECT_NEAR(weather.points[1].air.in_celsius(), 20.0, 1e-9);
}

}  // namespace
}  // namespace wetout::climate::test
