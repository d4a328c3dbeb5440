// The EnergyPlus layout: fields, units, missing codes of [epwdictionary]. Lines 1 to 8 are the
// header, the first row is line 9.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

TEST(Epw, HourOneEndsAtOneInStandardTime) {
  const Weather weather =
      read(epw_header("-8.0") + epw_row("2017,1,1,1,0") + epw_row("2017,1,1,2,60"));
  EXPECT_EQ(weather.kind, WeatherKind::epw);
  EXPECT_EQ(weather.place, "Beach Town, CA, USA");
  EXPECT_EQ(weather.day_offset, std::chrono::hours(-8));
  EXPECT_EQ(weather.first(), at("2017-01-01T01:00-08:00"));
  EXPECT_EQ(weather.last(), at("2017-01-01T02:00-08:00"));
  const WeatherPoint& point = weather.points[0];
  EXPECT_NEAR(point.air.in_celsius(), 12.5, 1e-12);
  EXPECT_NEAR(point.dew_point->in_celsius(), 8.0, 1e-12);
  EXPECT_DOUBLE_EQ(*point.relative_humidity, 0.74);
  EXPECT_DOUBLE_EQ(*point.wind_m_s, 2.6);
  EXPECT_DOUBLE_EQ(*point.sun_w_m2, 350.0);
}

TEST(Epw, HourTwentyFourIsMidnight) {
  const Weather weather =
      read(epw_header("5.75") + epw_row("2017,12,31,23,0") + epw_row("2017,12,31,24,0"));
  EXPECT_EQ(weather.last(), at("2018-01-01T00:00+05:45"));
}

TEST(Epw, SummerTimeOfTheHeaderChangesNothing) {
  std::string text = epw_header("-8.0") + epw_row("2026,3,8,1,0") + epw_row("2026,3,8,2,0") +
                     epw_row("2026,3,8,3,0");
  text.replace(text.find("No,0,0,0"), 8, "No,3/8,11/1,0");
  const Weather weather = read(text);
  EXPECT_EQ(weather.points[1].at, at("2026-03-08T02:00-08:00"));
  EXPECT_TRUE(weather.gaps.empty());
}

TEST(Epw, MinutesWithinTheHourAreReadBothWays) {
  const auto quarters = [](const std::vector<int>& minutes) {
    std::string text = epw_header("0");
    for (const int hour : {1, 2}) {
      for (const int minute : minutes) {
        text += epw_row("2017,1,1," + std::to_string(hour) + "," + std::to_string(minute));
      }
    }
    return text;
  };
  const Weather ends = read(quarters({15, 30, 45, 60}));
  ASSERT_EQ(ends.points.size(), 8U);
  EXPECT_EQ(ends.first(), at("2017-01-01T00:15Z"));
  EXPECT_EQ(ends.last(), at("2017-01-01T02:00Z"));
  const Weather starts = read(quarters({0, 15, 30, 45}));
  ASSERT_EQ(starts.points.size(), 8U);
  EXPECT_EQ(starts.first(), at("2017-01-01T00:00Z"));
  EXPECT_EQ(starts.last(), at("2017-01-01T01:45Z"));
  const base::Problem both = refusal(quarters({0, 30, 60}));
  EXPECT_EQ(both.code, "weather.minutes");
  EXPECT_EQ(both.line, 9);
}

TEST(Epw, MissingCodesAreMissing) {
  const Weather weather =
      read(epw_header() + epw_row("2017,1,1,1,0") +
           epw_row("2017,1,1,2,0", {"12.5", "99.9", "999", "9999", "999"}) +
           epw_row("2017,1,1,3,0", {"99.90", "99.9", "999.0", "9999.", "999.0"}) +
           epw_row("2017,1,1,4,0"));
  ASSERT_EQ(weather.points.size(), 3U);
  EXPECT_FALSE(weather.points[1].dew_point || weather.points[1].relative_humidity ||
               weather.points[1].sun_w_m2 || weather.points[1].wind_m_s);
  ASSERT_EQ(weather.gaps.size(), 1U);
  EXPECT_EQ(weather.gaps[0].from, at("2017-01-01T02:00-08:00"));
  ASSERT_EQ(weather.humidity_gaps.size(), 1U);
  EXPECT_EQ(weather.humidity_gaps[0].from, at("2017-01-01T01:00-08:00"));
  EXPECT_EQ(notice(weather, "weather.missing_air").value, 1.0);
  EXPECT_EQ(notice(weather, "weather.gap").value, 2.0);
  EXPECT_EQ(notice(weather, "weather.humidity_gap").value, 3.0);
}

TEST(Epw, MonthsOfDifferentYearsAreATypicalYear) {
  const Weather weather = read(epw_header() + epw_row("1986,1,31,24,0") + epw_row("1977,2,1,1,0"));
  EXPECT_TRUE(weather.typical_year);
  EXPECT_EQ(weather.last() - weather.first(), std::chrono::hours(1));
  const Weather rising = read(epw_header() + epw_row("1986,1,31,24,0") + epw_row("1990,2,1,1,0"));
  EXPECT_TRUE(rising.typical_year);
}

TEST(Epw, ARealYearKeepsItsDates) {
  const Weather weather = read(epw_header() + epw_row("2016,12,31,24,0") + epw_row("2017,1,1,1,0"));
  EXPECT_FALSE(weather.typical_year);
  EXPECT_EQ(weather.first(), at("2017-01-01T00:00-08:00"));
}

TEST(Epw, LeapDayOfATypicalYearIsRead) {
  const Weather weather = read(epw_header() + epw_row("1985,2,29,23,0") + epw_row("1985,2,29,24,0") +
                               epw_row("1990,3,1,1,0"));
  EXPECT_TRUE(weather.typical_year);
  EXPECT_EQ(weather.points.size(), 3U);
  EXPECT_EQ(weather.points[1].at - weather.points[0].at, std::chrono::hours(1));
  EXPECT_EQ(weather.points[2].at - weather.points[1].at, std::chrono::hours(1));
}

TEST(Epw, LeapDayOfAYearWithoutOneIsRefused) {
  const base::Problem problem =
      refusal(epw_header() + epw_row("2017,2,28,24,0") + epw_row("2017,2,29,1,0"));
  EXPECT_EQ(problem.code, "weather.bad_time");
  EXPECT_EQ(problem.line, 10);
  EXPECT_EQ(problem.key, "day (field 3)");
  EXPECT_EQ(problem.message, "2017 has no 29 February");
}

TEST(Epw, AnEarlyEndIsSaid) {
  const std::string rows = epw_row("2017,1,1,23,0") + epw_row("2017,1,1,24,0");
  EXPECT_EQ(codes(read(epw_header("0", "Sunday, 1/ 1, 1/ 1") + rows).notices), Codes{});
  EXPECT_EQ(codes(read(epw_header("0", "Sunday, 1/ 1,12/31") + rows).notices),
            Codes{"weather.ends_early"});
  EXPECT_EQ(codes(read(epw_header("0", "Sunday, 1/ 1/2017,1/1/2017") + rows).notices), Codes{});
}

TEST(Epw, CrlfMarkAndSmallLettersAreRead) {
  std::string text = epw_header() + epw_row("2017,1,1,1,0") + epw_row("2017,1,1,2,0");
  std::string crlf = "\xef\xbb\xbf";
  for (const char c : text) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  crlf.replace(3, 8, "Location");
  EXPECT_EQ(read(crlf).points, read(text).points);
}

struct Bad {
  std::string row;
  std::string_view code;
  std::string_view key;
  std::string_view found;
  std::string_view expected;
};

TEST(Epw, BadFieldsAreRefusedWithLineAndField) {
  const auto with = [](const EpwValues& values) { return epw_row("2017,1,1,2,0", values); };
  const std::vector<Bad> cases = {
      {with({.air = "300"}), "weather.absurd", "dry bulb (field 7)", "300 C",
       "-70 to 70 C, or 99.9 where it is missing"},
      {with({.air = "-70.1"}), "weather.absurd", "dry bulb (field 7)", "-70.1 C", "-70 to 70 C"},
      {with({.air = "nan"}), "number.not_finite", "dry bulb (field 7)", "nan C", "a number"},
      {with({.air = "x"}), "number.bad", "dry bulb (field 7)", "x", "a number, 99.9 where it is"},
      {with({.dew = "-99"}), "weather.absurd", "dew point (field 8)", "-99 C", "-70 to 70 C"},
      {with({.humidity = "111"}), "weather.absurd", "relative humidity (field 9)", "111 %",
       "0 to 110 %, or 999 where it is missing"},
      {with({.sun = "-40"}), "weather.absurd", "global horizontal radiation (field 14)", "-40 W/m2",
       "-20 to 2000 W/m2, or 9999 where it is missing"},
      {with({.wind = "-1"}), "weather.absurd", "wind speed (field 22)", "-1 m/s", "0 to 120 m/s"},
      {epw_row("17,1,1,2,0"), "weather.bad_time", "year (field 1)", "17", "a whole number"},
      {epw_row("2017,13,1,2,0"), "weather.bad_time", "month (field 2)", "13", "a whole number"},
      {epw_row("2017,1,32,2,0"), "weather.bad_time", "day (field 3)", "32", "a whole number"},
      {epw_row("2017,4,31,2,0"), "weather.bad_time", "day (field 3)", "31", "a day of month 4"},
      {epw_row("2017,1,1,0,0"), "weather.bad_time", "hour (field 4)", "0", "a whole number from 1"},
      {epw_row("2017,1,1,25,0"), "weather.bad_time", "hour (field 4)", "25", "a whole number"},
      {epw_row("2017,1,1,2,61"), "weather.bad_time", "minute (field 5)", "61", "a whole number"},
      {epw_row("2017,1,1,2.5,0"), "weather.bad_time", "hour (field 4)", "2.5", "a whole number"},
      {"2017,1,1,2,0,?9,12.5,8.0\n", "weather.columns", "", "8 fields", "35 fields"},
      {epw_row("2017,1,1,1,0", {.air = "13.0"}), "weather.duplicate",
       "month, day, hour, minute (fields 2 to 5)", "2017-01-01T01:00:00Z", "one row"},
  };
  for (const Bad& bad : cases) {
    SCOPED_TRACE(bad.row);
    const base::Problem problem =
        refusal(epw_header("0") + epw_row("2017,1,1,1,0") + bad.row + epw_row("2017,1,1,3,0"));
    EXPECT_EQ(problem.code, bad.code);
    EXPECT_EQ(problem.line, 10);
    EXPECT_EQ(problem.key, bad.key);
    EXPECT_EQ(problem.found, bad.found);
    EXPECT_TRUE(problem.expected.starts_with(bad.expected)) << problem.expected;
  }
}

TEST(Epw, AFileCutInARowSaysSo) {
  std::string text = epw_header("0") + epw_row("2017,1,1,1,0") + epw_row("2017,1,1,2,0");
  text.resize(text.size() - 20);
  EXPECT_EQ(refusal(text).message, "the file ends in the middle of this row");
}

TEST(Epw, HeadersAreCheckedLineByLine) {
  const std::string rows = epw_row("2017,1,1,1,0") + epw_row("2017,1,1,2,0");
  std::string short_header = epw_header();
  short_header.erase(short_header.find("COMMENTS 2"), 19);
  const base::Problem missing = refusal(short_header + rows);
  EXPECT_EQ(missing.code, "weather.header");
  EXPECT_EQ(missing.line, 7);
  EXPECT_EQ(missing.found, "DATA PERIODS");
  EXPECT_EQ(missing.expected, "a line that begins with COMMENTS 2");
  EXPECT_EQ(refusal("LOCATION,a,b,c,d,1,2,3,4\n").code, "weather.header");
  EXPECT_EQ(refusal("LOCATION,a,b,c\n").code, "weather.columns");
  const base::Problem zone = refusal(epw_header("west") + rows);
  EXPECT_EQ(zone.code, "weather.bad_zone");
  EXPECT_EQ(zone.line, 1);
  EXPECT_EQ(zone.key, "time zone");
  EXPECT_EQ(refusal(epw_header("15") + rows).code, "weather.bad_zone");
  EXPECT_EQ(refusal(epw_header("nan") + rows).code, "weather.bad_zone");
}

}  // namespace
}  // namespace wetout::climate::test
