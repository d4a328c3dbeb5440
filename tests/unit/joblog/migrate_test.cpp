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
    "CREATE TABLE lot(id INTEGER PRIMARY KEY, plan INTEGER REFERENCES plan) STRICT;"
    "INSERT INTO lot SELECT id, id FROM plan;";

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
  EXPECT_EQ(value(again, "SELECT count(*) FROM lot"), "5");
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
    EXPECT_EQ(value(copy, "SELECT count(*) FROM lot"), "5");
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
    EXPECT_EQ(second.execAndGet("SELECT count(*) FROM lot").getInt(), 3);
  }
}

// A log as version 1 wrote it, kept as text: later versions must go on reading it.
TEST(OldLogs, OfVersion1AreReadAndWritten) {
  const TempFolder folder;
  {
    SQLite::Database db(folder / "log.db", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec(read_bytes(std::filesystem::path(JOBLOG_TEST_DATA) / "version_1.sql"));
  }
  {
    const Log log = Log::open(folder / "log.db", reading());
    EXPECT_EQ(testing::difference(log, 1, 1, "sandpiper", 60), "");
    EXPECT_EQ(testing::difference(log, 2, 2, "sandpiper", 60), "");
    EXPECT_EQ(log.jobs(true).at(0).archived, Instant(std::chrono::seconds(1'750'000'600)));
  }
  EXPECT_TRUE(check(folder / "log.db").empty());
  Log log = Log::open(folder / "log.db", writing());
  EXPECT_EQ(log.save_plan(testing::sample_plan(3, "sandpiper", 60)).revision, 3);
  EXPECT_EQ(testing::difference(log, 1, 1, "sandpiper", 60), "");
}

}  // namespace
}  // namespace wetout::joblog
