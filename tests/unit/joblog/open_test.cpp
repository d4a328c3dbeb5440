// What is opened, what is created, and what is refused with not a byte changed.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <fstream>

#include "joblog/connection.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

namespace fs = std::filesystem;
using testing::make_log;
using testing::outcome;
using testing::reading;
using testing::snapshot;
using testing::TempFolder;
using testing::writing;

/// Opens for reading and for writing; both must say `kind` and leave the folder as it is.
void expect_refused(const fs::path& folder, const fs::path& log, const char* kind) {
  const auto before = snapshot(folder);
  EXPECT_EQ(outcome([&] { Log::open(log, reading()); }), kind);
  EXPECT_EQ(outcome([&] { Log::open(log, writing()).save_plan(testing::sample_plan(7)); }), kind);
  EXPECT_TRUE(snapshot(folder) == before) << log << " or its folder was changed";
}

void make_database(const fs::path& path, const std::string& sql) {
  SQLite::Database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec(sql);
}

TEST(Open, CreatesALogOnlyForWriting) {
  const TempFolder folder;
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()); }), "missing");
  EXPECT_TRUE(snapshot(folder.path()).empty());
  EXPECT_FALSE(Log::exists(folder / "log.db"));
  make_log(folder / "log.db");
  EXPECT_TRUE(Log::exists(folder / "log.db"));
  EXPECT_EQ(Log::open(folder / "log.db").jobs().size(), 1U);
}

TEST(Open, LeavesOneFileWhenClosed) {
  const TempFolder folder;
  make_log(folder / "log.db");
  Log::open(folder / "log.db").jobs();
  const auto files = snapshot(folder.path());
  EXPECT_EQ(files.size(), 1U);
  EXPECT_EQ(files.count("log.db"), 1U);
}

TEST(Open, ReadingDoesNotChangeAByte) {
  const TempFolder folder;
  make_log(folder / "log.db");
  const auto before = snapshot(folder.path());
  {
    const Log log = Log::open(folder / "log.db");
    EXPECT_EQ(testing::difference(log, 1, 1), "");
    log.info();
  }
  EXPECT_TRUE(snapshot(folder.path()) == before);
}

TEST(Open, ForReadingRefusesToSave) {
  const TempFolder folder;
  make_log(folder / "log.db");
  Log log = Log::open(folder / "log.db", reading());
  EXPECT_EQ(outcome([&] { log.save_plan(testing::sample_plan(2)); }), "read_only");
  EXPECT_EQ(log.revisions("sandpiper").size(), 1U);
}

TEST(Open, SetsEveryConnection) {
  const TempFolder folder;
  make_log(folder / "log.db");
  for (int run = 0; run < 2; ++run) {
    const fs::path path = run == 0 ? folder / "log.db" : folder / "new.db";
    const Connection connection = open_log(path, writing());
    const auto pragma = [&](const char* name) {
      return connection.db->execAndGet(std::string("PRAGMA ") + name).getString();
    };
    EXPECT_EQ(pragma("foreign_keys"), "1");
    EXPECT_EQ(pragma("journal_mode"), "wal");
    EXPECT_EQ(pragma("synchronous"), "2");  // FULL
    EXPECT_EQ(pragma("recursive_triggers"), "1");
    EXPECT_EQ(pragma("trusted_schema"), "0");
    EXPECT_EQ(pragma("busy_timeout"), "60");
    EXPECT_EQ(pragma("user_version"), std::to_string(latest(migrations())));
    EXPECT_EQ(pragma("application_id"), std::to_string(0x5745544F));
  }
}

TEST(Open, TakesAnEmptyFileForNew) {
  const TempFolder folder;
  testing::write_bytes(folder / "log.db", "");
  EXPECT_FALSE(Log::exists(folder / "log.db"));
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()); }), "missing");
  EXPECT_EQ(testing::read_bytes(folder / "log.db"), "");
  make_log(folder / "log.db");
  EXPECT_EQ(Log::open(folder / "log.db").jobs().size(), 1U);
}

TEST(Open, MakesFoldersOnlyWhenAsked) {
  const TempFolder folder;
  const fs::path path = folder.path() / "data" / "wetout" / "log.db";
  EXPECT_EQ(outcome([&] { Log::open(path, writing()); }), "missing");
  EXPECT_EQ(outcome([&] { Log::open(path, reading()); }), "missing");
  EXPECT_TRUE(snapshot(folder.path()).empty());
  OpenOptions options = writing();
  options.make_folder = true;
  Log::open(path, options).save_plan(testing::sample_plan(1));
  EXPECT_EQ(Log::open(path).jobs().size(), 1U);
  struct stat made = {};
  ASSERT_EQ(::stat(path.parent_path().c_str(), &made), 0);
  EXPECT_EQ(made.st_mode & 0777U, 0700U);
}

TEST(Open, TakesNamesThatSqliteWouldReadOtherwise) {
  const TempFolder folder;
  const fs::path here = fs::current_path();
  fs::current_path(folder.path());
  for (const char* name : {":memory:", "file:log.db?mode=memory", "a?b#c%41.db", " "}) {
    make_log(name);
    EXPECT_TRUE(fs::exists(folder / name)) << name;
    EXPECT_EQ(Log::open(name).jobs().size(), 1U) << name;
  }
  fs::current_path(here);
}

TEST(Open, RefusesAFolder) {
  const TempFolder folder;
  fs::create_directory(folder / "log.db");
  expect_refused(folder.path(), folder / "log.db", "not_ours");
}

TEST(Open, RefusesWhatIsNoFile) {
  const TempFolder folder;
  ASSERT_EQ(::mkfifo((folder / "log.db").c_str(), 0600), 0);
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()); }), "not_ours");
}

TEST(Open, RefusesAFileInPlaceOfAFolder) {
  const TempFolder folder;
  testing::write_bytes(folder / "data", "x");
  EXPECT_EQ(outcome([&] { Log::open(folder.path() / "data" / "log.db", writing()); }), "missing");
  OpenOptions options = writing();
  options.make_folder = true;
  EXPECT_EQ(outcome([&] { Log::open(folder.path() / "data" / "log.db", options); }), "missing");
}

TEST(Open, RefusesWhatIsNotSqlite) {
  const TempFolder folder;
  for (const std::string& bytes :
       {std::string("x"), std::string(99, 's'), std::string("[board]\nname = \"Sandpiper\"\n"),
        std::string(8192, '\0'), std::string("SQLite format 3"),
        std::string("SQLite format 3\0", 16), "SQLite format 4" + std::string(8192, '\0')}) {
    testing::write_bytes(folder / "log.db", bytes);
    expect_refused(folder.path(), folder / "log.db", "not_ours");
  }
}

TEST(Open, RefusesABadHeader) {
  const TempFolder folder;
  make_log(folder / "log.db");
  std::string bytes = testing::read_bytes(folder / "log.db");
  bytes[3] = '\0';
  testing::write_bytes(folder / "log.db", bytes);
  expect_refused(folder.path(), folder / "log.db", "not_ours");
}

TEST(Open, RefusesTheDatabaseOfAnotherProgram) {
  const TempFolder folder;
  make_database(folder / "plain.db", "CREATE TABLE t(x); INSERT INTO t VALUES(1)");
  make_database(folder / "empty.db", "PRAGMA user_version = 1");
  make_database(folder / "other.db", "PRAGMA application_id = 7; CREATE TABLE job(x)");
  make_database(folder / "wal.db", "PRAGMA journal_mode = WAL; CREATE TABLE job(x)");
  for (const char* name : {"plain.db", "empty.db", "other.db", "wal.db"}) {
    expect_refused(folder.path(), folder / name, "not_ours");
  }
}

TEST(Open, DoesNotRollBackTheJournalOfAnotherProgram) {
  const TempFolder folder;
  make_database(folder / "busy.db", "CREATE TABLE t(x); INSERT INTO t VALUES(1)");
  {
    // A program that dies in the middle of a commit leaves a hot journal and half-written pages.
    testing::in_child([&]() -> std::string {
      SQLite::Database db(folder / "busy.db", SQLite::OPEN_READWRITE);
      db.exec(
          "PRAGMA cache_size = 1; BEGIN; UPDATE t SET x = 2;"
          "CREATE TABLE u(y); INSERT INTO u SELECT randomblob(900) FROM"
          " (WITH RECURSIVE c(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM c WHERE n < 99)"
          "  SELECT n FROM c)");
      ::_exit(0);
    });
  }
  ASSERT_GT(fs::file_size(folder / "busy.db-journal"), 0U);
  expect_refused(folder.path(), folder / "busy.db", "not_ours");
}

TEST(Open, DoesNotCheckpointTheWalOfAnotherProgram) {
  const TempFolder folder;
  testing::in_child([&]() -> std::string {
    SQLite::Database db(folder / "w.db", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("PRAGMA journal_mode = WAL; CREATE TABLE t(x)");
    ::_exit(0);
  });
  ASSERT_GT(fs::file_size(folder / "w.db-wal"), 0U);
  expect_refused(folder.path(), folder / "w.db", "not_ours");
}

TEST(Open, RefusesANewerLog) {
  const TempFolder folder;
  make_log(folder / "log.db");
  make_database(folder / "log.db", "PRAGMA user_version = 1000");
  expect_refused(folder.path(), folder / "log.db", "newer");
}

TEST(Open, RefusesANewerLogWhoseVersionIsStillInTheWal) {
  const TempFolder folder;
  make_log(folder / "log.db");
  testing::in_child([&]() -> std::string {
    SQLite::Database db(folder / "log.db", SQLite::OPEN_READWRITE);
    db.exec("PRAGMA user_version = 1000");
    ::_exit(0);
  });
  const std::string file = testing::read_bytes(folder / "log.db");
  const std::string wal = testing::read_bytes(folder / "log.db-wal");
  ASSERT_GT(wal.size(), 0U);
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()); }), "newer");
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()); }), "newer");
  EXPECT_TRUE(testing::read_bytes(folder / "log.db") == file);
  EXPECT_TRUE(testing::read_bytes(folder / "log.db-wal") == wal);
}

TEST(Open, RefusesALogWithoutAVersion) {
  const TempFolder folder;
  make_log(folder / "log.db");
  make_database(folder / "log.db", "PRAGMA user_version = 0");
  expect_refused(folder.path(), folder / "log.db", "damaged");
}

TEST(Open, KeepsTheWalOfALogThatIsGone) {
  const TempFolder folder;
  testing::in_child([&]() -> std::string {
    Log log = Log::open(folder / "log.db", writing());
    log.save_plan(testing::sample_plan(1));
    ::_exit(0);  // without closing: the plan is in the WAL only
  });
  ASSERT_GT(fs::file_size(folder / "log.db-wal"), 0U);
  fs::remove(folder / "log.db-shm");
  fs::rename(folder / "log.db", folder / "elsewhere.db");
  expect_refused(folder.path(), folder / "log.db", "damaged");
  testing::write_bytes(folder / "log.db", "");
  expect_refused(folder.path(), folder / "log.db", "damaged");
  fs::rename(folder / "elsewhere.db", folder / "log.db");
  EXPECT_EQ(testing::difference(Log::open(folder / "log.db"), 1, 1), "");
}

TEST(Open, SaysWhichFileAndWhatToDo) {
  const TempFolder folder;
  try {
    Log::open(folder / "log.db");
    FAIL() << "nothing thrown";
  } catch (const StoreError& error) {
    EXPECT_EQ(error.kind(), StoreTrouble::missing);
    EXPECT_EQ(error.path(), folder / "log.db");
    EXPECT_NE(std::string(error.what()).find((folder / "log.db").string()), std::string::npos);
    EXPECT_FALSE(error.hint().empty());
  }
}

}  // namespace
}  // namespace wetout::joblog
