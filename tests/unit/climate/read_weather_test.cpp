// Which layout it is, and input that is none.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

TEST(ReadWeather, GoesByContentNotByName) {
  const std::string csv = "time,air [C]\n2026-06-14T10:00Z,18.5\n2026-06-14T11:00Z,19.5\n";
  EXPECT_EQ(read_weather(csv, "forecast.epw")->kind, WeatherKind::table);
  const std::string epw = epw_header() + epw_row("2017,1,1,1,0") + epw_row("2017,1,1,2,0");
  EXPECT_EQ(read_weather(epw, "forecast.csv")->kind, WeatherKind::epw);
  const std::string json =
      R"( {"utc_offset_seconds":0,"hourly_units":{"temperature_2m":"C"},"hourly":)"
      R"({"time":["2026-05-01T00:00","2026-05-01T01:00"],"temperature_2m":[1,2]}})";
  EXPECT_EQ(read_weather("\n" + json, "x")->kind, WeatherKind::hourly_arrays);
  EXPECT_EQ(read_weather("\xef\xbb\xbf" + json, "x")->kind, WeatherKind::hourly_arrays);
}

TEST(ReadWeather, OtherDocumentsAreNamed) {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"", "weather.empty"},
      {" \r\n\t\n", "weather.empty"},
      {"\xef\xbb\xbf", "weather.empty"},
      {"# only a comment\n", "weather.empty"},
      {"<!DOCTYPE html><html>", "weather.page"},
      {std::string("PK\x03\x04\0\0", 6), "weather.binary"},
      {std::string("\xff\xfet\0i\0", 6), "weather.utf16"},
      {"{}", "weather.unknown_json"},
      {"[]", "weather.unknown_json"},
      {R"({"properties":{"periods":{}}})", "weather.unknown_json"},
      {"{\"hourly\":", "json.bad"},
      {"{\"hourly\":{\"time\":[NaN]}}", "json.bad"},
      {"{\"hourly\":{\"time\":[1e999]}}", "number.not_finite"},
      {"{\"hourly\":\"\xff\"}", "json.bad"},
      {"{} x", "json.bad"},
      {"words without sense", "weather.header"},
  };
  for (const auto& [text, code] : cases) {
    SCOPED_TRACE(text);
    EXPECT_EQ(refusal(text).code, code);
  }
}

TEST(ReadWeather, ErrorsOfServicesAreRecognised) {
  const base::Problem nws = refusal(
      R"({"type":"about:blank","title":"Not Found","status":404,"detail":"no such point"})");
  EXPECT_EQ(nws.found, "no such point");
  EXPECT_FALSE(nws.hint.empty());
  EXPECT_EQ(refusal(R"({"error":true,"reason":"latitude must be a number"})").found,
            "latitude must be a number");
  EXPECT_EQ(refusal(R"({"properties":{"forecastHourly":"https://example.org/hourly"}})").hint,
            "fetch the address that it names under properties.forecastHourly");
}

TEST(ReadWeather, BrokenJsonSaysWhere) {
  const base::Problem comma = refusal("{\n  \"hourly\": {},,\n}");
  EXPECT_EQ(comma.line, 2);
  EXPECT_EQ(comma.column, 16);
  EXPECT_EQ(comma.source_line, "  \"hourly\": {},,");
  EXPECT_EQ(refusal("{\"hourly\": {\"time\": [1, 2").message,
            "the file ends in the middle of its JSON");
}

TEST(ReadWeather, HugeInputIsRefusedUnread) {
  const std::string spaces(100'000'000, ' ');
  const base::Problem problem = refusal(spaces);
  EXPECT_EQ(problem.code, "weather.too_large");
  EXPECT_EQ(problem.found, "95.4 MiB");
  EXPECT_EQ(refusal("[" + std::string(9'000'000, '1') + "]").code, "weather.too_large");
  EXPECT_EQ(refusal(std::string(20'000'000, '\0')).code, "weather.binary");
}

TEST(ReadWeather, DeepJsonIsRefusedUnbuilt) {
  EXPECT_EQ(refusal(std::string(5'000'000, '[')).code, "json.deep");
  std::string deep = "{\"a\":";
  for (int i = 0; i < 1'000'000; ++i) deep += "{\"a\":";
  EXPECT_EQ(refusal(deep).code, "json.deep");
  // Brackets inside text are no nesting.
  EXPECT_EQ(refusal("[\"" + std::string(1000, '[') + "\\\"" + std::string(1000, '{') + "\"]").code,
            "weather.unknown_json");
}

TEST(ReadWeather, LongLinesAndManyRowsAreAnswered) {
  EXPECT_EQ(refusal(std::string(8'000'000, ',')).code, "weather.empty");
  EXPECT_EQ(refusal("x" + std::string(8'000'000, ',')).code, "weather.columns");
  EXPECT_EQ(refusal("time,air [C]\n2026-06-14T10:00Z,1" + std::string(8'000'000, ',')).code,
            "weather.columns");
  EXPECT_EQ(refusal("time,air [C]\n" + std::string(8'000'000, 'x')).code, "weather.columns");
  std::string rows = "time,air [C]\n";
  for (int i = 0; i < 600'001; ++i) rows += "2026-06-14T10:00Z,1\n";
  const base::Problem problem = refusal(rows);
  EXPECT_EQ(problem.code, "weather.too_long");
  std::string times = "1";
  for (int i = 0; i < 600'000; ++i) times += ",1";
  EXPECT_EQ(refusal("{\"hourly\":{\"time\":[" + times + "]}}").code, "weather.too_long");
  EXPECT_EQ(problem.expected, "at most 600000 rows");
}

TEST(ReadWeather, WhatIsShownIsSafeToPrint) {
  const base::Problem problem = refusal("time,air [C]\n2026-06-14T10:00Z,\x1b[31m\xff\n");
  EXPECT_EQ(problem.found, "?[31m?");
}

}  // namespace
}  // namespace wetout::climate::test
