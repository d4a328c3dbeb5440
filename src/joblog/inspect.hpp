// What check() finds, for a connection that is already open.
#pragma once

#include <span>
#include <vector>

#include "joblog/connection.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {

/// Throws SQLite::Exception only for what is not damage (locked, I/O).
std::vector<Finding> inspect(const Connection& connection,
                             std::span<const Migration> steps = migrations());

/// Each row of `query` is a finding: its first column. Throws SQLite::Exception.
void find(std::vector<Finding>& findings, SQLite::Database& db, const char* code,
          const char* query);

/// Parts of inspect(): numbers that count without gaps, rows that are all there. Schedules and
/// events are of version 2, entries and lots of version 3. Throw SQLite::Exception.
void check_revisions(std::vector<Finding>& findings, SQLite::Database& db);
void check_inputs(std::vector<Finding>& findings, SQLite::Database& db);
void check_schedules(std::vector<Finding>& findings, SQLite::Database& db);
void check_events(std::vector<Finding>& findings, SQLite::Database& db);
void check_lessons(std::vector<Finding>& findings, SQLite::Database& db);
void check_entries(std::vector<Finding>& findings, SQLite::Database& db);
void check_lots(std::vector<Finding>& findings, SQLite::Database& db);
void check_sums(std::vector<Finding>& findings, SQLite::Database& db);

/// The findings as one line for a message: the first, and how many more.
std::string summary(const std::vector<Finding>& findings);

}  // namespace wetout::joblog
