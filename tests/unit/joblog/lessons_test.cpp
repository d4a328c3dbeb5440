// Which events are learned from: left aside, counted again, in logs that had no lessons too.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>

#include "joblog/migrate.hpp"
#include "raw_log.hpp"
#include "record_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::sample_events;
using testing::sample_plan;

std::string code(const auto& result) { return result ? "" : result.error().at(0).code; }

// Events 1 mixed, 2 left, 3 done, 4 a note.
Log recorded() {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  NewEvents call = sample_events(1);
  call.events.push_back({.token = "n", .kind = EventKind::note, .facts = {.note = "warm"}});
  EXPECT_TRUE(log.record_events(call));
  return log;
}

TEST(Lessons, CountUntilTheyAreLeftAside) {
  Log log = recorded();
  EXPECT_TRUE(log.event(1)->counts);
  const auto aside = log.set_lesson(1, false, Instant{});
  ASSERT_TRUE(aside);
  EXPECT_FALSE(aside->already || aside->row.counts);
  EXPECT_FALSE(log.event(1)->counts);
  EXPECT_TRUE(log.event(2)->counts);
  EXPECT_EQ(log.events("sandpiper").size(), 4U) << "it stays recorded";
  EXPECT_TRUE(log.set_lesson(1, false, Instant{})->already);
  EXPECT_FALSE(log.set_lesson(1, true, Instant{})->already);
  EXPECT_TRUE(log.events("sandpiper").front().counts);
  EXPECT_TRUE(log.set_lesson(2, true, Instant{})->already) << "it counted all the time";
}

TEST(Lessons, AreOnlyOfWhatTeaches) {
  Log log = recorded();
  EXPECT_EQ(code(log.set_lesson(9, false, Instant{})), "event.unknown");
  EXPECT_EQ(code(log.set_lesson(4, false, Instant{})), "event.no_lesson");
  ASSERT_TRUE(log.undo_event({.token = "u", .number = 2, .recorded = Instant{}}));
  EXPECT_EQ(code(log.set_lesson(2, false, Instant{})), "event.undone");
  EXPECT_EQ(code(log.foresee_lesson(2, false)), "event.undone");
}

TEST(Lessons, AreForeseenWithoutBeingKept) {
  Log log = recorded();
  EXPECT_FALSE(log.foresee_lesson(1, false)->row.counts);
  EXPECT_TRUE(log.event(1)->counts);
}

TEST(Lessons, OfACallAreKeptTogether) {
  Log log = recorded();
  const auto kept = log.together([&]() -> base::Result<void> {
    EXPECT_TRUE(log.set_lesson(1, false, Instant{}));
    const auto second = log.set_lesson(9, false, Instant{});
    return second ? base::Result<void>() : tl::unexpected(second.error());
  });
  EXPECT_FALSE(kept);
  EXPECT_TRUE(log.event(1)->counts);
}

TEST(Lessons, ThatSomebodyHasBeenAtAreFound) {
  const std::pair<const char*, const char*> deeds[] = {
      {"DROP TRIGGER lesson_no_delete; DELETE FROM lesson WHERE id = 1",
       "there are 1 lessons, the last is 2"},
      {"DROP TRIGGER lesson_no_update; UPDATE lesson SET counts = 0", "lesson 2 changes nothing"},
      {"DROP TRIGGER lesson_no_update; UPDATE lesson SET counts = 1", "lesson 1 changes nothing"}};
  for (const auto& [sql, expected] : deeds) {
    testing::RawLog raw;
    SQLite::Database(raw.path(), SQLite::OPEN_READWRITE).exec(sql);
    std::string found;
    for (const Finding& one : check(raw.path())) {
      if (one.code == "lessons" && found.empty()) found = one.text;
    }
    EXPECT_EQ(found, expected);
  }
}

class LessonsOfOldLogs : public ::testing::TestWithParam<int> {};

TEST_P(LessonsOfOldLogs, BeginWithTheFirst) {
  const testing::TempFolder folder;
  const auto path = folder / "log.db";
  SQLite::Database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
      .exec(testing::read_bytes(std::filesystem::path(JOBLOG_TEST_DATA) /
                                ("version_" + std::to_string(GetParam()) + ".sql")));
  const auto before = testing::snapshot(folder.path());
  std::vector<EventRow> events;
  {
    const Log log = Log::open(path, testing::reading());
    events = log.events("sandpiper");
    for (const EventRow& event : events) EXPECT_TRUE(event.counts);
  }
  EXPECT_TRUE(testing::snapshot(folder.path()) == before);
  {
    Log log = Log::open(path, testing::writing());
    EXPECT_EQ(log.info().schema_version, latest(migrations()));
    if (!events.empty()) {
      EXPECT_TRUE(log.set_lesson(1, false, Instant{}));
    }
    if (GetParam() == 3) {
      EXPECT_EQ(log.stock().at(0).quantity, 300'000);
    }
  }
  EXPECT_TRUE(check(path).empty());
}

INSTANTIATE_TEST_SUITE_P(All, LessonsOfOldLogs, ::testing::Values(1, 2, 3),
                         [](const auto& run) { return "Version" + std::to_string(run.param); });

}  // namespace
}  // namespace wetout::joblog
