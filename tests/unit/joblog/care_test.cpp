// Checking, backing up and restoring.
#include "wetout/joblog/care.hpp"

#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "raw_log.hpp"
#include "record_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

namespace fs = std::filesystem;
using testing::difference;
using testing::make_log;
using testing::outcome;
using testing::read_bytes;
using testing::sample_plan;
using testing::snapshot;
using testing::TempFolder;
using testing::writing;
using namespace std::chrono_literals;

// Each kind once, in the order of the report.
std::vector<std::string> codes(const fs::path& log) {
  std::vector<std::string> codes;
  for (const Finding& finding : check(log)) {
    if (codes.empty() || codes.back() != finding.code) codes.push_back(finding.code);
  }
  return codes;
}

void spoil(const fs::path& log, const std::string& sql) {
  SQLite::Database db(log, SQLite::OPEN_READWRITE);
  db.exec(sql);
}

TEST(Check, FindsNothingInAGoodLog) {
  const TempFolder folder;
  make_log(folder / "log.db", 3);
  EXPECT_TRUE(check(folder / "log.db").empty());
  EXPECT_EQ(outcome([&] { check(folder / "none.db"); }), "missing");
  EXPECT_EQ(outcome([&] { check(folder.path()); }), "not_ours");
}

TEST(Check, FindsWhatHasBeenDoneToALog) {
  using Codes = std::vector<std::string>;
  const std::pair<const char*, Codes> deeds[] = {
      {"DROP TRIGGER plan_no_update", {"schema"}},
      {"DROP TRIGGER plan_no_update; CREATE TRIGGER plan_no_update BEFORE UPDATE ON plan"
       " BEGIN SELECT 1; END",
       {"schema"}},
      {"CREATE TABLE extra(x)", {"schema"}},
      {"CREATE TRIGGER extra AFTER INSERT ON job BEGIN SELECT 1; END", {"schema"}},
      {"DROP TRIGGER document_no_update; UPDATE document SET body = CAST('x' AS BLOB)"
       " WHERE body = CAST('air=1' AS BLOB)",
       {"schema", "document"}},
      {"DROP TRIGGER document_no_delete; PRAGMA foreign_keys = OFF;"
       " DELETE FROM document WHERE body = CAST('air=1' AS BLOB)",
       {"schema", "references"}},
      {"DROP TRIGGER plan_input_no_delete; DELETE FROM plan_input WHERE plan = 2 AND role = 'job'",
       {"schema", "inputs"}},
      {"DROP TRIGGER plan_no_update; UPDATE plan SET revision = 7 WHERE revision = 3",
       {"schema", "revisions"}},
      {"DROP TABLE plan_input", {"schema", "inputs"}},
  };
  for (const auto& [sql, expected] : deeds) {
    const TempFolder folder;
    make_log(folder / "log.db", 3);
    spoil(folder / "log.db", sql);
    EXPECT_EQ(codes(folder / "log.db"), expected) << sql;
  }
}

TEST(Check, FindsWhatHasBeenDoneToRecords) {
  using Codes = std::vector<std::string>;
  const std::pair<const char*, Codes> deeds[] = {
      {"DROP TRIGGER schedule_no_update; UPDATE schedule SET id = 7, replaces = NULL WHERE id = 2;"
       " DROP TRIGGER schedule_job_no_update; UPDATE schedule_job SET schedule = 7 WHERE schedule "
       "= 2;"
       " DROP TRIGGER schedule_step_no_update;"
       " UPDATE schedule_step SET schedule = 7 WHERE schedule = 2",
       {"schema", "schedules"}},
      {"DROP TRIGGER schedule_no_update; UPDATE schedule SET jobs = 3 WHERE id = 1",
       {"schema", "schedules"}},
      {"DROP TRIGGER schedule_step_no_delete; DELETE FROM schedule_step WHERE step LIKE '%trim'",
       {"schema", "schedules"}},
      {"DROP TRIGGER schedule_job_no_delete; PRAGMA foreign_keys = OFF;"
       " DELETE FROM schedule_job WHERE job = 2",
       {"schema", "references", "schedules"}},
      {"DROP TRIGGER event_no_delete; DELETE FROM event WHERE id = 1",
       {"schema", "references", "events"}},
      {"DROP TRIGGER event_no_delete; PRAGMA foreign_keys = OFF; DELETE FROM event WHERE id = 2",
       {"schema", "references", "events"}},
      {"DROP TRIGGER event_undoes; INSERT INTO event(id, token, job, at, recorded, kind, undoes)"
       " VALUES(5, 'new', 1, 5, 6, 'undo', 3)",
       {"schema", "events"}},
      {"DROP TRIGGER event_undoes; INSERT INTO event(id, token, job, at, recorded, kind, undoes)"
       " VALUES(5, 'new', 2, 5, 6, 'undo', 1)",
       {"schema", "events"}},
      {"DROP TRIGGER document_no_update; UPDATE document SET body = CAST('x' AS BLOB)"
       " WHERE CAST(body AS TEXT) LIKE 'schedule 1%'",
       {"schema", "document"}},
      {"DROP INDEX event_by_job", {"schema"}},
      {"DROP TABLE event", {"schema", "references", "events"}},
  };
  for (const auto& [sql, expected] : deeds) {
    const testing::RawLog raw;
    ASSERT_TRUE(check(raw.path()).empty());
    spoil(raw.path(), sql);
    EXPECT_EQ(codes(raw.path()), expected) << sql;
  }
}

TEST(Check, SaysWhatIsMissing) {
  const testing::RawLog raw;
  spoil(raw.path(),
        "DROP TRIGGER event_no_delete; DROP TRIGGER schedule_step_no_delete;"
        "DELETE FROM event WHERE id = 1; DELETE FROM schedule_step WHERE schedule = 1 AND job = 2");
  const auto findings = check(raw.path());
  ASSERT_EQ(findings.size(), 6U);
  EXPECT_EQ(findings[4].text, "schedule 1 has 2 of its 4 steps");
  EXPECT_EQ(findings[5].text, "there are 3 events, the last is 4");
}

TEST(Check, ReadsALogThatIsInUse) {
  const TempFolder folder;
  make_log(folder / "log.db", 3);
  Log log = Log::open(folder / "log.db", writing());
  log.save_plan(sample_plan(4));
  EXPECT_TRUE(check(folder / "log.db").empty());
}

TEST(Backup, IsOneWholeFile) {
  const TempFolder folder;
  make_log(folder / "log.db", 4);
  const auto bytes = backup(folder / "log.db", folder / "copy.db");
  ASSERT_TRUE(bytes);
  EXPECT_EQ(*bytes, fs::file_size(folder / "copy.db"));
  EXPECT_EQ(snapshot(folder.path()).size(), 2U);
  EXPECT_TRUE(check(folder / "copy.db").empty());
  const Log copy = Log::open(folder / "copy.db");
  for (int n = 1; n <= 4; ++n) EXPECT_EQ(difference(copy, n, n), "");
}

TEST(Backup, HoldsWhatIsStillInTheWalOfALogInUse) {
  const TempFolder folder;
  Log log = Log::open(folder / "log.db", writing());
  for (int n = 1; n <= 3; ++n) log.save_plan(sample_plan(n));
  ASSERT_TRUE(backup(folder / "log.db", folder / "copy.db"));
  EXPECT_EQ(difference(Log::open(folder / "copy.db"), 3, 3), "");
  EXPECT_EQ(log.save_plan(sample_plan(4)).revision, 4);
}

TEST(Backup, HoldsSchedulesAndEvents) {
  const TempFolder folder;
  const testing::RawLog raw;
  ASSERT_TRUE(backup(raw.path(), folder / "copy.db"));
  const Log copy = Log::open(folder / "copy.db");
  const auto first = testing::sample_schedule(1, {{"sandpiper", 2}, {"egret", 1}});
  EXPECT_EQ(testing::difference(copy, 1, first), "");
  EXPECT_EQ(copy.events("sandpiper").size(), 3U);
  EXPECT_EQ(copy.events("egret").at(0).facts.note, "a ding in the tail");
}

TEST(Backup, CanBeReadAndWrittenAsALog) {
  const TempFolder folder;
  make_log(folder / "log.db", 2);
  ASSERT_TRUE(backup(folder / "log.db", folder / "copy.db"));
  Log copy = Log::open(folder / "copy.db", writing());
  EXPECT_EQ(copy.save_plan(sample_plan(3)).revision, 3);
  EXPECT_EQ(copy.info().journal_mode, "wal");
}

TEST(Backup, KeepsThePermissionsOfTheLog) {
  const TempFolder folder;
  make_log(folder / "log.db");
  ::chmod((folder / "log.db").c_str(), 0640);
  ASSERT_TRUE(backup(folder / "log.db", folder / "copy.db"));
  struct stat copy = {};
  ASSERT_EQ(::stat((folder / "copy.db").c_str(), &copy), 0);
  EXPECT_EQ(copy.st_mode & 0777U, 0640U);
}

TEST(Backup, OverwritesNothing) {
  const TempFolder folder;
  make_log(folder / "log.db", 2);
  testing::write_bytes(folder / "copy.db", "something else");
  fs::create_directory(folder / "folder");
  fs::create_symlink("nowhere", folder / "link");
  const auto before = snapshot(folder.path());
  for (const char* name : {"copy.db", "folder", "link", "log.db"}) {
    const auto done = backup(folder / "log.db", folder / name);
    ASSERT_FALSE(done) << name;
    EXPECT_EQ(done.error()[0].code, "backup.exists");
  }
  EXPECT_TRUE(snapshot(folder.path()) == before);
}

TEST(Backup, OfADamagedLogIsNotKept) {
  const TempFolder folder;
  make_log(folder / "log.db", 2);
  spoil(folder / "log.db", "DROP TRIGGER plan_no_update");
  const auto before = snapshot(folder.path());
  EXPECT_EQ(outcome([&] { (void)backup(folder / "log.db", folder / "copy.db"); }), "damaged");
  EXPECT_EQ(outcome([&] { (void)backup(folder / "none.db", folder / "copy.db"); }), "missing");
  EXPECT_EQ(outcome([&] { (void)backup(folder / "log.db", folder / "no" / "copy.db"); }), "other");
  EXPECT_TRUE(snapshot(folder.path()) == before);
}

class Restore : public ::testing::Test {
 protected:
  // The backup holds plans 1 and 2; the log went on to 5.
  Restore() {
    make_log(log_, 2);
    EXPECT_TRUE(backup(log_, backup_));
    Log log = Log::open(log_, writing());
    for (int n = 3; n <= 5; ++n) log.save_plan(sample_plan(n));
  }
  base::Result<Restored> run() { return restore(backup_, log_, 60ms); }
  int plans(const fs::path& path) { return Log::open(path).job("sandpiper").value().revisions; }

  TempFolder folder_;
  fs::path log_ = folder_ / "log.db";
  fs::path backup_ = folder_ / "backup.db";
  fs::path kept_ = folder_ / "log.db.before-restore-1";
};

TEST_F(Restore, PutsTheBackupInPlaceAndKeepsTheOldLog) {
  const std::string backup_bytes = read_bytes(backup_);
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(done->kept, kept_);
  EXPECT_EQ(plans(log_), 2);
  EXPECT_EQ(plans(kept_), 5);
  EXPECT_EQ(difference(Log::open(kept_), 5, 5), "");
  EXPECT_TRUE(check(log_).empty());
  EXPECT_TRUE(check(kept_).empty());
  EXPECT_TRUE(read_bytes(backup_) == backup_bytes);
  EXPECT_EQ(snapshot(folder_.path()).size(), 3U);
  EXPECT_EQ(Log::open(log_, writing()).save_plan(sample_plan(3)).revision, 3);
}

TEST_F(Restore, KeepsEveryOldLogUnderANameOfItsOwn) {
  ASSERT_TRUE(run());
  const auto again = restore(kept_, log_, 60ms);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->kept, folder_ / "log.db.before-restore-2");
  EXPECT_EQ(plans(log_), 5);
  EXPECT_EQ(plans(*again->kept), 2);
}

TEST_F(Restore, WhereThereIsNoLog) {
  const auto done = restore(backup_, folder_ / "new.db", 60ms);
  ASSERT_TRUE(done);
  EXPECT_FALSE(done->kept);
  EXPECT_EQ(plans(folder_ / "new.db"), 2);
  testing::write_bytes(folder_ / "empty.db", "");
  const auto empty = restore(backup_, folder_ / "empty.db", 60ms);
  ASSERT_TRUE(empty);
  EXPECT_FALSE(empty->kept);
  EXPECT_EQ(plans(folder_ / "empty.db"), 2);
}

TEST_F(Restore, RefusesALogInUse) {
  const std::string before = read_bytes(log_);
  {
    const testing::Holder other([&]() -> std::shared_ptr<void> {
      auto log = std::make_shared<Log>(Log::open(log_, writing()));
      log->jobs();
      return log;
    });
    EXPECT_EQ(outcome([&] { (void)run(); }), "locked");
  }
  EXPECT_TRUE(read_bytes(log_) == before);
  EXPECT_FALSE(fs::exists(kept_));
  ASSERT_TRUE(run()) << "and works once the other is gone";
}

TEST_F(Restore, RefusesADamagedBackup) {
  spoil(backup_, "DROP TRIGGER plan_no_update");
  const auto before = snapshot(folder_.path());
  const auto done = run();
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error()[0].code, "backup.damaged");
  EXPECT_TRUE(snapshot(folder_.path()) == before);
}

TEST_F(Restore, RefusesABackupThatIsNone) {
  testing::write_bytes(folder_ / "text", "not a log");
  const auto before = snapshot(folder_.path());
  EXPECT_EQ(outcome([&] { (void)restore(folder_ / "none", log_, 60ms); }), "missing");
  EXPECT_EQ(outcome([&] { (void)restore(folder_ / "text", log_, 60ms); }), "not_ours");
  EXPECT_EQ(outcome([&] { (void)restore(folder_.path(), log_, 60ms); }), "not_ours");
  EXPECT_EQ(restore(log_, log_, 60ms).error()[0].code, "backup.same");
  EXPECT_TRUE(snapshot(folder_.path()) == before);
  std::string cut = read_bytes(backup_);
  testing::write_bytes(folder_ / "cut.db", cut.substr(0, cut.size() / 2));
  EXPECT_EQ(outcome([&] { (void)restore(folder_ / "cut.db", log_, 60ms); }), "damaged");
  EXPECT_EQ(plans(log_), 5);
}

TEST_F(Restore, DoesNotTouchATargetThatIsNotOurs) {
  testing::write_bytes(folder_ / "text", "somebody's letter");
  fs::create_directory(folder_ / "folder");
  {
    SQLite::Database(folder_ / "other.db", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
        .exec("CREATE TABLE t(x)");
  }
  const auto before = snapshot(folder_.path());
  for (const char* name : {"text", "folder", "other.db"}) {
    EXPECT_EQ(outcome([&] { (void)restore(backup_, folder_ / name, 60ms); }), "not_ours") << name;
  }
  EXPECT_TRUE(snapshot(folder_.path()) == before);
}

TEST_F(Restore, ReplacesALogThatIsTruncated) {
  const std::string cut = read_bytes(log_).substr(0, 9000);
  testing::write_bytes(log_, cut);
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(plans(log_), 2);
  EXPECT_TRUE(read_bytes(done->kept.value()) == cut) << "the damaged file is kept as it is";
  EXPECT_TRUE(check(log_).empty());
}

TEST_F(Restore, ReplacesALogThatIsDamagedInside) {
  std::string bytes = read_bytes(log_);
  bytes.replace(4096, bytes.size() - 4096, bytes.size() - 4096, '\x5a');
  testing::write_bytes(log_, bytes);
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(plans(log_), 2);
  EXPECT_TRUE(check(log_).empty());
  EXPECT_FALSE(check(done->kept.value()).empty());
}

TEST_F(Restore, DoesNotMixTheBackupWithTheWalOfALostLog) {
  testing::in_child([&]() -> std::string {
    Log log = Log::open(log_, writing());
    log.save_plan(sample_plan(6));
    ::_exit(0);
  });
  const std::string wal = read_bytes(folder_ / "log.db-wal");
  ASSERT_FALSE(wal.empty());
  fs::remove(log_);
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(plans(log_), 2);
  EXPECT_TRUE(check(log_).empty());
  EXPECT_TRUE(read_bytes(folder_ / "log.db.before-restore-1-wal") == wal);
}

TEST_F(Restore, BringsOverTheWalOfAKilledProgram) {
  testing::in_child([&]() -> std::string {
    Log log = Log::open(log_, writing());
    log.save_plan(sample_plan(6));
    ::_exit(0);
  });
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(plans(done->kept.value()), 6);
  EXPECT_EQ(plans(log_), 2);
}

TEST_F(Restore, TakesALogOfAnotherPageSize) {
  fs::remove(log_);
  fs::copy_file(backup_, log_);
  spoil(log_, "PRAGMA page_size = 8192; VACUUM");
  const auto done = run();
  ASSERT_TRUE(done);
  EXPECT_EQ(plans(log_), 2);
  EXPECT_EQ(plans(done->kept.value()), 2);
}

}  // namespace
}  // namespace wetout::joblog
