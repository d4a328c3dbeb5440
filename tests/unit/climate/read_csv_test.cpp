// Our own layout, docs/formats/weather.md.
#include <gtest/gtest.h>

#include <cmath>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

constexpr std::string_view plain =
    "time,air [C],humidity [%],dew point [F],wind [km/h],sun [W/m2]\n"
    "2026-06-14T10:00:00-07:00,18.5,70,55.4,18,640\n"
    "2026-06-14T11:00:00-07:00,19.25,65,56.3,7.2,700.5\n";

TEST(WeatherCsv, UnitsOfTheHeaderAreApplied) {
  const Weather weather = read(plain);
  EXPECT_EQ(weather.kind, WeatherKind::table);
  EXPECT_EQ(weather.source, "w");
  ASSERT_EQ(weather.points.size(), 2U);
  const WeatherPoint& first = weather.points[0];
  EXPECT_EQ(utc(first.at), "2026-06-14T17:00:00Z");
  EXPECT_NEAR(first.air.in_celsius(), 18.5, 1e-12);
  EXPECT_DOUBLE_EQ(*first.relative_humidity, 0.70);
  EXPECT_NEAR(first.dew_point->in_celsius(), 13.0, 1e-12);
  EXPECT_DOUBLE_EQ(*first.wind_m_s, 5.0);
  EXPECT_DOUBLE_EQ(*first.sun_w_m2, 640.0);
  EXPECT_NEAR(weather.points[1].dew_point->in_celsius(), 13.5, 1e-12);
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(WeatherCsv, EachTemperatureColumnHasItsOwnUnit) {
  for (const auto& [unit, value] :
       std::vector<std::pair<std::string, std::string>>{{"C", "20"},
                                                        {"\u00b0C", "20"},
                                                        {"degC", "20"},
                                                        {"F", "68"},
                                                        {"\u00b0F", "68"},
                                                        {"K", "293.15"}}) {
    SCOPED_TRACE(unit);
    const Weather weather =
        read("Time;Temperature (" + unit + ");Dew_Point [C]\n2026-06-14T10:00Z;" + value +
             ";10,5\n2026-06-14T11:00Z;" + value + ";11,5\n");
    EXPECT_NEAR(weather.points[0].air.in_celsius(), 20.0, 1e-9);
    EXPECT_NEAR(weather.points[0].dew_point->in_celsius(), 10.5, 1e-9);
  }
}

TEST(WeatherCsv, WindUnitsAreExact) {
  for (const auto& [unit, value] :
       std::vector<std::pair<std::string, double>>{{"m/s", 10.0},
                                                   {"km/h", 36.0},
                                                   {"mph", 10.0 * 3600 / 1609.344},
                                                   {"kn", 36000.0 / 1852}}) {
    SCOPED_TRACE(unit);
    const std::string cell = std::to_string(value);
    const Weather weather = read("time,air [C],wind [" + unit + "]\n2026-06-14T10:00Z,1.5," + cell +
                                 "\n2026-06-14T11:00Z,1.5," + cell + "\n");
    EXPECT_NEAR(*weather.points[0].wind_m_s, 10.0, 1e-6);
  }
}

TEST(WeatherCsv, MarkOfUtf8CrlfQuotesAndCommentsAreRead) {
  const Weather weather = read(
      "\xef\xbb\xbf# from the shed\r\n\r\n\"time\",\"air [C]\",\"note, mine\"\r\n"
      "2026-06-14T10:00Z,\"18.5\",\"a \"\"b\"\", c\"\r\n,,\r\n"
      "2026-06-14T11:00Z, 19.5 ,\r\n# the end");
  ASSERT_EQ(weather.points.size(), 2U);
  EXPECT_NEAR(weather.points[1].air.in_celsius(), 19.5, 1e-12);
  EXPECT_EQ(codes(weather.notices), (Codes{"weather.columns_ignored", "weather.no_humidity"}));
  EXPECT_NE(notice(weather, "weather.columns_ignored").text.find("note, mine"), std::string::npos);
}

TEST(WeatherCsv, EmptyCellsAreMissingAndSaid) {
  const Weather weather = read(
      "time,air [C],humidity [%]\n"
      "2026-06-14T10:00Z,18.5,70\n2026-06-14T11:00Z,,70\n2026-06-14T12:00Z,20.5,NA\n"
      "2026-06-14T13:00Z,21.5,-\n2026-06-14T14:00Z,22.5,null\n2026-06-14T15:00Z,22.5,60\n");
  ASSERT_EQ(weather.points.size(), 5U);
  EXPECT_FALSE(weather.points[1].relative_humidity);
  EXPECT_EQ(codes(weather.notices),
            (Codes{"weather.gap", "weather.humidity_gap", "weather.missing_air"}));
  EXPECT_EQ(notice(weather, "weather.missing_air").value, 1.0);
  EXPECT_EQ(weather.gaps, (std::vector<Gap>{{at("2026-06-14T10:00Z"), at("2026-06-14T12:00Z")}}));
  EXPECT_EQ(weather.humidity_gaps,
            (std::vector<Gap>{{at("2026-06-14T10:00Z"), at("2026-06-14T15:00Z")}}));
}

TEST(WeatherCsv, EqualDoublesAreDroppedAndDifferingOnesRefused) {
  const std::string start =
      "time,air [C],humidity [%]\n2026-06-14T10:00Z,18.5,70\n2026-06-14T11:00Z,19.5,70\n";
  const Weather weather =
      read(start + "2026-06-14T04:00-07:00,19.5,70\n2026-06-14T12:00Z,20.5,70\n");
  EXPECT_EQ(weather.points.size(), 3U);
  EXPECT_EQ(codes(weather.notices), Codes{"weather.doubles"});
  EXPECT_EQ(notice(weather, "weather.doubles").value, 1.0);

  const base::Problem problem = refusal(start + "2026-06-14T11:00Z,19.5,71\n");
  EXPECT_EQ(problem.code, "weather.duplicate");
  EXPECT_EQ(problem.line, 4);
  EXPECT_EQ(problem.found, "2026-06-14T11:00:00Z");
  EXPECT_EQ(problem.hint, "the other stands in line 3");
}

TEST(WeatherCsv, RowsOutOfOrderAreSortedAndSaid) {
  const Weather weather = read(
      "time,air [C],humidity [%]\n2026-06-14T12:00Z,20.5,70\n2026-06-14T11:00Z,19.5,71\n"
      "2026-06-14T10:00Z,18.5,72\n");
  EXPECT_EQ(codes(weather.notices), Codes{"weather.order"});
  EXPECT_EQ(notice(weather, "weather.order").value, 2.0);
  EXPECT_EQ(weather.first(), at("2026-06-14T10:00Z"));
  EXPECT_NEAR(weather.points[0].air.in_celsius(), 18.5, 1e-12);
  EXPECT_DOUBLE_EQ(*weather.points[2].relative_humidity, 0.70);
}

TEST(WeatherCsv, IrregularTimesAreKept) {
  const Weather weather = read(
      "time,air [C],humidity [%]\n2026-06-14T10:00:07Z,18.5,70\n2026-06-14T10:05:00Z,18.6,70\n"
      "2026-06-14T10:45Z,18.7,70\n2026-06-14T11:44:59Z,18.8,70\n");
  ASSERT_EQ(weather.points.size(), 4U);
  EXPECT_EQ(utc(weather.points[0].at), "2026-06-14T10:00:07Z");
  EXPECT_TRUE(weather.gaps.empty());
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(WeatherCsv, LeapDayIsADay) {
  const std::string head = "time,air [C],humidity [%]\n";
  const Weather weather =
      read(head + "2028-02-28T23:30Z,1.5,70\n2028-02-29T00:30Z,1.6,70\n2028-02-29T01:30Z,1.7,70\n");
  EXPECT_EQ(utc(weather.points[1].at), "2028-02-29T00:30:00Z");
  const base::Problem problem =
      refusal(head + "2027-02-28T23:30Z,1.5,70\n2027-02-29T00:30Z,1.6,70\n");
  EXPECT_EQ(problem.code, "time.bad");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.column, 1);
  EXPECT_EQ(problem.key, "time");
  EXPECT_EQ(problem.found, "2027-02-29T00:30Z");
}

TEST(WeatherCsv, DatesThatNobodyMeansAreRefused) {
  for (const char* const when : {"9999-12-31T23:59-14:00", "0001-01-01T00:00+14:00",
                                 "1799-12-31T23:59Z", "2201-01-01T00:00Z"}) {
    SCOPED_TRACE(when);
    // Twice and different: dates out of reach are said before anything prints them.
    const auto weather = read_weather(
        "time,air [C]\n2026-06-14T10:00Z,1.5\n" + std::string(when) + ",1.5\n" + when + ",2.5\n",
        "w");
    ASSERT_FALSE(weather);
    ASSERT_EQ(weather.error().size(), 2U);
    EXPECT_EQ(weather.error()[0].code, "time.beyond");
    EXPECT_EQ(weather.error()[0].line, 3);
    EXPECT_EQ(weather.error()[0].expected, "a year from 1800 to 2200");
  }
}

TEST(WeatherCsv, YearFirstSlashesAreReadAndOtherOrdersAreNot) {
  const WeatherOptions utc_zone = in_zone("UTC");
  EXPECT_EQ(read("date,temp [C]\n2026/06/14 10:00,1.5\n2026/06/14 11:00,1.5\n", utc_zone).first(),
            at("2026-06-14T10:00Z"));
  EXPECT_EQ(refusal("date,temp [C]\n06/14/2026 10:00,1.5\n", utc_zone).code, "time.bad");
}

TEST(WeatherCsv, HumidityOfZeroIsNoReading) {
  const Weather weather =
      read("time,air [C],humidity [%]\n2026-06-14T10:00Z,1.5,0\n2026-06-14T11:00Z,2.5,50\n");
  EXPECT_FALSE(weather.points[0].relative_humidity);
  EXPECT_EQ(codes(weather.notices), Codes{"weather.zero_humidity"});
}

TEST(WeatherCsv, SharesUnderAHeadingOfPercentAreRefused) {
  const base::Problem problem =
      refusal("time,air [C],humidity [%]\n2026-06-14T10:00Z,1.5,0.72\n2026-06-14T11:00Z,2.5,0.5\n");
  EXPECT_EQ(problem.code, "weather.absurd");
  EXPECT_EQ(problem.key, "relative humidity");
  EXPECT_EQ(problem.found, "at most 0.72 %");
  const Weather shares =
      read("time,air [C],humidity [1]\n2026-06-14T10:00Z,1.5,0.72\n2026-06-14T11:00Z,2.5,0.5\n");
  EXPECT_DOUBLE_EQ(*shares.points[0].relative_humidity, 0.72);
}

TEST(WeatherCsv, DewPointsALittleAboveTheAirAreTheAir) {
  const std::string head = "time,air [C],dew point [C]\n2026-06-14T10:00Z,12.0,11.5\n";
  const Weather weather =
      read(head + "2026-06-14T11:00Z,12.0,12.75\n2026-06-14T12:00Z,12.0,12.5\n");
  EXPECT_EQ(weather.points[1].dew_point, weather.points[1].air);
  EXPECT_NEAR(*notice(weather, "weather.saturated").value, 0.75, 1e-9);
  const base::Problem problem = refusal(head + "2026-06-14T11:00Z,12.0,54\n");
  EXPECT_EQ(problem.code, "weather.dew_above_air");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.found, "air 12.0 C, dew point 54.0 C");
}

TEST(WeatherCsv, WholeDegreesOfTheFileAreMarked) {
  const auto of = [](std::string_view unit) {
    std::string text = "time,air [" + std::string(unit) + "],humidity [%]\n";
    for (int hour = 10; hour < 16; ++hour) {
      text += "2026-06-14T" + std::to_string(hour) + ":00Z," +
              std::to_string(unit == "K" ? 290 + hour : 50 + hour / 2) + ",50\n";
    }
    return read(text);
  };
  EXPECT_TRUE(of("F").whole_degree_air);
  EXPECT_TRUE(of("C").whole_degree_air);
  EXPECT_EQ(codes(of("F").notices), Codes{"weather.smoothed"});
  EXPECT_TRUE(of("K").whole_degree_air);
  EXPECT_FALSE(read(plain).whole_degree_air);
}

// What is refused, with line, column and field.

struct Bad {
  std::string_view row;
  std::string_view code;
  int column;
  std::string_view key;
  std::string_view found;
  std::string_view expected;
};

TEST(WeatherCsv, BadCellsAreRefusedWithLineAndField) {
  const std::vector<Bad> cases = {
      {"2026-06-14T11:00Z,300,70", "weather.absurd", 19, "air [C]", "300 C", "-70 to 70 C"},
      {"2026-06-14T11:00Z,95,70", "weather.absurd", 19, "air [C]", "95 C", "-70 to 70 C"},
      {"2026-06-14T11:00Z,nan,70", "number.not_finite", 19, "air [C]", "nan C", "a number"},
      {"2026-06-14T11:00Z,-inf,70", "number.not_finite", 19, "air [C]", "-inf C", "a number"},
      {"2026-06-14T11:00Z,1e999,70", "number.bad", 19, "air [C]", "1e999", "a number without"},
      {"2026-06-14T11:00Z,20 C,70", "number.bad", 19, "air [C]", "20 C", "a number without unit"},
      {"2026-06-14T11:00Z,20.5,-1", "weather.absurd", 24, "humidity [%]", "-1 %", "0 to 110 %"},
      {"2026-06-14T11:00Z,20.5,111", "weather.absurd", 24, "humidity [%]", "111 %", "0 to 110 %"},
      {"yesterday,20.5,70", "time.bad", 1, "time", "yesterday", "a time"},
      {",20.5,70", "time.bad", 1, "time", "", "a time"},
      {"2026-06-14T11:00,20.5,70", "weather.no_zone", 1, "time", "2026-06-14T11:00", "an offset"},
      {"2026-06-14T11:00Z,20.5", "weather.columns", 1, "", "2 columns", "3 columns"},
      {"2026-06-14T11:00Z,20,5,70", "weather.columns", 1, "", "4 columns", "3 columns"},
      {"2026-06-14T11:00Z,\"20.5,70", "weather.quote", 1, "", "", ""},
  };
  for (const Bad& bad : cases) {
    SCOPED_TRACE(bad.row);
    const base::Problem problem = refusal("time,air [C],humidity [%]\n2026-06-14T10:00Z,18.5,70\n" +
                                          std::string(bad.row) + "\n2026-06-14T12:00Z,18.5,70\n");
    EXPECT_EQ(problem.code, bad.code);
    EXPECT_EQ(problem.line, 3);
    EXPECT_EQ(problem.column, bad.column);
    EXPECT_EQ(problem.key, bad.key);
    EXPECT_EQ(problem.found, bad.found);
    EXPECT_TRUE(problem.expected.starts_with(bad.expected)) << problem.expected;
    EXPECT_EQ(problem.source_line, bad.row);
  }
}

TEST(WeatherCsv, FahrenheitTakenForCelsiusIsAskedAbout) {
  EXPECT_EQ(refusal("time,air [C]\n2026-06-14T10:00Z,95\n").hint, "is it in F rather than C?");
}

TEST(WeatherCsv, AFileCutInARowSaysSo) {
  const base::Problem problem =
      refusal("time,air [C],humidity [%]\n2026-06-14T10:00Z,18.5,70\n2026-06-14T11:00Z,18");
  EXPECT_EQ(problem.code, "weather.columns");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.message, "the file ends in the middle of this row");
}

TEST(WeatherCsv, EveryProblemIsToldUpToTwenty) {
  std::string text = "time,air [C],wind [m/s]\n";
  for (int i = 10; i < 60; ++i) text += "2026-06-14T10:" + std::to_string(i) + "Z,x,500\n";
  const auto weather = read_weather(text, "w");
  ASSERT_FALSE(weather);
  ASSERT_EQ(weather.error().size(), 21U);
  EXPECT_EQ(weather.error()[0].key, "air [C]");
  EXPECT_EQ(weather.error()[1].key, "wind [m/s]");
  EXPECT_EQ(weather.error()[19].line, 11);
  EXPECT_EQ(weather.error()[20].code, "weather.more");
}

struct BadHeader {
  std::string_view line;
  std::string_view code;
  std::string_view key;
  std::string_view expected;
};

TEST(WeatherCsv, BadHeadersAreRefused) {
  const std::vector<BadHeader> cases = {
      {"time,air", "unit.missing", "air", "C, F or K, as in \"air [C]\""},
      {"time,temp,humidity [%]", "unit.missing", "temp", "C, F or K, as in \"temp [C]\""},
      {"time,air [R]", "unit.unknown", "air [R]", "C, F or K, as in \"air [C]\""},
      {"time,air [C],wind [bft]", "unit.unknown", "wind [bft]", "m/s, km/h, mph or kn"},
      {"time,air [C],dry bulb [F]", "weather.column_twice", "dry bulb [F]", "one column"},
      {"time,date,air [C]", "weather.column_twice", "date", "one column"},
      {"time,humidity [%]", "weather.header", "", "names and units"},
      {"air [C],humidity [%]", "weather.header", "", "names and units"},
      {"2026-06-14T10:00Z,18.5", "weather.header", "", "names and units"},
      {"time [Mars/Base],air [C]", "zone.unknown", "time [Mars/Base]", "time [-08:00]"},
      {"time,\"air [C]", "weather.quote", "", ""},
      {"time,\"air\" [C]", "weather.quote", "", ""},
  };
  for (const BadHeader& bad : cases) {
    SCOPED_TRACE(bad.line);
    const base::Problem problem =
        refusal("# a comment\n" + std::string(bad.line) + "\n2026-06-14T10:00Z,18.5,70\n");
    EXPECT_EQ(problem.code, bad.code);
    EXPECT_EQ(problem.line, 2);
    EXPECT_EQ(problem.key, bad.key);
    EXPECT_TRUE(problem.expected.starts_with(bad.expected)) << problem.expected;
  }
}

TEST(WeatherCsv, EmptyCellsBeyondTheHeaderAreNoHarm) {
  EXPECT_EQ(read("time,air [C]\n2026-06-14T10:00Z,1.5,, ,\n2026-06-14T11:00Z,2.5,\n").points.size(),
            2U);
}

TEST(WeatherCsv, TooFewValuesAreRefused) {
  EXPECT_EQ(refusal("time,air [C]\n").code, "weather.too_short");
  EXPECT_EQ(refusal("time,air [C]\n2026-06-14T10:00Z,18.5\n").found, "1 air temperature");
  EXPECT_EQ(refusal("time,air [C]\n2026-06-14T10:00Z,\n2026-06-14T11:00Z,\n").code,
            "weather.too_short");
}

TEST(WeatherCsv, DailyValuesAreNoHourlyWeather) {
  EXPECT_EQ(refusal("time,air [C]\n2026-06-14T10:00Z,18\n2026-06-15T10:00Z,19\n").code,
            "weather.not_hourly");
}

}  // namespace
}  // namespace wetout::climate::test
