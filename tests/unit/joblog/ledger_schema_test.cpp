// What the tables of the ledger let through; what they refuse is in ledger_attacks.cpp.
#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>

#include <string>

#include "ledger_samples.hpp"
#include "raw_log.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using Raw = testing::RawLog;

const char* const accounts[] = {"supplier", "stock", "board", "waste", "adjustment", "labour"};

// Tries a line with goods or without on an open entry of this kind, for every two accounts; the
// pairs that go through.
std::string allowed(const std::string& kind, const char* quantity) {
  Raw raw;
  EXPECT_EQ(raw.run("INSERT INTO entry(id, token, kind, at, day, recorded) VALUES(6, 'new', '" +
                    kind + "', 5, 0, 6)"),
            SQLITE_OK)
      << raw.message();
  std::string pairs;
  int line = 0;
  for (const std::string source : accounts) {
    for (const std::string target : accounts) {
      const bool is_board = source == "board" || target == "board";
      const bool is_work = source == "labour" || target == "labour";
      const int code = raw.run("INSERT INTO movement VALUES(6, " + std::to_string(++line) + ", '" +
                               source + "', '" + target + "', " + (is_work ? "NULL" : "1") + ", " +
                               (is_board ? "1" : "NULL") + ", NULL, " + quantity + ", 1)");
      if (code == SQLITE_OK) pairs += source + ">" + target + " ";
    }
  }
  return pairs;
}

TEST(LedgerSchema, LetsAnEntryHaveLinesOfItsKindOnly) {
  EXPECT_EQ(allowed("receive", "5"), "supplier>stock ");
  EXPECT_EQ(allowed("use", "5"), "stock>board ");
  EXPECT_EQ(allowed("waste", "5"), "stock>waste ");
  EXPECT_EQ(allowed("count", "5"), "stock>adjustment adjustment>stock ");
  EXPECT_EQ(allowed("labour", "5"), "labour>board ");
}

// The cost that is left of a lot which came to nothing.
TEST(LedgerSchema, LetsCostWithoutGoodsGoToAdjustment) {
  EXPECT_EQ(allowed("receive", "0"), "supplier>stock stock>adjustment adjustment>stock ");
  EXPECT_EQ(allowed("use", "0"), "stock>board ");
  EXPECT_EQ(allowed("waste", "0"), "stock>waste ");
  EXPECT_EQ(allowed("count", "0"), "stock>adjustment adjustment>stock ");
}

// Entry 2 took 200 g of lot 1 at 9.60 and 2 m of lot 2 at 14.22 into job 1.
TEST(LedgerSchema, LetsAnUndoTurnRoundWhatItTakesBackAndNothingElse) {
  const std::pair<const char*, int> lines[] = {
      {"1, 'board', 'stock', 1, 1, 'bottom-lam/wet', 200000, 960", SQLITE_OK},
      {"2, 'board', 'stock', 2, 1, 'bottom-lam/wet', 2000000, 1422", SQLITE_OK},
      {"3, 'adjustment', 'stock', 1, NULL, NULL, 0, 1", SQLITE_OK},
      {"1, 'stock', 'board', 1, 1, 'bottom-lam/wet', 200000, 960", testing::trigger},
      {"2, 'board', 'stock', 1, 1, 'bottom-lam/wet', 200000, 960", testing::trigger},
      {"1, 'board', 'stock', 2, 1, 'bottom-lam/wet', 200000, 960", testing::trigger},
      {"1, 'board', 'stock', 1, 2, 'bottom-lam/wet', 200000, 960", testing::trigger},
      {"1, 'board', 'stock', 1, 1, NULL, 200000, 960", testing::trigger},
      {"1, 'board', 'stock', 1, 1, 'bottom-lam/wet', 200001, 960", testing::trigger},
      {"1, 'board', 'stock', 1, 1, 'bottom-lam/wet', 200000, 961", testing::trigger},
      {"3, 'adjustment', 'stock', 1, NULL, NULL, 1, 1", testing::trigger},
  };
  for (const auto& [line, code] : lines) {
    Raw raw;
    ASSERT_EQ(raw.run("INSERT INTO entry(id, token, kind, at, day, recorded, undoes)"
                      " VALUES(6, 'new', 'undo', 5, 0, 6, 2)"),
              SQLITE_OK)
        << raw.message();
    EXPECT_EQ(raw.run(std::string("INSERT INTO movement VALUES(6, ") + line + ")"), code) << line;
  }
}

TEST(LedgerSchema, LetsGoodRowsThrough) {
  Raw raw;
  EXPECT_EQ(raw.run("UPDATE material SET name = 'Slow hardener resin' WHERE id = 1;"
                    "INSERT INTO material VALUES(9, 'x-2', 'x', 'piece');"
                    "INSERT INTO lot VALUES(9, 9, printf('%064d', 1), 'B 7', -5, 20700, NULL);"
                    "INSERT INTO entry VALUES(6, 'a', 'receive', 86399, -1, 0, 1, NULL, 'x');"
                    "INSERT INTO movement VALUES(6, 1, 'supplier', 'stock', 9, NULL, NULL,"
                    "  1000000000000, 1000000000000);"
                    "INSERT INTO entry VALUES(7, 'b', 'use', 0, 1, 0, NULL, NULL, NULL);"
                    "INSERT INTO movement VALUES(7, 1, 'stock', 'board', 9, 1, NULL, 1, 1);"
                    "INSERT INTO movement VALUES(7, 2, 'stock', 'board', 9, 1, 'x', 1, 0);"
                    "INSERT INTO entry VALUES(8, 'c', 'labour', 0, 0, 0, NULL, NULL, NULL);"
                    "INSERT INTO movement VALUES(8, 1, 'labour', 'board', NULL, 1, NULL, 0, 1);"
                    "INSERT INTO entry VALUES(9, 'd', 'count', 0, 0, 0, NULL, NULL, NULL);"
                    "INSERT INTO movement VALUES(9, 1, 'stock', 'adjustment', 9, NULL, NULL, 0, 0);"
                    "INSERT INTO entry VALUES(10, 'e', 'undo', 0, 0, 0, 2, 8, 'why');"
                    "INSERT INTO movement VALUES(10, 1, 'board', 'labour', NULL, 1, NULL, 0, 1)"),
            SQLITE_OK)
      << raw.message();
  EXPECT_TRUE(check(raw.path()).empty());
}

// What came as a lot and was taken back may come again under its label, with another date.
TEST(LedgerSchema, LetsALotBeDescribedAnewWhileNothingOfItStands) {
  Raw raw;
  EXPECT_EQ(raw.run("UPDATE lot SET batch = 'B 7' WHERE id = 1"), testing::trigger);
  Log log = Log::open(raw.path(), testing::writing());
  testing::book(log, testing::reversal("again", 1));
  EXPECT_EQ(raw.run("UPDATE lot SET batch = 'B 7', received = 9, expires = 30000 WHERE id = 1"),
            SQLITE_OK)
      << raw.message();
  EXPECT_EQ(raw.run("UPDATE lot SET label = 'other' WHERE id = 1"), testing::trigger);
}

// Backstops behind the triggers: what a trigger refuses first, the keys would refuse as well.
TEST(LedgerSchema, HoldsWithoutTheTriggers) {
  Raw raw;
  for (const char* name :
       {"currency_no_replace", "material_no_replace", "lot_no_replace", "entry_no_replace",
        "entry_is_next", "movement_no_replace", "movement_late", "movement_kind"}) {
    raw.db().exec(std::string("DROP TRIGGER ") + name);
  }
  EXPECT_EQ(raw.run("INSERT INTO currency VALUES(1, 'EUR')"), SQLITE_CONSTRAINT_PRIMARYKEY);
  EXPECT_EQ(raw.run("INSERT INTO material VALUES(9, 'slow-a', 'x', 'mg')"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO lot VALUES(9, 1, 'L1', NULL, 5, NULL, NULL)"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO entry VALUES(0, 'a', 'use', 0, 0, 0, NULL, NULL, NULL)"),
            testing::check);
  EXPECT_EQ(raw.run("INSERT INTO entry VALUES(6, 'r-1', 'use', 0, 0, 0, NULL, NULL, NULL)"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO entry VALUES(6, 'a', 'undo', 0, 0, 0, NULL, 3, NULL)"),
            SQLITE_CONSTRAINT_UNIQUE);
  EXPECT_EQ(raw.run("INSERT INTO movement SELECT * FROM movement"), SQLITE_CONSTRAINT_PRIMARYKEY);
  EXPECT_EQ(raw.run("INSERT INTO movement VALUES(9, 1, 'stock', 'waste', 1, NULL, NULL, 5, 1)"),
            testing::foreign);
}

}  // namespace
}  // namespace wetout::joblog
