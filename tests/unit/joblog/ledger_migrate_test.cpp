// The ledger in logs of earlier versions, and what these keep.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <gtest/gtest.h>

#include "joblog/migrate.hpp"
#include "ledger_samples.hpp"
#include "record_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::mass;
using testing::receipt;

class LedgerOfOldLogs : public ::testing::TestWithParam<int> {
 protected:
  LedgerOfOldLogs() {
    SQLite::Database db(path_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec(testing::read_bytes(std::filesystem::path(JOBLOG_TEST_DATA) /
                                ("version_" + std::to_string(GetParam()) + ".sql")));
  }

  // The rows of the tables that its version had, table by table.
  [[nodiscard]] std::string rows() const {
    SQLite::Database db(path_, SQLite::OPEN_READONLY);
    std::vector<std::string> tables = {"job", "document", "plan", "plan_input"};
    if (GetParam() >= 2) {
      tables.insert(tables.end(), {"schedule", "schedule_job", "schedule_step", "event"});
    }
    std::string text;
    for (const std::string& table : tables) {
      SQLite::Statement statement(db, "SELECT * FROM " + table);
      while (statement.executeStep()) {
        text += table;
        for (int i = 0; i < statement.getColumnCount(); ++i) {
          text += '|' + statement.getColumn(i).getString();
        }
        text += '\n';
      }
    }
    return text;
  }

  testing::TempFolder folder_;
  std::filesystem::path path_ = folder_ / "log.db";
};

TEST_P(LedgerOfOldLogs, IsEmptyWhereTheyAreOnlyRead) {
  const auto before = testing::snapshot(folder_.path());
  {
    const Log log = Log::open(path_, testing::reading());
    EXPECT_TRUE(log.stock().empty());
    EXPECT_TRUE(log.entries().empty());
    EXPECT_TRUE(log.job_cost("sandpiper")->goods.empty());
    EXPECT_TRUE(log.material_totals().empty() && log.month_totals().empty());
    EXPECT_FALSE(log.currency());
    EXPECT_EQ(log.info().entries, 0);
    const auto foreseen = log.foresee_bookings({receipt("r", {{mass("slow-a"), 5, 8, "L1"}})});
    EXPECT_EQ(foreseen->at(0).number, 1);
  }
  EXPECT_TRUE(check(path_).empty());
  EXPECT_TRUE(testing::snapshot(folder_.path()) == before);
}

TEST_P(LedgerOfOldLogs, BeginsWithTheFirstEntryAndLeavesTheRestAsItWas) {
  const std::string before = rows();
  EXPECT_GT(before.size(), 500U);
  {
    Log log = Log::open(path_, testing::writing());
    book(log, receipt("r", {{mass("slow-a"), 500, 80, "L1"}}));
    book(log, testing::use("u", "sandpiper", "bottom-lam/wet", {{mass("slow-a"), 200}}));
  }
  EXPECT_EQ(rows(), before);
  EXPECT_TRUE(check(path_).empty());
  const Log log = Log::open(path_, testing::reading());
  EXPECT_EQ(log.info().schema_version, latest(migrations()));
  EXPECT_EQ(testing::stock(log), "slow-a L1 300@48");
  EXPECT_EQ(log.job_cost("sandpiper")->goods_minor, 32);
}

INSTANTIATE_TEST_SUITE_P(All, LedgerOfOldLogs, ::testing::Values(1, 2),
                         [](const auto& run) { return "Version" + std::to_string(run.param); });

}  // namespace
}  // namespace wetout::joblog
