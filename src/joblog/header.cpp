#include "joblog/header.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <array>
#include <cstddef>
#include <cstring>

namespace wetout::joblog {
namespace {

using Bytes = std::array<unsigned char, header_bytes>;

std::int32_t big_endian(const Bytes& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) value = value << 8 | bytes[at + i];
  return static_cast<std::int32_t>(value);
}

void demand(int code, const char* what) {
  if (code != SQLITE_OK) throw SQLite::Exception(what, code);
}

}  // namespace

Header read_header(SQLite::Database& db) {
  sqlite3_file* file = nullptr;
  demand(sqlite3_file_control(db.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file),
         "the file has no handle");
  Header header;
  sqlite3_int64 size = 0;
  demand(file->pMethods->xFileSize(file, &size), "the file's size cannot be read");
  header.file_bytes = size;
  if (size < static_cast<sqlite3_int64>(header_bytes)) return header;

  Bytes bytes{};
  demand(file->pMethods->xRead(file, bytes.data(), header_bytes, 0), "the file cannot be read");
  header.is_sqlite = std::memcmp(bytes.data(), "SQLite format 3", 16) == 0;
  header.is_wal = bytes[18] == 2 && bytes[19] == 2;
  header.user_version = big_endian(bytes, 60);
  header.application_id = big_endian(bytes, 68);
  return header;
}

}  // namespace wetout::joblog
