// Bringing a log up to date. The versions above the shipped ones exist only here.
#include "joblog/migrate.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>

#include <vector>

#include "joblog/connection.hpp"
#include "joblog/errors.hpp"
#include "joblog/inspect.hpp"
#include "raw_log.hpp"
#include "record_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::outcome;
using testing::read_bytes;
using testing::reading;
using testing::TempFolder;
using testing::writing;

using Steps = std::vector<Migration>;

/// The shipped steps and one more.
Steps shipped_and(const char* sql) {
  Steps steps(migrations().begin(), migrations().end());
  steps.push_back({latest(migrations()) + 1, sql});
  return steps;
}

// Adds a column and a table, as a later version may.
constexpr const char* addition =
    "ALTER TABLE job ADD COLUMN colour TEXT NOT NULL DEFAULT 'red';"
    "CREATE TABLE colour(id INTEGER PRIMARY KEY, plan INTEGER REFERENCES plan) STRICT;"
    "INSERT INTO colour SELECT id, id FROM plan;";

// Rebuilds a table that others refer to: what foreign keys would not allow while they are on.
constexpr const char* rebuild =
    "CREATE TABLE job_new(id INTEGER PRIMARY KEY, slug TEXT NOT NULL UNIQUE, name TEXT NOT NULL,"
    "  created INTEGER NOT NULL, archived INTEGER, note TEXT) STRICT;"
    "INSERT INTO job_new SELECT id, slug, name, created, archived, NULL FROM job;"
    "DROP TRIGGER job_no_delete;"
    "DROP TABLE job;"
    "ALTER TABLE job_new RENAME TO job;";

std::string value(const Connection& connection, const std::string& query) {
  return connection.db->execAndGet(query).getString();
}

TEST(Migrations, AreNumberedWithoutGaps) {
  int version = 0;
  for (const Migration& step : migrations()) EXPECT_EQ(step.version, ++version);
  EXPECT_GE(version, 1);
  EXPECT_EQ(latest(migrations()), version);
}

TEST(Migrations, KeepEveryPlan) {
  for (const char* sql : {addition, rebuild}) {
    const TempFolder folder;
    testing::make_log(folder / "log.db", 5);
    const Steps steps = shipped_and(sql);
    {
      const Connection upgraded = open_log(folder / "log.db", writing(), steps);
      EXPECT_EQ(upgraded.version, latest(steps));
      EXPECT_EQ(value(upgraded, "PRAGMA user_version"), std::to_string(latest(steps)));
      EXPECT_EQ(value(upgraded, "PRAGMA foreign_keys"), "1");
      EXPECT_EQ(value(upgraded, "SELECT count(*) FROM plan"), "5");
      EXPECT_EQ(value(upgraded, "SELECT count(*) FROM plan_input"), "15");
      EXPECT_EQ(value(upgraded, "SELECT slug FROM job"), "sandpiper");
      EXPECT_TRUE(inspect(upgraded, steps).empty()) << summary(inspect(upgraded, steps));
    }
    EXPECT_EQ(outcome([&] { Log::open(folder / "log.db"); }), "newer") << "now it is a later log";
  }
}

TEST(Migrations, RunOnceEach) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 5);
  const Steps steps = shipped_and(addition);
  open_log(folder / "log.db", writing(), steps);
  const Connection again = open_log(folder / "log.db", writing(), steps);
  EXPECT_EQ(value(again, "SELECT count(*) FROM colour"), "5");
}

TEST(Migrations, AreAllUndoneWhenOneFails) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 3);
  const std::string before = read_bytes(folder / "log.db");
  Steps steps = shipped_and(addition);
  steps.push_back({latest(steps) + 1, "DELETE FROM plan"});  // meets the append-only trigger
  EXPECT_THROW(open_log(folder / "log.db", writing(), steps), std::logic_error);
  EXPECT_TRUE(read_bytes(folder / "log.db") == before);
  EXPECT_EQ(testing::difference(Log::open(folder / "log.db"), 3, 3), "");
}

TEST(Migrations, AreUndoneWhenTheyLoseARowThatOthersReferTo) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 3);
  const std::string before = read_bytes(folder / "log.db");
  const Steps steps = shipped_and("DROP TRIGGER job_no_delete; DELETE FROM job;");
  EXPECT_EQ(outcome([&] { open_log(folder / "log.db", writing(), steps); }), "damaged");
  EXPECT_TRUE(read_bytes(folder / "log.db") == before);
}

TEST(Migrations, OfALogThatIsOnlyReadHappenInMemory) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 5);
  const auto before = testing::snapshot(folder.path());
  const Steps steps = shipped_and(addition);
  {
    const Connection copy = open_log(folder / "log.db", reading(), steps);
    EXPECT_EQ(copy.version, latest(steps));
    EXPECT_EQ(value(copy, "SELECT count(*) FROM colour"), "5");
    EXPECT_EQ(value(copy, "SELECT colour FROM job"), "red");
  }
  EXPECT_TRUE(testing::snapshot(folder.path()) == before);
}

TEST(Migrations, OfAnOlderLogAreNotNeededToCheckOrCopyIt) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 2);
  const Steps steps = shipped_and(addition);
  const Connection older =
      open_as_it_is(folder / "log.db", Access::read, std::chrono::milliseconds(60), steps);
  EXPECT_EQ(older.version, latest(migrations()));
  EXPECT_TRUE(inspect(older, steps).empty());
}

TEST(Migrations, BeginAnEmptyLogAtTheLastVersion) {
  const TempFolder folder;
  const Steps steps = shipped_and(addition);
  const Connection fresh = open_log(folder / "log.db", writing(), steps);
  EXPECT_EQ(value(fresh, "PRAGMA user_version"), std::to_string(latest(steps)));
  EXPECT_TRUE(inspect(fresh, steps).empty());
}

TEST(Migrations, LeaveADatabaseAloneThatIsNotOurs) {
  SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  db.exec("CREATE TABLE t(x)");
  migrate(db, migrations());
  EXPECT_EQ(db.execAndGet("SELECT count(*) FROM sqlite_schema").getInt(), 1);
  EXPECT_EQ(db.execAndGet("PRAGMA application_id").getInt(), 0);
}

TEST(Migrations, StartedByTwoProgramsRunOnce) {
  const TempFolder folder;
  testing::make_log(folder / "log.db", 3);
  const Steps steps = shipped_and(addition);
  std::vector<std::string> said(2);
  {
    // Both have seen the old version before either has the lock.
    SQLite::Database first(folder / "log.db", SQLite::OPEN_READWRITE, 5000);
    SQLite::Database second(folder / "log.db", SQLite::OPEN_READWRITE, 5000);
    EXPECT_EQ(read_version(first), read_version(second));
    migrate(first, steps);
    migrate(second, steps);
    EXPECT_EQ(second.execAndGet("SELECT count(*) FROM colour").getInt(), 3);
  }
}

TEST(Migrations, KeepEveryRecord) {
  testing::RawLog raw;
  const Steps steps = shipped_and(rebuild);
  const Connection upgraded = open_log(raw.path(), writing(), steps);
  EXPECT_EQ(value(upgraded, "SELECT count(*) FROM schedule_step"), "5");
  EXPECT_EQ(value(upgraded, "SELECT count(*) FROM event"), "4");
  EXPECT_TRUE(inspect(upgraded, steps).empty()) << summary(inspect(upgraded, steps));
}

// Logs as earlier versions wrote them, kept as text: later versions must go on reading them.
class OldLogs : public ::testing::Test {
 protected:
  void write_log_of(int version) const {
    SQLite::Database db(path_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec(read_bytes(std::filesystem::path(JOBLOG_TEST_DATA) /
                       ("version_" + std::to_string(version) + ".sql")));
  }
  static void expect_its_plans(const Log& log) {
    EXPECT_EQ(testing::difference(log, 1, 1, "sandpiper", 60), "");
    EXPECT_EQ(testing::difference(log, 2, 2, "sandpiper", 60), "");
    EXPECT_EQ(log.info().plans, 2);
  }
  [[nodiscard]] int version() const {
    SQLite::Database db(path_, SQLite::OPEN_READONLY);
    return read_version(db);
  }

  TempFolder folder_;
  std::filesystem::path path_ = folder_ / "log.db";
};

TEST_F(OldLogs, OfVersion1AreReadAndLeftAsTheyAre) {
  write_log_of(1);
  const auto before = testing::snapshot(folder_.path());
  {
    const Log log = Log::open(path_, reading());
    expect_its_plans(log);
    EXPECT_EQ(log.jobs(true).at(0).archived, Instant(std::chrono::seconds(1'750'000'600)));
    EXPECT_FALSE(log.last_schedule("sandpiper"));
    EXPECT_FALSE(log.schedule(1));
    EXPECT_TRUE(log.schedules().empty());
    EXPECT_TRUE(log.events("sandpiper").empty());
    EXPECT_FALSE(log.event(1));
    EXPECT_EQ(log.info().schedules, 0);
    EXPECT_EQ(log.info().events, 0);
    EXPECT_EQ(log.foresee_schedule({"sandpiper"}, Digest{}).number, 1);
    EXPECT_EQ(log.foresee_events(testing::sample_events(1))->events[0].row.number, 1);
  }
  EXPECT_TRUE(check(path_).empty());
  ASSERT_TRUE(backup(path_, folder_ / "copy.db"));
  expect_its_plans(Log::open(folder_ / "copy.db", reading()));
  std::filesystem::remove(folder_ / "copy.db");
  EXPECT_TRUE(testing::snapshot(folder_.path()) == before);
  EXPECT_EQ(version(), 1);
}

TEST_F(OldLogs, OfVersion1AreBroughtUpToDateByTheFirstWrite) {
  write_log_of(1);
  {
    Log log = Log::open(path_, writing());
    EXPECT_EQ(log.save_plan(testing::sample_plan(3, "sandpiper", 60)).revision, 3);
    EXPECT_EQ(log.save_schedule(testing::sample_schedule(1, {{"sandpiper", 2}}))->number, 1);
    ASSERT_TRUE(log.record_events(testing::sample_events(1)));
  }
  EXPECT_EQ(version(), latest(migrations()));
  EXPECT_TRUE(check(path_).empty());
  const Log log = Log::open(path_, reading());
  EXPECT_EQ(testing::difference(log, 1, 1, "sandpiper", 60), "");
  EXPECT_EQ(testing::difference(log, 3, 3, "sandpiper", 60), "");
  EXPECT_EQ(testing::difference(log, 1, testing::sample_schedule(1, {{"sandpiper", 2}})), "");
  EXPECT_EQ(testing::difference(log, testing::sample_events(1)), "");
}

TEST_F(OldLogs, OfVersion2KeepSchedulesAndRecords) {
  write_log_of(2);
  const auto expect_its_records = [](const Log& log) {
    EXPECT_EQ(testing::difference(log, 1, testing::sample_schedule(1, {{"sandpiper", 1}})), "");
    EXPECT_EQ(testing::difference(log, 2, testing::sample_schedule(2, {{"sandpiper", 2}})), "");
    EXPECT_EQ(log.schedule(2)->replaces, 1);
    EXPECT_EQ(testing::difference(log, testing::sample_events(1)), "");
    EXPECT_EQ(log.event(2)->undone_by, 4);
    EXPECT_EQ(log.event(4)->facts.note, "slip");
    EXPECT_EQ(log.job("egret")->revisions, 0);
    EXPECT_EQ(log.event(5)->facts.air_millikelvin, 295'150);
    EXPECT_EQ(log.event(6)->facts.milestone, "gel");
  };
  const auto before = testing::snapshot(folder_.path());
  {
    const Log log = Log::open(path_, reading());
    expect_its_plans(log);
    expect_its_records(log);
  }
  EXPECT_TRUE(check(path_).empty());
  EXPECT_TRUE(testing::snapshot(folder_.path()) == before);
  {
    Log log = Log::open(path_, writing());
    EXPECT_EQ(log.record_events(testing::sample_events(3))->events[0].row.number, 7);
    EXPECT_EQ(log.save_schedule(testing::sample_schedule(3, {{"sandpiper", 2}}))->number, 3);
  }
  EXPECT_EQ(version(), latest(migrations()));
  EXPECT_TRUE(check(path_).empty());
  const Log log = Log::open(path_, reading());
  expect_its_plans(log);
  expect_its_records(log);
}

}  // namespace
}  // namespace wetout::joblog
