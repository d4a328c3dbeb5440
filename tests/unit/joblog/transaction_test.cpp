#include "joblog/transaction.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <gtest/gtest.h>

namespace wetout::joblog {
namespace {

class TransactionTest : public ::testing::Test {
 protected:
  TransactionTest() { db_.exec("CREATE TABLE t(x INTEGER PRIMARY KEY)"); }
  int rows() { return db_.execAndGet("SELECT count(*) FROM t").getInt(); }

  SQLite::Database db_{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
};

TEST_F(TransactionTest, IsUndoneAtTheEndOfItsScope) {
  {
    const Transaction transaction(db_, Transaction::Kind::immediate);
    db_.exec("INSERT INTO t VALUES(1)");
  }
  EXPECT_EQ(rows(), 0);
}

TEST_F(TransactionTest, KeepsWhatIsCommitted) {
  {
    Transaction transaction(db_, Transaction::Kind::immediate);
    db_.exec("INSERT INTO t VALUES(1)");
    transaction.commit();
    EXPECT_EQ(transaction.state(), Transaction::State::committed);
  }
  EXPECT_EQ(rows(), 1);
}

TEST_F(TransactionTest, RolledBackLeavesALaterOneAlone) {
  {
    Transaction first(db_, Transaction::Kind::immediate);
    first.roll_back();
    EXPECT_EQ(first.state(), Transaction::State::rolled_back);
    db_.exec("BEGIN; INSERT INTO t VALUES(1)");
  }  // the end of `first` must not take the open transaction with it
  db_.exec("COMMIT");
  EXPECT_EQ(rows(), 1);
}

TEST_F(TransactionTest, SurvivesThatSqliteRolledBackItself) {
  {
    Transaction transaction(db_, Transaction::Kind::immediate);
    db_.exec("INSERT INTO t VALUES(1)");
    EXPECT_THROW(db_.exec("INSERT OR ROLLBACK INTO t VALUES(1)"), SQLite::Exception);
    db_.exec("BEGIN; INSERT INTO t VALUES(2)");
    db_.exec("COMMIT");
  }
  EXPECT_EQ(rows(), 1);
}

TEST_F(TransactionTest, CommittingTwiceIsABug) {
  Transaction transaction(db_, Transaction::Kind::read);
  transaction.commit();
  EXPECT_THROW(transaction.commit(), std::logic_error);
}

}  // namespace
}  // namespace wetout::joblog
