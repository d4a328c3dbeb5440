// Locked, forbidden, full and damaged: a clear error, and nothing changed.
#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <cerrno>
#include <stdexcept>

#include "joblog/errors.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

namespace fs = std::filesystem;
using testing::Holder;
using testing::in_child;
using testing::make_log;
using testing::outcome;
using testing::reading;
using testing::sample_plan;
using testing::snapshot;
using testing::TempFolder;
using testing::User;
using testing::writing;

Holder hold(const fs::path& path, const char* sql) {
  return Holder([&]() -> std::shared_ptr<void> {
    auto db = std::make_shared<SQLite::Database>(path, SQLite::OPEN_READWRITE);
    db->exec(sql);
    return db;
  });
}

TEST(Locked, ByAnotherWriterIsSaidAfterTheTimeout) {
  const TempFolder folder;
  make_log(folder / "log.db");
  const Holder other = hold(folder / "log.db", "BEGIN IMMEDIATE");
  const std::string before = testing::read_bytes(folder / "log.db");
  Log log = Log::open(folder / "log.db", writing());
  EXPECT_EQ(outcome([&] { log.save_plan(sample_plan(2)); }), "locked");
  EXPECT_EQ(outcome([&] { (void)log.rename_job("sandpiper", "x", "X"); }), "locked");
  EXPECT_EQ(outcome([&] { (void)log.archive_job("sandpiper", Instant()); }), "locked");
  EXPECT_EQ(testing::difference(log, 1, 1), "") << "readers do not wait for a writer";
  EXPECT_TRUE(testing::read_bytes(folder / "log.db") == before);
}

TEST(Locked, IsOverWhenTheOtherIsDone) {
  const TempFolder folder;
  make_log(folder / "log.db");
  Log log = Log::open(folder / "log.db", writing());
  {
    const Holder other = hold(folder / "log.db", "BEGIN IMMEDIATE");
    EXPECT_EQ(outcome([&] { log.save_plan(sample_plan(2)); }), "locked");
  }
  EXPECT_EQ(log.save_plan(sample_plan(2)).revision, 2);
}

TEST(Locked, ForGoodIsSaidAtOpening) {
  const TempFolder folder;
  make_log(folder / "log.db");
  const Holder other =
      hold(folder / "log.db", "PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE; COMMIT");
  const std::string before = testing::read_bytes(folder / "log.db");
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()); }), "locked");
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()); }), "locked");
  EXPECT_TRUE(testing::read_bytes(folder / "log.db") == before);
}

TEST(Locked, WhileBeingCreatedByAnother) {
  const TempFolder folder;
  testing::write_bytes(folder / "log.db", "");
  const Holder other = hold(folder / "log.db", "BEGIN EXCLUSIVE");
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()); }), "locked");
  EXPECT_EQ(testing::read_bytes(folder / "log.db"), "");
}

class ReadOnly : public ::testing::Test {
 protected:
  ReadOnly() { make_log(path_); }

  std::string as_nobody(const std::function<void()>& work) {
    return in_child([&] { return outcome(work); }, User::nobody);
  }
  void save() { Log::open(path_, writing()).save_plan(sample_plan(2)); }
  // In a child, where EXPECT would be heard by nobody.
  void read() {
    const std::string wrong = testing::difference(Log::open(path_, reading()), 1, 1);
    if (!wrong.empty() || !check(path_).empty()) throw std::runtime_error("wrong: " + wrong);
  }

  TempFolder folder_;
  fs::path path_ = folder_ / "log.db";
};

TEST_F(ReadOnly, FileAndFolderCanStillBeRead) {
  ::chmod(path_.c_str(), 0444);
  ::chmod(folder_.path().c_str(), 0555);
  const auto before = snapshot(folder_.path());
  EXPECT_EQ(as_nobody([&] { save(); }), "read_only");
  EXPECT_EQ(as_nobody([&] { read(); }), "ok");
  EXPECT_TRUE(snapshot(folder_.path()) == before);
}

TEST_F(ReadOnly, FileInAFolderThatCanBeWritten) {
  ::chmod(path_.c_str(), 0444);
  ::chmod(folder_.path().c_str(), 0777);
  const auto before = snapshot(folder_.path());
  EXPECT_EQ(as_nobody([&] { save(); }), "read_only");
  EXPECT_EQ(as_nobody([&] { read(); }), "ok");
  EXPECT_TRUE(snapshot(folder_.path()) == before) << "helpers of another owner would lock him out";
}

TEST_F(ReadOnly, FolderOfAFileThatCanBeWritten) {
  ::chmod(path_.c_str(), 0666);
  ::chmod(folder_.path().c_str(), 0555);
  const auto before = snapshot(folder_.path());
  EXPECT_EQ(as_nobody([&] { save(); }), "read_only");
  EXPECT_EQ(as_nobody([&] { read(); }), "ok");
  EXPECT_TRUE(snapshot(folder_.path()) == before);
}

TEST_F(ReadOnly, FolderWithoutALog) {
  ::chmod(folder_.path().c_str(), 0555);
  const auto before = snapshot(folder_.path());
  EXPECT_EQ(as_nobody([&] { Log::open(folder_ / "new.db", writing()); }), "read_only");
  EXPECT_EQ(as_nobody([&] { Log::open(folder_ / "new.db", reading()); }), "missing");
  OpenOptions options = writing();
  options.make_folder = true;
  EXPECT_EQ(as_nobody([&] { Log::open(folder_.path() / "sub" / "log.db", options); }), "read_only");
  EXPECT_EQ(as_nobody([&] { (void)backup(path_, folder_ / "b.db"); }), "read_only");
  EXPECT_TRUE(snapshot(folder_.path()) == before);
}

TEST_F(ReadOnly, FileThatCannotEvenBeRead) {
  ::chmod(path_.c_str(), 0000);
  EXPECT_EQ(as_nobody([&] { save(); }), "read_only");
  EXPECT_EQ(as_nobody([&] { Log::open(path_, reading()); }), "read_only");
}

TEST_F(ReadOnly, FolderThatCannotBeEntered) {
  ::chmod(folder_.path().c_str(), 0000);
  EXPECT_EQ(as_nobody([&] { Log::open(path_, writing()); }), "read_only");
  EXPECT_EQ(as_nobody([&] { Log::open(path_, reading()); }), "read_only");
}

// A limit on the size of files stands for a full disk: the write fails at that byte.
std::string with_limit(rlim_t bytes, const std::function<std::string()>& work) {
  return in_child([&] {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{bytes, bytes};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    return work();
  });
}

TEST(DiskFull, WhileSavingLosesNothingElse) {
  int full = 0;
  int saved = 0;
  for (rlim_t limit = 0; limit <= 360'000; limit += 12'000) {
    const TempFolder folder;
    make_log(folder / "log.db", 3);
    const std::string before = testing::read_bytes(folder / "log.db");
    const std::string said = with_limit(limit, [&] {
      return outcome([&] {
        Log log = Log::open(folder / "log.db", writing());
        log.save_plan(sample_plan(4, "sandpiper", 150'000));
      });
    });
    const Log log = Log::open(folder / "log.db", reading());
    for (int n = 1; n <= 3; ++n) ASSERT_EQ(testing::difference(log, n, n), "");
    if (said == "ok") {
      ++saved;
      EXPECT_EQ(testing::difference(log, 4, 4, "sandpiper", 150'000), "");
    } else {
      ++full;
      EXPECT_EQ(said, "disk_full") << "limit " << limit;
      EXPECT_EQ(log.revisions("sandpiper").size(), 3U);
      EXPECT_TRUE(testing::read_bytes(folder / "log.db") == before) << "limit " << limit;
    }
    EXPECT_TRUE(check(folder / "log.db").empty());
  }
  EXPECT_GT(full, 5);
  EXPECT_GT(saved, 1);
}

TEST(DiskFull, WhileCreatingLeavesNothingThatStandsInTheWay) {
  int full = 0;
  for (rlim_t limit = 0; limit <= 90'000; limit += 3'000) {
    const TempFolder folder;
    const std::string said = with_limit(limit, [&] {
      return outcome([&] {
        Log log = Log::open(folder / "log.db", writing());
        log.save_plan(sample_plan(1));
      });
    });
    if (said != "ok") {
      ++full;
      EXPECT_EQ(said, "disk_full") << "limit " << limit;
    }
    make_log(folder / "log.db", 2);
    EXPECT_EQ(testing::difference(Log::open(folder / "log.db"), 2, 2), "");
    EXPECT_TRUE(check(folder / "log.db").empty());
  }
  EXPECT_GT(full, 5);
}

TEST(DiskFull, DoesNotKeepFromReading) {
  const TempFolder folder;
  make_log(folder / "log.db", 3);
  EXPECT_EQ(with_limit(0, [&] { return testing::difference(Log::open(folder / "log.db"), 3, 3); }),
            "");
}

TEST(DiskFull, WhileCopyingLeavesNoHalfBackup) {
  const TempFolder folder;
  make_log(folder / "log.db", 10);
  const auto before = snapshot(folder.path());
  for (const rlim_t limit : {0, 4096, 30'000}) {
    EXPECT_EQ(
        with_limit(
            limit,
            [&] { return outcome([&] { (void)backup(folder / "log.db", folder / "copy.db"); }); }),
        "disk_full");
    for (const auto& [name, bytes] : snapshot(folder.path())) {
      EXPECT_TRUE(name.starts_with("log.db")) << name << ", limit " << limit;
    }
    EXPECT_TRUE(testing::read_bytes(folder / "log.db") == before.at("log.db"));
  }
}

TEST(Truncated, IsRefusedAndNeverCreatesALogOverIt) {
  const TempFolder folder;
  make_log(folder / "whole.db", 5);
  const std::string whole = testing::read_bytes(folder / "whole.db");
  const std::size_t last_page = whole.size() - 4096;
  for (std::size_t bytes = 1; bytes <= last_page; bytes = bytes < 4096 ? bytes * 3 : bytes + 3001) {
    testing::write_bytes(folder / "log.db", whole.substr(0, bytes));
    const auto before = snapshot(folder.path());
    const char* expected = bytes < 100 ? "not_ours" : "damaged";
    EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()).jobs(); }), expected) << bytes;
    EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()).save_plan(sample_plan(9)); }),
              expected)
        << bytes;
    if (bytes >= 100) {
      EXPECT_FALSE(check(folder / "log.db").empty()) << bytes;
    }
    EXPECT_TRUE(snapshot(folder.path()) == before) << bytes;
  }
}

TEST(Truncated, InsideTheLastPageIsFoundByCheck) {
  const TempFolder folder;
  make_log(folder / "whole.db", 5);
  const std::string whole = testing::read_bytes(folder / "whole.db");
  for (const std::size_t lost : {1U, 100U, 2000U, 4095U}) {
    testing::write_bytes(folder / "log.db", whole.substr(0, whole.size() - lost));
    EXPECT_FALSE(check(folder / "log.db").empty()) << lost;
  }
}

TEST(DamagedPages, AreFoundByCheckOneByOne) {
  const TempFolder folder;
  make_log(folder / "whole.db", 8);
  const std::string whole = testing::read_bytes(folder / "whole.db");
  const std::size_t page = 4096;
  ASSERT_GT(whole.size(), 10 * page);
  for (std::size_t at = 0; at < whole.size(); at += page) {
    for (const char junk : {'\0', '\x5a'}) {
      std::string bytes = whole;
      // Of the first page the header is kept, so that it is still known for a log.
      const std::size_t from = at == 0 ? 100 : at;
      bytes.replace(from, at + page - from, at + page - from, junk);
      testing::write_bytes(folder / "log.db", bytes);
      EXPECT_FALSE(check(folder / "log.db").empty()) << "page " << at / page + 1;
      EXPECT_TRUE(testing::read_bytes(folder / "log.db") == bytes);
    }
  }
}

TEST(DamagedPages, AreSaidAtUse) {
  const TempFolder folder;
  make_log(folder / "log.db", 8);
  std::string bytes = testing::read_bytes(folder / "log.db");
  bytes.replace(4096, bytes.size() - 4096, bytes.size() - 4096, '\x5a');
  testing::write_bytes(folder / "log.db", bytes);
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", reading()).jobs(); }), "damaged");
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db", writing()).save_plan(sample_plan(9)); }),
            "damaged");
  EXPECT_TRUE(testing::read_bytes(folder / "log.db") == bytes);
}

TEST(DamagedDocument, IsNeverReturned) {
  const TempFolder folder;
  make_log(folder / "log.db");
  std::string bytes = testing::read_bytes(folder / "log.db");
  const std::size_t at = bytes.find("result 1 revision 1");
  ASSERT_NE(at, std::string::npos);
  bytes[at + 7] = '2';
  testing::write_bytes(folder / "log.db", bytes);
  EXPECT_EQ(outcome([&] { Log::open(folder / "log.db").plan("sandpiper"); }), "damaged");
  ASSERT_EQ(check(folder / "log.db").size(), 1U);
  EXPECT_EQ(check(folder / "log.db")[0].code, "document");
}

TEST(Classify, TellsAFullDiskFromABrokenOne) {
  EXPECT_EQ(classify(SQLITE_IOERR_WRITE, ENOSPC), StoreTrouble::disk_full);
  EXPECT_EQ(classify(SQLITE_IOERR_WRITE, EDQUOT), StoreTrouble::disk_full);
  EXPECT_EQ(classify(SQLITE_IOERR_WRITE, EIO), StoreTrouble::other);
  EXPECT_EQ(classify(SQLITE_FULL, 0), StoreTrouble::disk_full);
  EXPECT_EQ(classify(SQLITE_CANTOPEN, EROFS), StoreTrouble::read_only);
  EXPECT_EQ(classify(SQLITE_CANTOPEN, EMFILE), StoreTrouble::other);
  EXPECT_EQ(classify(SQLITE_BUSY_RECOVERY, 0), StoreTrouble::locked);
  EXPECT_EQ(classify(SQLITE_CORRUPT_INDEX, 0), StoreTrouble::damaged);
  EXPECT_EQ(classify(SQLITE_IOERR_SHORT_READ, 0), StoreTrouble::damaged);
}

}  // namespace
}  // namespace wetout::joblog
