// A checked copy of a log, the common half of backup and restore.
#pragma once

#include <filesystem>
#include <vector>

#include "joblog/connection.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {

/// Copies `from` into the empty file `to`, looks it through and syncs it. Throws
/// SQLite::Exception for trouble with `from`, StoreError for trouble with `to`.
std::vector<Finding> copy_and_check(const Connection& from, const std::filesystem::path& to);

}  // namespace wetout::joblog
