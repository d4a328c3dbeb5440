// Looking after a log that may be damaged: checking it through, putting a backup in its place.
#pragma once

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/store_error.hpp"

namespace wetout::joblog {

struct Finding {
  std::string code = {};  ///< pages | references | document | revisions | inputs | schema | header
  std::string text = {};
};

/// Reads every page: SQLite's integrity and reference checks, each document against its digest,
/// revisions without gaps, each plan with all its inputs, tables and triggers as this version
/// makes them. Empty when all is well. Damage is a finding; StoreError for whatever keeps the
/// file from being looked at (missing, locked, not ours, newer).
std::vector<Finding> check(const std::filesystem::path& path,
                           std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

struct Restored {
  /// Where the log that was there before has been kept, if there was one.
  std::optional<std::filesystem::path> kept = {};
};

/// Puts a copy of the backup `from` in the place of the log `to`. The backup is copied beside `to`
/// and checked through first. A log already there is kept as `to`.before-restore-1 (-2, ...); it
/// must not be in use (StoreTrouble::locked). Problems: "backup.damaged", "backup.same".
/// StoreError with the path of the file concerned: `from` missing, not ours, newer; `to` not ours,
/// newer, read-only, locked; disk full.
base::Result<Restored> restore(const std::filesystem::path& from, const std::filesystem::path& to,
                               std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

}  // namespace wetout::joblog
