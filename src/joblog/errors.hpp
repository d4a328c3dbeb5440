// From SQLite's result codes to what a person can do about it.
#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>

#include <filesystem>
#include <memory>
#include <utility>

#include "wetout/joblog/store_error.hpp"

namespace wetout::joblog {

/// `system_errno` as sqlite3_system_errno gives it: a full disk is told from a broken one by it.
StoreTrouble classify(int extended_code, int system_errno);

/// A StoreError with the usual sentence and next step of its kind; `detail` may be empty.
StoreError store_error(StoreTrouble kind, const std::filesystem::path& path,
                       const std::string& detail = {}, int code = 0);

/// Throws what `error` means for the file at `path`; `db` may be null. A broken constraint is a
/// bug (std::logic_error): everything is checked before it is written.
[[noreturn]] void raise(const SQLite::Exception& error, sqlite3* db,
                        const std::filesystem::path& path);

/// Runs `work`, which speaks to `db` (and may replace it), and lets no SQLite::Exception out.
template <class Work>
auto guarded(const std::unique_ptr<SQLite::Database>& db, const std::filesystem::path& path,
             Work&& work) {
  try {
    return std::forward<Work>(work)();
  } catch (const SQLite::Exception& error) {
    raise(error, db ? db->getHandle() : nullptr, path);
  }
}

}  // namespace wetout::joblog
