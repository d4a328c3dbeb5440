#include "joblog/migrate.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <string>

#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

int read_int(SQLite::Database& db, const char* query) {
  SQLite::Statement statement(db, query);
  return statement.executeStep() ? statement.getColumn(0).getInt() : 0;
}

bool has_tables(SQLite::Database& db) {
  return read_int(db, "SELECT EXISTS(SELECT 1 FROM sqlite_schema)") != 0;
}

}  // namespace

int read_version(SQLite::Database& db) { return read_int(db, "PRAGMA user_version"); }

int read_application_id(SQLite::Database& db) { return read_int(db, "PRAGMA application_id"); }

int latest(std::span<const Migration> steps) { return steps.empty() ? 0 : steps.back().version; }

void set_foreign_keys(SQLite::Database& db, bool on) {
  int now = 0;
  sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_ENABLE_FKEY, on ? 1 : 0, &now);
  base::promise((now != 0) == on, "this SQLite was built without foreign keys");
}

void migrate(SQLite::Database& db, std::span<const Migration> steps) {
  // A step may rebuild a table, which foreign keys would take for a loss of its rows; they are
  // checked as a whole before the commit instead.
  set_foreign_keys(db, false);
  {
    Transaction transaction(db, Transaction::Kind::exclusive);
    const int from = read_version(db);
    if (from == 0 && !has_tables(db) && read_application_id(db) == 0) {
      db.exec("PRAGMA application_id = " + std::to_string(application_id));
    }
    // Another program may have had the lock first: it has left our work, or not our file.
    if (read_application_id(db) == application_id) {
      for (const Migration& step : steps) {
        if (step.version <= from) continue;
        db.exec(step.sql);
        db.exec("PRAGMA user_version = " + std::to_string(step.version));
      }
      SQLite::Statement broken(db, "PRAGMA foreign_key_check");
      if (broken.executeStep()) {
        throw SQLite::Exception("rows refer to rows that are not there", SQLITE_CORRUPT);
      }
      broken.reset();
      transaction.commit();
    }
  }
  set_foreign_keys(db, true);
}

}  // namespace wetout::joblog
