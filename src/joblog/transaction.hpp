// A transaction that is rolled back unless committed, once.
#pragma once

namespace SQLite {
class Database;
}

namespace wetout::joblog {

/// Inside another one it is a part of it, whatever its kind: rolled back alone, kept when the outer
/// one is. Own, because that of SQLiteCpp 3.2 rolls back a second time at the end of its scope and
/// takes a later transaction with it.
class Transaction {
 public:
  enum class Kind {
    read,       ///< one view of the data over several statements
    immediate,  ///< the only writer from the beginning: never a deadlock between two readers
    exclusive,  ///< outside WAL, no readers either
  };
  enum class State { open, committed, rolled_back };

  /// Throws SQLite::Exception.
  Transaction(SQLite::Database& db, Kind kind);
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  ~Transaction();

  /// Throws SQLite::Exception, and is then still open or rolled back (by SQLite).
  void commit();
  void roll_back();
  State state() const { return state_; }

 private:
  SQLite::Database& db_;
  bool is_inner_;
  State state_ = State::open;
};

}  // namespace wetout::joblog
