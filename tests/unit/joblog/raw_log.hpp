// A log that is attacked from a second connection, which does not set what wetout's own set.
#pragma once

#include <SQLiteCpp/Database.h>
#include <sqlite3.h>

#include <memory>
#include <ostream>
#include <span>
#include <string>

#include "support.hpp"

namespace wetout::joblog::testing {

/// Job 1 (sandpiper) with three plans of three inputs each, job 2 (egret) with one; schedule 1 of
/// both with two steps each, schedule 2 of sandpiper with one; of sandpiper events 1 mixed, 2 done,
/// 3 the undo of 2, and lessons 1 and 2, which leave event 1 aside and count it again; of egret
/// event 4, a note. In the ledger entry 1 receives lot 1 (L1 of slow-a) and lot 2 (L2 of e4), 2
/// uses of both for sandpiper, 3 is work on it, 4 the undo of 3, 5 wastes some of lot 1.
class RawLog {
 public:
  RawLog();
  SQLite::Database& db() { return *db_; }
  std::filesystem::path path() const { return folder_ / "log.db"; }

  /// SQLite's extended code, 0 when the statement went through. X32 stands for 32 bytes, EVENT for
  /// the columns of an event but its id.
  int run(std::string sql);
  const std::string& message() const { return message_; }

 private:
  TempFolder folder_;
  std::unique_ptr<SQLite::Database> db_;
  std::string message_;
};

/// Adds a job without plans, a document, a material and a lot nobody refers to, and a plan, a
/// schedule and an entry with rows still to come, so that nothing but the trigger stands in the way
/// of its attack.
extern const char* const loose_rows;

struct Attack {
  const char* name;
  const char* trigger;  ///< that must stop it
  const char* sql;
  const char* also = nullptr;  ///< a second trigger that stops it as well
};
inline void PrintTo(const Attack& attack, std::ostream* out) { *out << attack.name; }
std::span<const Attack> attacks_on_plans();
std::span<const Attack> attacks_on_records();
std::span<const Attack> attacks_on_ledger();

/// A statement that a constraint must refuse, with the code that says which kind.
struct BadRow {
  const char* name;
  int code;
  const char* sql;
};
inline void PrintTo(const BadRow& row, std::ostream* out) { *out << row.name; }
std::span<const BadRow> bad_rows_of_plans();
std::span<const BadRow> bad_rows_of_records();
std::span<const BadRow> bad_rows_of_ledger();

inline constexpr int check = SQLITE_CONSTRAINT_CHECK;
inline constexpr int not_null = SQLITE_CONSTRAINT_NOTNULL;
inline constexpr int datatype = SQLITE_CONSTRAINT_DATATYPE;
inline constexpr int foreign = SQLITE_CONSTRAINT_FOREIGNKEY;
inline constexpr int trigger = SQLITE_CONSTRAINT_TRIGGER;

}  // namespace wetout::joblog::testing
