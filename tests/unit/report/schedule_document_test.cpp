#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "schedule_sample.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::ordered_json;

std::vector<ScheduleDocument> samples() {
  return {sample::schedule(), sample::schedule_of_two(), sample::schedule_impossible(),
          sample::schedule_bare()};
}

TEST(ScheduleDocument, ReadBackGivesTheSameBytes) {
  for (const ScheduleDocument& document : samples()) {
    const std::string json = to_json(document);
    const auto read = read_schedule(json);
    ASSERT_TRUE(read) << read.error().front().key;
    EXPECT_EQ(to_json(*read), json);
  }
}

// Each path once, with what stands there: an element of a list counts as any other of it.
void collect(const Json& node, const std::string& path,
             std::map<std::string, std::set<bool>>& out) {
  if (node.is_array()) {
    for (const Json& each : node) collect(each, path + "[]", out);
  } else if (node.is_object()) {
    for (const auto& [key, value] : node.items()) collect(value, path + "." + key, out);
  }
  out[path].insert(node.is_null());
}

// What may be null in the schema, and must be met both ways by the samples.
TEST(ScheduleDocument, SamplesHoldEveryOptionalValueBothWays) {
  std::map<std::string, std::set<bool>> found;
  for (const ScheduleDocument& document : samples()) {
    collect(Json::parse(to_json(document)), "", found);
  }
  std::size_t both = 0;
  for (const auto& [path, nulls] : found) {
    if (nulls.contains(true)) {
      EXPECT_TRUE(nulls.contains(false)) << path;
      ++both;
    }
  }
  EXPECT_EQ(both, 49U);  // as many as the document has, and a limit of a notice
}

TEST(ScheduleDocument, KeepsWhatItWasGiven) {
  const ScheduleDocument given = sample::schedule();
  const ScheduleDocument kept = *read_schedule(to_json(given));
  EXPECT_EQ(kept.number, 4);
  EXPECT_EQ(kept.jobs[0].revision, 2);
  EXPECT_EQ(kept.prefer, "finish");
  ASSERT_EQ(kept.timeline.size(), given.timeline.size());
  for (std::size_t i = 0; i < given.timeline.size(); ++i) {
    EXPECT_EQ(kept.timeline[i].id, given.timeline[i].id);
    EXPECT_EQ(kept.timeline[i].state, given.timeline[i].state);
    EXPECT_EQ(kept.timeline[i].start, given.timeline[i].start);
    EXPECT_EQ(kept.timeline[i].milestones.size(), given.timeline[i].milestones.size());
  }
  ASSERT_TRUE(kept.objective);
  EXPECT_EQ(kept.objective->tight, given.objective->tight);
  EXPECT_EQ(kept.cautions, given.cautions);
  EXPECT_EQ(kept.notices, given.notices);
  EXPECT_EQ(kept.assumptions, given.assumptions);
  EXPECT_EQ(read_schedule(to_json(sample::schedule_bare()))->number, 0);
}

// 0.05 K of air is a minute of a film that gels in 6 h.
TEST(ScheduleDocument, KeepsTheAirFineEnoughForFilms) {
  ScheduleDocument document = sample::schedule();
  document.weather.series[3].room = units::Temperature::celsius(21.12345);
  const ScheduleDocument kept = *read_schedule(to_json(document));
  EXPECT_NEAR(kept.weather.series[3].room.in_celsius(), 21.12345, 5.1e-5);
}

TEST(ScheduleDocument, HasTheNamesOfTheInterface) {
  const Json json = Json::parse(to_json(sample::schedule()));
  EXPECT_EQ(json["format"], "wetout.schedule/1");
  EXPECT_EQ(json["horizon"]["step_min"], 5);
  EXPECT_EQ(json["weather"]["room"]["lag_h"], 2.5);
  EXPECT_TRUE(json["resins"][0]["milestones"][0].contains("at_c"));
  EXPECT_TRUE(json["steps"][0].contains("attended_min"));
  EXPECT_TRUE(json["timeline"][0].contains("core_change_c"));
  EXPECT_EQ(json["objective"]["slack"], Json::parse("[1, 1, 0, 0, 1]"));
  for (const Json& step : json["timeline"]) {
    for (const Json& slack : step["slack"]) EXPECT_TRUE(slack.contains("shift_that_breaks_it_c"));
  }
}

TEST(ReadSchedule, NamesMissingAndWrongKeysByTheirPath) {
  Json json = Json::parse(to_json(sample::schedule()));
  json["timeline"][3].erase("room_c");
  json["steps"][2]["after"][0]["min_lag_min"] = "soon";
  json["timeline"][4]["state"] = "perhaps";
  json["objective"]["slack"][1] = -1;
  const auto read = read_schedule(json.dump());
  ASSERT_FALSE(read);
  std::set<std::string> keys;
  for (const base::Problem& problem : read.error()) {
    EXPECT_EQ(problem.code, "document.key");
    keys.insert(problem.key);
  }
  EXPECT_EQ(keys, (std::set<std::string>{"timeline[3].room_c", "steps[2].after[0].min_lag_min",
                                         "timeline[4].state", "objective.slack[1]"}));
}

TEST(ReadSchedule, IgnoresKeysOfLaterVersionsAndRefusesOtherFormats) {
  const std::string bytes = to_json(sample::schedule());
  Json json = Json::parse(bytes);
  json["tide"] = "high";
  json["timeline"][0]["colour"] = "clear";
  const auto read = read_schedule(json.dump());
  ASSERT_TRUE(read);
  EXPECT_EQ(to_json(*read), bytes);
  json["format"] = "wetout.schedule/2";
  const auto later = read_schedule(json.dump());
  ASSERT_FALSE(later);
  EXPECT_EQ(later.error()[0].code, "document.format");
  EXPECT_EQ(read_schedule("[]").error()[0].code, "document.syntax");
  EXPECT_EQ(read_schedule("[]").error()[0].expected, R"({"format": "wetout.schedule/1", ...})");
}

}  // namespace
}  // namespace wetout::report
