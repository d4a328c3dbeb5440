#include "wetout/time/zone.hpp"

#include <gtest/gtest.h>

#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;
using std::chrono::sys_days;
using namespace std::chrono_literals;

std::string hint_for(std::string_view name) { return Zone::named(name).error().at(0).hint; }

TEST(Zone, IsUtcByDefault) {
  EXPECT_EQ(Zone().name(), "UTC");
  EXPECT_EQ(Zone().offset_at(Instant(1'700'000'000s)), seconds{0});
  EXPECT_EQ(Zone::named("UTC")->name(), "UTC");
}

TEST(Zone, UnknownNamesComeWithTheOneMeant) {
  EXPECT_EQ(Zone::named("America/Los_Angles").error().at(0).code, "zone.unknown");
  EXPECT_EQ(Zone::named("America/Los_Angles").error().at(0).found, "America/Los_Angles");
  EXPECT_EQ(hint_for("America/Los_Angles"), "did you mean \"America/Los_Angeles\"?");
  EXPECT_EQ(hint_for("america/los_angeles"), "did you mean \"America/Los_Angeles\"?");
  EXPECT_EQ(hint_for("Los Angeles"), "did you mean \"America/Los_Angeles\"?");
  EXPECT_EQ(hint_for("Europe/Lisboa"), "did you mean \"Europe/Lisbon\"?");
  EXPECT_EQ(hint_for(""), "names are a continent and a city, such as \"America/Los_Angeles\"");
  EXPECT_FALSE(Zone::named("../../etc/passwd"));
  EXPECT_FALSE(Zone::named(std::string(100'000, 'x')));
}

// Rule of the United States since 2007 (usc15s260a: 15 U.S.C. 260a, from memory):
// second Sunday of March to first Sunday of November, changing at 2:00 wall time. In 2026 these
// are 8 March and 1 November; Pacific standard time is UTC-8.
TEST(Zone, PacificTimeChangesOnTheDaysOfTheLaw) {
  const Zone zone = *Zone::named("America/Los_Angeles");
  const Instant spring = sys_days(2026y / 3 / 8) + 10h;  // 2:00 at UTC-8
  EXPECT_EQ(zone.offset_at(spring - 1s), -8h);
  EXPECT_EQ(zone.offset_at(spring), -7h);
  const Instant autumn = sys_days(2026y / 11 / 1) + 9h;  // 2:00 at UTC-7
  EXPECT_EQ(zone.offset_at(autumn - 1s), -7h);
  EXPECT_EQ(zone.offset_at(autumn), -8h);
}

// The last year the database spells out: the second Sunday of March 2037 is the 8th.
TEST(Zone, RulesReachTheEndOf2037) {
  const Zone zone = *Zone::named("America/Los_Angeles");
  EXPECT_EQ(zone.offset_at(sys_days(2037y / 3 / 8) + 10h - 1s), -8h);
  EXPECT_EQ(zone.offset_at(sys_days(2037y / 3 / 8) + 10h), -7h);
  EXPECT_EQ(zone.offset_at(sys_days(2037y / 12 / 31)), -8h);
}

TEST(Zone, WallTimesReadBack) {
  // Every half hour of 2026: a wall time read once comes back, one read twice comes back as one of
  // its two, and no instant shows a wall time that does not exist.
  for (const char* name :
       {"America/Los_Angeles", "Europe/Lisbon", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC"}) {
    const Zone zone = *Zone::named(name);
    int twice = 0;
    for (Instant at = sys_days(2026y / 1 / 1); at < sys_days(2027y / 1 / 1); at += 30min) {
      const WallReading reading = zone.read(zone.wall(at));
      ASSERT_NE(reading.kind, WallReading::Kind::skipped);
      ASSERT_TRUE(reading.first == at || reading.second == at) << rfc3339(at, Zone());
      twice += reading.kind == WallReading::Kind::twice ? 1 : 0;
    }
    // One hour is seen twice: two half hours, each from two instants; Lord Howe moves by half.
    const std::string_view zone_name = name;
    EXPECT_EQ(twice, zone_name == "Australia/Lord_Howe"                    ? 2
                     : zone_name == "Asia/Kathmandu" || zone_name == "UTC" ? 0
                                                                           : 4)
        << name;
  }
}

TEST(Zone, SkippedWallTimesHaveBothReadings) {
  const Zone zone = *Zone::named("America/Los_Angeles");
  const WallReading reading = zone.read(std::chrono::local_days(2026y / 3 / 8) + 2h + 30min);
  EXPECT_EQ(reading.kind, WallReading::Kind::skipped);
  EXPECT_EQ(reading.first, sys_days(2026y / 3 / 8) + 10h + 30min);  // at UTC-8
  EXPECT_EQ(reading.second, sys_days(2026y / 3 / 8) + 9h + 30min);  // at UTC-7
}

}  // namespace
}  // namespace wetout::time
