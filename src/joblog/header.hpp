// The first bytes of a file, before SQLite touches it.
#pragma once

#include <cstddef>
#include <cstdint>

namespace SQLite {
class Database;
}

namespace wetout::joblog {

inline constexpr std::size_t header_bytes = 100;

/// From the SQLite file format, section 1.3 "The Database Header".
struct Header {
  std::int64_t file_bytes = 0;
  bool is_sqlite = false;
  bool is_wal = false;
  std::int32_t application_id = 0;
  std::int32_t user_version = 0;
};

/// Reads through the file that SQLite has just opened: no lock is taken, nothing is created beside
/// it, no journal rolled back. (A descriptor of our own would drop SQLite's locks of this process
/// when closed.) Throws SQLite::Exception.
Header read_header(SQLite::Database& db);

}  // namespace wetout::joblog
