// Opening a log: what is accepted, what is refused untouched, and how a connection is set.
#pragma once

#include <SQLiteCpp/Database.h>

#include <chrono>
#include <filesystem>
#include <memory>
#include <span>

#include "joblog/migrate.hpp"
#include "wetout/joblog/log.hpp"

namespace wetout::joblog {

struct Connection {
  std::filesystem::path path;  ///< empty for a log in memory
  std::unique_ptr<SQLite::Database> db;
  int version = 0;  ///< of the schema
};

/// As Log::open does. `steps` are migrations() outside tests. Throws StoreError.
Connection open_log(const std::filesystem::path& path, const OpenOptions& options,
                    std::span<const Migration> steps = migrations());

/// An existing log as it stands, of this version or an older one; nothing is created or brought
/// up to date. Throws StoreError.
Connection open_as_it_is(const std::filesystem::path& path, Access access,
                         std::chrono::milliseconds busy_timeout,
                         std::span<const Migration> steps = migrations());

/// A new log in memory, at the last of `steps`.
Connection open_in_memory(std::span<const Migration> steps = migrations());

/// Opens `path` (which exists, or is created when `create`) without reading it.
std::unique_ptr<SQLite::Database> open_file(const std::filesystem::path& path, bool create,
                                            std::chrono::milliseconds busy_timeout);

/// True when only the WAL of the log at `path` is there, with something in it.
bool is_left_by_its_log(const std::filesystem::path& path);

/// Copies the pages of one database over those of another. Throws SQLite::Exception.
void copy_pages(SQLite::Database& from, SQLite::Database& to);

}  // namespace wetout::joblog
