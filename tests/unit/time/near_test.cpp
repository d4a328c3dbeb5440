#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <string>

#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"
#include "wetout/time/read_near.hpp"

namespace wetout::time {
namespace {

using namespace std::chrono_literals;

Zone pacific() { return *Zone::named("America/Los_Angeles"); }

Instant utc(std::string_view text) { return read_instant(text, Zone()).value(); }

std::string read(std::string_view text, std::string_view now, Side side,
                 const Zone& zone = pacific()) {
  const base::Result<Instant> instant = read_near(text, zone, *read_instant(now, zone), side);
  return instant ? rfc3339(*instant, zone) : instant.error().at(0).code;
}

TEST(ReadNear, TakesTheLatestPastClockTime) {
  const std::string now = "2026-06-13 09:15";
  EXPECT_EQ(read("08:30", now, Side::past), "2026-06-13T08:30:00-07:00");
  EXPECT_EQ(read("09:15", now, Side::past), "2026-06-13T09:15:00-07:00") << "now itself";
  EXPECT_EQ(read("09:16", now, Side::past), "2026-06-12T09:16:00-07:00");
  EXPECT_EQ(read("23:59", now, Side::past), "2026-06-12T23:59:00-07:00");
  EXPECT_EQ(read("00:00", now, Side::past), "2026-06-13T00:00:00-07:00");
  EXPECT_EQ(read(" 8:30 ", now, Side::past), "2026-06-13T08:30:00-07:00");
  EXPECT_EQ(read("08:30:15", now, Side::past), "2026-06-13T08:30:15-07:00");
}

TEST(ReadNear, TakesTheNextComingClockTime) {
  const std::string now = "2026-06-13 18:30";
  EXPECT_EQ(read("18:31", now, Side::coming), "2026-06-13T18:31:00-07:00");
  EXPECT_EQ(read("18:30", now, Side::coming), "2026-06-13T18:30:00-07:00") << "now itself";
  EXPECT_EQ(read("18:29", now, Side::coming), "2026-06-14T18:29:00-07:00");
  EXPECT_EQ(read("00:00", now, Side::coming), "2026-06-14T00:00:00-07:00");
  EXPECT_EQ(read("18:30", "2026-06-13 18:30:01", Side::coming), "2026-06-14T18:30:00-07:00");
}

TEST(ReadNear, ReadsOnTheClockOfTheZoneWhateverTheDayIsInUtc) {
  // 18:30 on Saturday in California is Sunday in UTC.
  const Instant now = utc("2026-06-14T02:00:00Z");
  EXPECT_EQ(*read_near("18:30", pacific(), now, Side::past), utc("2026-06-14T01:30:00Z"));
  EXPECT_EQ(*read_near("18:30", Zone(), now, Side::past), utc("2026-06-13T18:30:00Z"));
}

TEST(ReadNear, TakesWholeTimesAsTheyStand) {
  const std::string now = "2026-06-13 18:30";
  for (const Side side : {Side::past, Side::coming}) {
    EXPECT_EQ(read("2026-06-14 18:30", now, side), "2026-06-14T18:30:00-07:00");
    EXPECT_EQ(read("2026-06-14T18:30:00Z", now, side), "2026-06-14T11:30:00-07:00");
    EXPECT_EQ(read("2020-01-01 00:00", now, side), "2020-01-01T00:00:00-08:00");
  }
}

// United States rule, see zone_test.cpp: on 8 March 2026 clocks go from 02:00 to 03:00, on
// 1 November from 02:00 back to 01:00.
TEST(ReadNear, RefusesATimeThatTheClockSkipped) {
  EXPECT_EQ(read("02:30", "2026-03-08 10:00", Side::past), "time.skipped");
  EXPECT_EQ(read("02:30", "2026-03-08 01:59:59", Side::past), "2026-03-07T02:30:00-08:00");
  EXPECT_EQ(read("02:30", "2026-03-08 03:00", Side::past), "time.skipped");
  EXPECT_EQ(read("02:30", "2026-03-09 10:00", Side::past), "2026-03-09T02:30:00-07:00");
  EXPECT_EQ(read("02:30", "2026-03-07 10:00", Side::coming), "time.skipped");
  EXPECT_EQ(read("02:30", "2026-03-08 01:59:59", Side::coming), "time.skipped");
  EXPECT_EQ(read("02:30", "2026-03-08 03:00", Side::coming), "2026-03-09T02:30:00-07:00");
  const auto refused =
      read_near("02:30", pacific(), utc("2026-03-08T20:00:00Z"), Side::past).error();
  EXPECT_EQ(refused[0].found, "2026-03-08 02:30:00");
  EXPECT_EQ(refused[0].hint,
            "write \"2026-03-08T03:30:00-07:00\" or \"2026-03-08T01:30:00-08:00\"");
}

TEST(ReadNear, RefusesATimeThatTheClockShowsTwice) {
  EXPECT_EQ(read("01:30", "2026-11-01 10:00", Side::past), "time.twice");
  EXPECT_EQ(read("01:30", "2026-10-31 10:00", Side::coming), "time.twice");
  const auto refused =
      read_near("01:30", pacific(), utc("2026-11-01T20:00:00Z"), Side::past).error();
  EXPECT_EQ(refused[0].hint,
            "write \"2026-11-01T01:30:00-07:00\" or \"2026-11-01T01:30:00-08:00\"");
}

TEST(ReadNear, KnowsOfTwoTheOneThatIsOnTheRightSide) {
  const std::string first = "2026-11-01T01:45:00-07:00";
  const std::string second = "2026-11-01T01:15:00-08:00";
  EXPECT_EQ(read("01:30", first, Side::past), "2026-11-01T01:30:00-07:00");
  EXPECT_EQ(read("01:30", second, Side::past), "2026-11-01T01:30:00-07:00");
  EXPECT_EQ(read("01:30", first, Side::coming), "2026-11-01T01:30:00-08:00");
  EXPECT_EQ(read("01:30", second, Side::coming), "2026-11-01T01:30:00-08:00");
}

// Havana puts its clocks back from 01:00 to 00:00 (tz database, region file northamerica).
TEST(ReadNear, WorksWhereClocksArePutBackAtMidnight) {
  const Zone havana = *Zone::named("America/Havana");
  EXPECT_EQ(read("00:30", "2026-11-01T00:10:00-05:00", Side::past, havana),
            "2026-11-01T00:30:00-04:00");
  EXPECT_EQ(read("23:50", "2026-11-01T00:10:00-05:00", Side::past, havana),
            "2026-10-31T23:50:00-04:00");
}

TEST(ReadNear, SaysWhatIsWrong) {
  const auto problem = [](std::string_view text) {
    return read_near(text, pacific(), utc("2026-06-13T16:15:00Z"), Side::past).error().at(0);
  };
  for (const char* text :
       {"", "noon", "18", "18.30", "1830", "18:3", "18:300", "25:00", "24:00", "18:60", "18:30:60",
        "18:30 or so", "6:30 pm", "6pm", "6 p.m.", "18:30-07:00", "-18:30", "2026-06-14", "m"}) {
    EXPECT_EQ(problem(text).code, "time.bad") << text;
    EXPECT_NE(problem(text).expected.find("\"18:30\""), std::string::npos) << text;
  }
  EXPECT_EQ(problem("6:30 pm").hint, "half past six in the evening is 18:30");
  EXPECT_EQ(problem("24:00").hint, "midnight is 00:00");
  EXPECT_EQ(problem("18:3").hint, "write hours and minutes, such as 08:30");
  EXPECT_EQ(problem("2026-06-14").hint, "write \"2026-06-14 18:30\"");
}

// Against the slowest way there is: minute by minute away from now.
RC_GTEST_PROP(ReadNear, IsTheFirstMinuteThatShowsTheTime, ()) {
  const Zone zone = pacific();
  // Two years around both changes of clocks.
  const Instant now =
      utc("2026-01-01T00:00:00Z") + std::chrono::minutes(*rc::gen::inRange(0, 2 * 365 * 24 * 60));
  const auto clock = std::chrono::minutes(*rc::gen::inRange(0, 24 * 60));
  const bool past = *rc::gen::arbitrary<bool>();
  const auto text = clock_time(Instant(clock), Zone());
  const auto got = read_near(text, zone, now, past ? Side::past : Side::coming);
  if (!got) RC_DISCARD("never or twice");
  Instant at = now;
  for (int i = 0; i <= 25 * 60 && clock_time(at, zone) != text; ++i) at += past ? -1min : 1min;
  RC_ASSERT(*got == at);
}

}  // namespace
}  // namespace wetout::time
