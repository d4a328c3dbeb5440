#include "joblog/transaction.hpp"

#include <SQLiteCpp/Database.h>
#include <sqlite3.h>

#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

bool is_open(SQLite::Database& db) { return sqlite3_get_autocommit(db.getHandle()) == 0; }

const char* begin(Transaction::Kind kind) {
  switch (kind) {
    case Transaction::Kind::read:
      return "BEGIN";
    case Transaction::Kind::immediate:
      return "BEGIN IMMEDIATE";
    case Transaction::Kind::exclusive:
      return "BEGIN EXCLUSIVE";
  }
  base::broken_promise("kind of transaction outside its list");
}

}  // namespace

Transaction::Transaction(SQLite::Database& db, Kind kind) : db_(db), is_inner_(is_open(db)) {
  db_.exec(is_inner_ ? "SAVEPOINT part" : begin(kind));
}

Transaction::~Transaction() { roll_back(); }

void Transaction::commit() {
  base::promise(state_ == State::open, "a transaction is committed once, while it is open");
  db_.exec(is_inner_ ? "RELEASE part" : "COMMIT");
  state_ = State::committed;
}

void Transaction::roll_back() {
  if (state_ != State::open) return;
  state_ = State::rolled_back;
  // After a full disk or an I/O error SQLite has done it already. An error here leaves nothing
  // more to do: what is not committed is gone at the next opening.
  if (is_open(db_)) db_.tryExec(is_inner_ ? "ROLLBACK TO part; RELEASE part" : "ROLLBACK");
}

}  // namespace wetout::joblog
