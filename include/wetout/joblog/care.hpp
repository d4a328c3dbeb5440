// Looking after a log: checking it through, copying it, putting a copy in its place.
#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/store_error.hpp"

namespace wetout::joblog {

struct Finding {
  /// pages | references | document | revisions | inputs | schedules | events | ledger | schema |
  /// header
  std::string code = {};
  std::string text = {};
};

/// Reads every page: SQLite's integrity and reference checks, each document against its digest,
/// revisions without gaps, each plan with all its inputs, schedules with all their jobs and steps,
/// events without gaps and undos of what can be undone; entries of the ledger without gaps, each
/// with its movements and these of its kind, undos that take back just what was booked, every lot's
/// balance worked out anew (what is used up has cost its price; lots below zero are none: more may
/// be taken than the log knows of); tables and triggers as this version makes them. Empty when all
/// is well. Damage is a finding; StoreError for whatever keeps the file from being looked at
/// (missing, locked, not ours, newer).
std::vector<Finding> check(const std::filesystem::path& path,
                           std::chrono::milliseconds busy_timeout = std::chrono::seconds(5));

/// Copies the log `from` while others may use it: beside `to` first, checked through, synced, then
/// moved into place. Returns its size in bytes. The copy is one file that can also be read where
/// nothing can be written. Problem: "backup.exists" (nothing is overwritten). StoreError as for
/// opening; `damaged` when the copy has findings, and is then not kept.
base::Result<std::uintmax_t> backup(
    const std::filesystem::path& from, const std::filesystem::path& to,
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
