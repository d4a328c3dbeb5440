// What `log check` finds in a ledger that somebody has been at.
#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>

#include "ledger_samples.hpp"
#include "raw_log.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

// The first finding of the ledger; "" when there is none.
std::string finding(const std::filesystem::path& path) {
  for (const Finding& one : check(path)) {
    if (one.code == "ledger") return one.text;
  }
  return {};
}

void spoil(const std::filesystem::path& path, const std::string& sql) {
  SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql);
}

TEST(CheckLedger, FindsWhatHasBeenDoneToIt) {
  const std::pair<const char*, const char*> deeds[] = {
      {"DROP TRIGGER entry_no_update; DROP TRIGGER movement_no_update; PRAGMA foreign_keys = OFF;"
       "UPDATE movement SET entry = 7 WHERE entry = 5; UPDATE entry SET id = 7 WHERE id = 5",
       "there are 5 entries, the last is 7"},
      {"DROP TRIGGER movement_no_delete; DELETE FROM movement WHERE entry = 5",
       "entry 5 has no movements"},
      {"DROP TRIGGER movement_no_delete; DELETE FROM movement WHERE entry = 2 AND line = 1",
       "entry 2 has 1 movements, the last is 2"},
      {"DROP TRIGGER movement_no_update;"
       "UPDATE movement SET source = 'adjustment' WHERE entry = 1 AND line = 1",
       "entry 1 is a receive, and moves goods from adjustment to stock"},
      {"DROP TRIGGER movement_no_update; UPDATE movement SET minor = 1501 WHERE entry = 4",
       "entry 4 does not take back entry 3"},
      {"DROP TRIGGER movement_no_update; UPDATE movement SET minor = 1501 WHERE entry = 3",
       "entry 4 does not take back entry 3"},
      {"DROP TRIGGER movement_kind; INSERT INTO entry VALUES(6, 'x', 'undo', 5, 0, 6, NULL, 5, "
       "NULL);"
       "INSERT INTO movement SELECT 6, line, target, source, lot, job, step, quantity, minor"
       " FROM movement WHERE entry = 5;"
       "INSERT INTO movement VALUES(6, 2, 'adjustment', 'stock', 1, NULL, NULL, 5, 0)",
       "entry 6 does not take back entry 5"},
      {"DROP TRIGGER entry_undoes; INSERT INTO entry VALUES(6, 'x', 'undo', 5, 0, 6, NULL, 4, "
       "NULL);"
       "DROP TRIGGER movement_kind; INSERT INTO movement SELECT 6, line, target, source, lot, job,"
       " step, quantity, minor FROM movement WHERE entry = 4",
       "entry 6 does not take back entry 4"},
      // A lot that is used up, and has not cost its price.
      {"INSERT INTO entry VALUES(6, 'x', 'waste', 5, 0, 6, NULL, NULL, NULL);"
       "INSERT INTO movement VALUES(6, 1, 'stock', 'waste', 1, NULL, NULL, 790000, 3791)",
       "lot L1 of slow-a holds 0 at a cost of 1"},
      {"INSERT INTO entry VALUES(6, 'x', 'waste', 5, 0, 6, NULL, NULL, NULL);"
       "INSERT INTO movement VALUES(6, 1, 'stock', 'waste', 1, NULL, NULL, 5, 4000)",
       "lot L1 of slow-a holds 789995 at a cost of -208"},
      {"INSERT INTO entry VALUES(6, 'x', 'count', 5, 0, 6, NULL, NULL, NULL);"
       "INSERT INTO movement VALUES(6, 1, 'stock', 'adjustment', 1, NULL, NULL, 800000, 3792)",
       "entry 6 counts less than nothing of lot L1 of slow-a"},
      {"UPDATE lot_sum SET lines = lines + 1, quantity = quantity + 1 WHERE lot = 1"
       " AND source = 'supplier'",
       "the sums kept of lot L1 of slow-a are not those of its movements"},
      {"DROP TRIGGER lot_sum_no_delete; DELETE FROM lot_sum WHERE lot = 1",
       "the sums kept of lot L1 of slow-a are not those of its movements"},
      {"INSERT INTO lot_sum VALUES(2, 'adjustment', 'stock', 0, 0, 0, 1)",
       "the sums kept of lot L2 of e4 are not those of its movements"},
  };
  for (const auto& [sql, expected] : deeds) {
    const testing::RawLog raw;
    ASSERT_EQ(finding(raw.path()), "");
    spoil(raw.path(), sql);
    EXPECT_EQ(finding(raw.path()), expected) << sql;
  }
}

// More may be taken than the log knows of: a purchase was not entered. That is no damage, and must
// not keep anybody from a backup.
TEST(CheckLedger, LeavesOverdrawnLotsInPeace) {
  testing::RawLog raw;
  {
    Log log = Log::open(raw.path(), testing::writing());
    testing::book(log, testing::waste("w", {{testing::mass("slow-a"), 900'000}}));
    EXPECT_EQ(log.stock_of("slow-a")->lots.at(0).quantity, -110'000);
  }
  EXPECT_TRUE(check(raw.path()).empty());
  EXPECT_TRUE(backup(raw.path(), raw.path().parent_path() / "copy.db"));
}

}  // namespace
}  // namespace wetout::joblog
