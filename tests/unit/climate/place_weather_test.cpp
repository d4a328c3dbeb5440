// A typical year on the dates of another.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

using std::chrono::hours;

/// A row at 12:00 of each day of January to December, with the day of the year as tenths of a
/// degree, or any other hour step.
std::string whole_year(int year, int step_h = 3) {
  std::string out = epw_header("-8.0", "Sunday, 1/ 1,12/31");
  const std::chrono::year_month_day first = std::chrono::year(year) / 1 / 1;
  const auto end = std::chrono::sys_days(std::chrono::year(year + 1) / 1 / 1);
  int n = 0;
  for (auto day = std::chrono::sys_days(first); day < end; day += std::chrono::days(1), ++n) {
    const std::chrono::year_month_day date(day);
    for (int hour = step_h; hour <= 24; hour += step_h) {
      out += epw_row(std::to_string(int(date.year())) + "," +
                         std::to_string(unsigned(date.month())) + "," +
                         std::to_string(unsigned(date.day())) + "," + std::to_string(hour) + ",0",
                     {.air = std::to_string(n / 10) + "." + std::to_string(n % 10),
                      .dew = "-5.5",
                      .humidity = std::to_string(hour + 10)});
    }
  }
  return out;
}

double air_at(const Weather& weather, std::string_view when) {
  for (const WeatherPoint& point : weather.points) {
    if (point.at == at(when)) return point.air.in_celsius();
  }
  ADD_FAILURE() << "nothing at " << when;
  return 0.0;
}

TEST(Place, KeepsDayAndHourInStandardTime) {
  const Weather weather = read(whole_year(2017));
  const Weather placed = place(weather, 2026).value();
  EXPECT_EQ(placed.points.size(), weather.points.size());
  EXPECT_EQ(placed.first(), at("2026-01-01T03:00-08:00"));
  EXPECT_EQ(placed.last(), at("2027-01-01T00:00-08:00"));
  // 4 July is the 185th day.
  EXPECT_NEAR(air_at(placed, "2026-07-04T12:00-08:00"), 18.4, 1e-9);
  EXPECT_NEAR(air_at(placed, "2027-01-01T00:00-08:00"), 36.4, 1e-9);
  EXPECT_FALSE(placed.typical_year);
  EXPECT_TRUE(placed.gaps.empty());
  EXPECT_EQ(codes(placed.notices), Codes{"weather.placed"});
}

TEST(Place, YearsFollowEachOtherWithoutAGap) {
  const Weather placed = place(read(whole_year(2017)), 2025, 3).value();
  EXPECT_EQ(placed.points.size(), 3U * 365U * 8U);
  EXPECT_EQ(placed.last(), at("2028-01-01T00:00-08:00"));
  EXPECT_TRUE(placed.gaps.empty());
  EXPECT_NEAR(air_at(placed, "2026-01-01T00:00-08:00"), 36.4, 1e-9);
  EXPECT_NEAR(air_at(placed, "2026-01-01T03:00-08:00"), 0.0, 1e-9);
}

TEST(Place, ALeapYearRepeats28February) {
  const Weather placed = place(read(whole_year(2017)), 2028).value();
  EXPECT_EQ(placed.points.size(), 366U * 8U);
  EXPECT_TRUE(placed.gaps.empty());
  // 28 February is the 59th day; its midnight is 00:00 of the 29th.
  EXPECT_NEAR(air_at(placed, "2028-02-29T00:00-08:00"), 5.8, 1e-9);
  EXPECT_NEAR(air_at(placed, "2028-02-29T12:00-08:00"), 5.8, 1e-9);
  EXPECT_NEAR(air_at(placed, "2028-03-01T00:00-08:00"), 5.8, 1e-9);
  EXPECT_NEAR(air_at(placed, "2028-03-01T12:00-08:00"), 5.9, 1e-9);
  EXPECT_EQ(codes(placed.notices), (Codes{"weather.leap_day", "weather.placed"}));
}

TEST(Place, AYearWithoutLeapDayLeavesItOut) {
  const Weather weather = read(whole_year(2016));
  const Weather placed = place(weather, 2026).value();
  EXPECT_EQ(placed.points.size(), 365U * 8U);
  EXPECT_TRUE(placed.gaps.empty());
  EXPECT_NEAR(air_at(placed, "2026-03-01T00:00-08:00"), 5.8, 1e-9);
  EXPECT_NEAR(air_at(placed, "2026-03-01T03:00-08:00"), 6.0, 1e-9);
  EXPECT_EQ(codes(placed.notices), (Codes{"weather.leap_day", "weather.placed"}));
  // On a leap year it is all there.
  const Weather leap = place(weather, 2028).value();
  EXPECT_EQ(leap.points.size(), 366U * 8U);
  EXPECT_NEAR(air_at(leap, "2028-02-29T12:00-08:00"), 5.9, 1e-9);
  EXPECT_EQ(codes(leap.notices), Codes{"weather.placed"});
}

TEST(Place, ATypicalYearOfManyYearsIsPlaced) {
  const Weather weather =
      read(epw_header() + epw_row("1986,1,31,23,0") +
           epw_row("1986,1,31,24,0", {.air = "1.5", .dew = "1.0"}) + epw_row("1977,2,1,1,0"));
  const Weather placed = place(weather, 2026).value();
  EXPECT_EQ(placed.first(), at("2026-01-31T23:00-08:00"));
  EXPECT_EQ(placed.points[1].at, at("2026-02-01T00:00-08:00"));
  EXPECT_EQ(placed.points[2].at, at("2026-02-01T01:00-08:00"));
  EXPECT_NEAR(placed.points[1].air.in_celsius(), 1.5, 1e-9);
}

TEST(Place, AYearFromSummerToSummerIsTurnedRound) {
  const Weather weather =
      read(epw_header() + epw_row("2016,12,31,24,0") + epw_row("2017,1,1,1,0", {.air = "14.5"}));
  const Weather placed = place(weather, 2026).value();
  EXPECT_EQ(placed.first(), at("2026-01-01T01:00-08:00"));
  EXPECT_EQ(placed.last(), at("2027-01-01T00:00-08:00"));
  EXPECT_EQ(placed.gaps.size(), 1U);
}

TEST(Place, ATableCountsItsDaysFromMidnight) {
  const Weather weather = read(
      "time [-08:00],air [C],humidity [%]\n2025-02-28 23:00,1.5,50\n2025-03-01 00:00,2.5,50\n"
      "2025-03-01 01:00,3.5,50\n");
  const Weather placed = place(weather, 2028).value();
  EXPECT_NEAR(air_at(placed, "2028-02-28T23:00-08:00"), 1.5, 1e-9);
  EXPECT_NEAR(air_at(placed, "2028-02-29T23:00-08:00"), 1.5, 1e-9);
  EXPECT_NEAR(air_at(placed, "2028-03-01T00:00-08:00"), 2.5, 1e-9);
}

TEST(Place, MoreThanAYearAndOtherYearsAreRefused) {
  const auto code = [](const base::Result<Weather>& result) {
    return result ? std::string("was placed") : result.error().front().code;
  };
  const Weather year = read(whole_year(2017));
  EXPECT_EQ(code(place(year, 1969)), "weather.bad_year");
  EXPECT_EQ(code(place(year, 2037)), "was placed");
  EXPECT_EQ(code(place(year, 2037, 2)), "weather.bad_year");
  EXPECT_EQ(code(place(year, 2026, 0)), "weather.bad_year");
  EXPECT_EQ(code(place(year, 2020, 11)), "weather.bad_year");
  EXPECT_EQ(code(place(place(year, 2025, 2).value(), 2028)), "weather.more_than_a_year");
  std::string days = "time [UTC],air [C]\n";
  for (int h = 0; h <= 366 * 24; h += 3) {
    days += utc(at("2025-06-01T00:00Z") + hours(h)) + ",1.5\n";
  }
  EXPECT_EQ(code(place(read(days), 2027)), "weather.more_than_a_year");
  EXPECT_EQ(
      code(place(read(epw_header() + epw_row("2016,2,29,1,0") + epw_row("2016,2,29,2,0")), 2026)),
      "weather.too_short");
}

}  // namespace
}  // namespace wetout::climate::test
