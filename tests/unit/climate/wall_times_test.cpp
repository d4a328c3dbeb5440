// Wall times of CSV files where clocks change. Los Angeles 2026: put forward on 8 March at 02:00,
// put back on 1 November at 02:00.
#include <gtest/gtest.h>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

std::string table(const std::vector<std::string>& times, std::string_view header = "time") {
  std::string out = std::string(header) + ",air [C],humidity [%]\n";
  double air = 10.5;
  for (const std::string& time : times) out += time + "," + std::to_string(air += 0.25) + ",50\n";
  return out;
}

std::vector<std::string> instants(const Weather& weather) {
  std::vector<std::string> out;
  for (const WeatherPoint& point : weather.points) out.push_back(utc(point.at));
  return out;
}

const WeatherOptions los_angeles = in_zone("America/Los_Angeles");

TEST(WallTimes, AreOfTheZoneGiven) {
  const Weather weather = read(table({"2026-06-14 10:00", "2026-06-14T11:00:00"}), los_angeles);
  EXPECT_EQ(weather.first(), at("2026-06-14T17:00Z"));
}

TEST(WallTimes, TheHeadersZoneGoesBeforeTheOptions) {
  const std::vector<std::string> times = {"2026-06-14 10:00", "2026-06-14 11:00"};
  EXPECT_EQ(read(table(times, "time [Europe/Lisbon]"), los_angeles).first(),
            at("2026-06-14T09:00Z"));
  const Weather fixed = read(table(times, "time [-08:00]"), los_angeles);
  EXPECT_EQ(fixed.first(), at("2026-06-14T18:00Z"));
  EXPECT_EQ(fixed.day_offset, std::chrono::hours(-8));
  EXPECT_EQ(read(table(times, "time [UTC]")).first(), at("2026-06-14T10:00Z"));
  EXPECT_EQ(read(table(times, "time (+05:45)")).first(), at("2026-06-14T04:15Z"));
}

TEST(WallTimes, OffsetsOfRowsGoBeforeTheZone) {
  const Weather weather =
      read(table({"2026-06-14 10:00Z", "2026-06-14 12:00+01:00", "2026-06-14 05:00"}), los_angeles);
  EXPECT_EQ(instants(weather),
            (Codes{"2026-06-14T10:00:00Z", "2026-06-14T11:00:00Z", "2026-06-14T12:00:00Z"}));
}

TEST(WallTimes, AnHourThatStandsTwiceIsToldApart) {
  const Weather weather =
      read(table({"2026-11-01 00:00", "2026-11-01 01:00", "2026-11-01 01:00", "2026-11-01 02:00"}),
           los_angeles);
  EXPECT_EQ(instants(weather), (Codes{"2026-11-01T07:00:00Z", "2026-11-01T08:00:00Z",
                                      "2026-11-01T09:00:00Z", "2026-11-01T10:00:00Z"}));
  EXPECT_EQ(codes(weather.notices), Codes{});
}

TEST(WallTimes, TheSameWithinTheHour) {
  const Weather weather = read(table({"2026-11-01 00:45", "2026-11-01 01:00", "2026-11-01 01:30",
                                      "2026-11-01 01:00", "2026-11-01 01:30", "2026-11-01 02:00"}),
                               los_angeles);
  EXPECT_EQ(instants(weather),
            (Codes{"2026-11-01T07:45:00Z", "2026-11-01T08:00:00Z", "2026-11-01T08:30:00Z",
                   "2026-11-01T09:00:00Z", "2026-11-01T09:30:00Z", "2026-11-01T10:00:00Z"}));
}

TEST(WallTimes, AnHourThatStandsOnceThoughItExistsTwiceIsRefused) {
  const base::Problem problem =
      refusal(table({"2026-11-01 00:00", "2026-11-01 01:00", "2026-11-01 02:00"}), los_angeles);
  EXPECT_EQ(problem.code, "time.twice");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.found, "2026-11-01T01:00:00");
  EXPECT_EQ(problem.expected, "\"2026-11-01T01:00:00-07:00\" or \"2026-11-01T01:00:00-08:00\"");
}

TEST(WallTimes, ARunAtTheEndOfTheFileIsLookedAt) {
  EXPECT_EQ(refusal(table({"2026-11-01 00:00", "2026-11-01 01:00"}), los_angeles).line, 3);
  EXPECT_EQ(instants(read(table({"2026-11-01 01:00", "2026-11-01 01:00"}), los_angeles)),
            (Codes{"2026-11-01T08:00:00Z", "2026-11-01T09:00:00Z"}));
}

TEST(WallTimes, AnHourThatIsSkippedIsRefused) {
  const base::Problem problem =
      refusal(table({"2026-03-08 01:00", "2026-03-08 02:00", "2026-03-08 03:00"}), los_angeles);
  EXPECT_EQ(problem.code, "time.skipped");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.key, "time");
  EXPECT_EQ(problem.found, "2026-03-08T02:00:00");
}

TEST(WallTimes, AClockWithoutSummerTimeIsReadByItsOffset) {
  const Weather weather =
      read(table({"2026-03-08 01:00", "2026-03-08 02:00", "2026-03-08 03:00"}, "time [-08:00]"));
  EXPECT_EQ(instants(weather),
            (Codes{"2026-03-08T09:00:00Z", "2026-03-08T10:00:00Z", "2026-03-08T11:00:00Z"}));
}

TEST(WallTimes, ASkippedHourLeavesNoGap) {
  const Weather weather =
      read(table({"2026-03-08 00:00", "2026-03-08 01:00", "2026-03-08 03:00", "2026-03-08 04:00"}),
           los_angeles);
  EXPECT_TRUE(weather.gaps.empty());
}

}  // namespace
}  // namespace wetout::climate::test
