// Numbered steps from an empty file to the schema of this version.
#pragma once

#include <span>

namespace SQLite {
class Database;
}

namespace wetout::joblog {

/// "WETO": what `file` and SQLite's tools show, and how we know our own.
inline constexpr int application_id = 0x5745544F;

struct Migration {
  int version = 0;  ///< PRAGMA user_version after it; 1, 2, 3 ... without gaps
  const char* sql = nullptr;
};

/// Those of schema/, oldest first.
std::span<const Migration> migrations();

/// The last version of `steps`.
int latest(std::span<const Migration> steps);

/// Runs the steps above the database's own user_version, all of them or none. With an empty
/// database also sets application_id. Does nothing when another program was first.
/// Throws SQLite::Exception.
void migrate(SQLite::Database& db, std::span<const Migration> steps);

/// Turns foreign keys on or off; not inside a transaction. Throws SQLite::Exception.
void set_foreign_keys(SQLite::Database& db, bool on);

int read_version(SQLite::Database& db);
int read_application_id(SQLite::Database& db);

}  // namespace wetout::joblog
