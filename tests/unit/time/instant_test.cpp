#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cstdint>
#include <string>

#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

using std::chrono::sys_days;
using namespace std::chrono_literals;

Zone pacific() { return *Zone::named("America/Los_Angeles"); }

Instant utc(std::string_view text) {
  const base::Result<Instant> instant = read_instant(text, Zone());
  EXPECT_TRUE(instant) << text << ": " << instant.error()[0].message;
  return instant.value_or(Instant::min());
}

base::Problem refusal(std::string_view text, const Zone& zone = Zone()) {
  const base::Result<Instant> instant = read_instant(text, zone);
  if (instant) return {.code = "(read)"};
  return instant.error().at(0);
}

// rfc3339 (RFC 3339, July 2002), section 5.8: each example with what the text there says it means.
TEST(ReadInstant, Rfc3339Examples) {
  EXPECT_EQ(utc("1985-04-12T23:20:50.52Z"), sys_days(1985y / 4 / 12) + 23h + 20min + 50s);
  EXPECT_EQ(utc("1996-12-19T16:39:57-08:00"), utc("1996-12-20T00:39:57Z"));
  EXPECT_EQ(utc("1990-12-31T23:59:60Z"), sys_days(1991y / 1 / 1));
  EXPECT_EQ(utc("1990-12-31T15:59:60-08:00"), utc("1990-12-31T23:59:60Z"));
  // "Noon, January 1, 1937, Netherlands time", 20 minutes ahead of UTC.
  EXPECT_EQ(utc("1937-01-01T12:00:27.87+00:20"), utc("1937-01-01T11:40:27Z"));
}

TEST(ReadInstant, TakesAnOffsetAsItStands) {
  EXPECT_EQ(*read_instant("2026-06-14T18:30:00+02:00", pacific()), utc("2026-06-14T16:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14T18:30Z", pacific()), utc("2026-06-14T18:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14t18:30:00z", pacific()), utc("2026-06-14T18:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14 18:30-07:00", pacific()), utc("2026-06-15T01:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14T18:30:00-00:00", pacific()), utc("2026-06-14T18:30:00Z"));
}

TEST(ReadInstant, TakesWallTimesInTheZone) {
  EXPECT_EQ(*read_instant("2026-06-14 18:30", pacific()), utc("2026-06-15T01:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14T18:30", pacific()), utc("2026-06-15T01:30:00Z"));
  EXPECT_EQ(*read_instant("2026-06-14T18:30:15", pacific()), utc("2026-06-15T01:30:15Z"));
  EXPECT_EQ(*read_instant("2026-12-14 18:30", pacific()), utc("2026-12-15T02:30:00Z"));
  EXPECT_EQ(*read_instant(" 2026-06-14  18:30 ", pacific()), utc("2026-06-15T01:30:00Z"));
}

// United States rule, see zone_test.cpp.
TEST(ReadInstant, RefusesAWallTimeThatDoesNotExist) {
  const base::Problem problem = refusal("2026-03-08 02:30", pacific());
  EXPECT_EQ(problem.code, "time.skipped");
  EXPECT_EQ(problem.found, "2026-03-08 02:30");
  EXPECT_EQ(problem.hint, "write \"2026-03-08T03:30:00-07:00\" or \"2026-03-08T01:30:00-08:00\"");
  EXPECT_EQ(refusal("2026-03-08 02:00", pacific()).code, "time.skipped");
  EXPECT_EQ(refusal("2026-03-08 02:59", pacific()).code, "time.skipped");
  EXPECT_EQ(refusal("2026-03-08 01:59", pacific()).code, "(read)");
  EXPECT_EQ(refusal("2026-03-08 03:00", pacific()).code, "(read)");
}

TEST(ReadInstant, RefusesAWallTimeThatExistsTwice) {
  const base::Problem problem = refusal("2026-11-01 01:30", pacific());
  EXPECT_EQ(problem.code, "time.twice");
  EXPECT_EQ(problem.hint, "write \"2026-11-01T01:30:00-07:00\" or \"2026-11-01T01:30:00-08:00\"");
  EXPECT_EQ(refusal("2026-11-01 01:00", pacific()).code, "time.twice");
  EXPECT_EQ(refusal("2026-11-01 00:59", pacific()).code, "(read)");
  EXPECT_EQ(refusal("2026-11-01 02:00", pacific()).code, "(read)");
}

TEST(ReadInstant, BothReadingsOfAHintAreRead) {
  EXPECT_EQ(utc("2026-11-01T01:30:00-08:00") - utc("2026-11-01T01:30:00-07:00"), 1h);
}

TEST(ReadInstant, RefusesWhatTheCalendarOrTheClockDoesNotHave) {
  for (const char* text : {"2026-02-29 12:00",
                           "1900-02-29T12:00:00Z",
                           "2026-04-31 12:00",
                           "2026-13-01 12:00",
                           "2026-00-01 12:00",
                           "2026-06-00 12:00",
                           "0000-01-01T00:00:00Z",
                           "2026-06-14 24:00",
                           "2026-06-14 12:60",
                           "2026-06-14T12:00:61Z",
                           "2026-06-14T12:00:60Z",
                           "2026-06-14 8:30",
                           "2026-06-14T12:00:00+24:00",
                           "2026-06-14T12:00:00+0700",
                           "2026-06-14T12:00:00 x",
                           "2026-06-14T12:00:",
                           "2026-06-14T12:00:00.",
                           "2026-06-14T12",
                           "2026-06-14",
                           "18:30",
                           "26-06-14 18:30",
                           "6/14/2026 18:30",
                           "2026-6-14 18:30",
                           "12026-06-14 18:30",
                           "now",
                           "",
                           "2026-06-14T12:00:00Z2",
                           "+2026-06-14 18:30",
                           "-2026-06-14 18:30"}) {
    const base::Problem problem = refusal(text, pacific());
    EXPECT_EQ(problem.code, "time.bad") << text;
    EXPECT_NE(problem.expected.find("2026-06-14 18:30"), std::string::npos) << text;
  }
  EXPECT_EQ(refusal("2026-02-29 12:00").message, "2026-02 has 28 days");
  EXPECT_EQ(refusal("2026-06-14").hint, "write \"2026-06-14 18:30\"");
}

TEST(ReadInstant, KnowsLeapDays) {
  EXPECT_EQ(utc("2028-02-29T12:00:00Z") + std::chrono::days(1), utc("2028-03-01T12:00:00Z"));
  EXPECT_EQ(utc("2000-02-29T12:00:00Z") + std::chrono::days(1), utc("2000-03-01T12:00:00Z"));
}

TEST(ReadInstant, RefusesWallTimesBeyondTheRules) {
  EXPECT_EQ(refusal("2038-06-14 12:00", pacific()).code, "time.beyond");
  EXPECT_EQ(refusal("1969-12-31 12:00", pacific()).code, "time.beyond");
  EXPECT_EQ(refusal("2037-12-31 23:59", pacific()).code, "(read)");
  EXPECT_EQ(refusal("2038-06-14T12:00:00-07:00", pacific()).code, "(read)");
}

TEST(PrintInstant, HasTheOffsetOfItsZone) {
  const Instant at = utc("2026-06-15T01:30:05Z");
  EXPECT_EQ(rfc3339(at, pacific()), "2026-06-14T18:30:05-07:00");
  EXPECT_EQ(rfc3339(at, Zone()), "2026-06-15T01:30:05Z");
  EXPECT_EQ(rfc3339(at, *Zone::named("Asia/Kathmandu")), "2026-06-15T07:15:05+05:45");
  EXPECT_EQ(rfc3339(utc("2026-01-15T12:00:00Z"), *Zone::named("Europe/London")),
            "2026-01-15T12:00:00+00:00");
  EXPECT_EQ(clock_time(at, pacific()), "18:30");
  EXPECT_EQ(clock_time(utc("2026-06-15T07:05:59Z"), pacific()), "00:05");
  EXPECT_EQ(print_wall(at, pacific()), "Sun 14 Jun 2026 18:30");
  EXPECT_EQ(print_wall(utc("2028-02-29T09:05:00Z"), Zone()), "Tue 29 Feb 2028 09:05");
}

TEST(PrintInstant, IsInUtcWhereTheOffsetHasSeconds) {
  // Local mean time, before the railways' zones of November 1883.
  const Zone zone = pacific();
  const Instant at = sys_days(1880y / 1 / 1);
  ASSERT_NE(zone.offset_at(at).count() % 60, 0);
  EXPECT_EQ(rfc3339(at, zone), "1880-01-01T00:00:00Z");
}

TEST(PrintInstant, BeyondFourDigitsOfYearIsABug) {
  EXPECT_THROW(rfc3339(sys_days(10000y / 1 / 1), Zone()), std::logic_error);
}

RC_GTEST_PROP(PrintInstant, ReadsBack, ()) {
  const auto count = *rc::gen::inRange<std::int64_t>(-62'135'596'800, 253'402'300'800);
  const Instant at{std::chrono::seconds(count)};
  RC_ASSERT(*read_instant(rfc3339(at, Zone()), pacific()) == at);
  const auto in_range = *rc::gen::inRange<std::int64_t>(0, 2'145'916'800);  // 1970 to 2037
  const Instant near{std::chrono::seconds(in_range)};
  RC_ASSERT(*read_instant(rfc3339(near, pacific()), Zone()) == near);
}

RC_GTEST_PROP(ReadInstant, SurvivesAnyText, ()) {
  const auto text = *rc::gen::container<std::string>(rc::gen::oneOf(
      rc::gen::elementOf(std::string("0123456789-:T Z+.")), rc::gen::arbitrary<char>()));
  const base::Result<Instant> instant = read_instant(text, pacific());
  RC_ASSERT(instant.has_value() || !instant.error().at(0).message.empty());
}

}  // namespace
}  // namespace wetout::time
