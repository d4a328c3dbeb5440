// What plans, schedules and events do alike with the rows of jobs and documents.
#pragma once

#include <SQLiteCpp/Database.h>

#include <string_view>

#include "joblog/log_impl.hpp"

namespace wetout::joblog {

/// All throw SQLite::Exception.

/// The id of the new job.
std::int64_t insert_job(SQLite::Database& db, std::string_view slug, std::string_view name,
                        Instant created);
/// Takes a job out of the archive.
void bring_back(SQLite::Database& db, std::int64_t job);
base::Problem unknown_job(std::string_view slug);

/// Keeps a text, once however often it comes; its digest names it.
Digest keep_document(SQLite::Database& db, std::string_view body);
/// The bytes of a document, after they have been compared with their digest.
std::string checked_body(SQLite::Column column, const Digest& digest);

/// The last schedule that holds the job.
std::optional<std::int64_t> last_schedule_of(SQLite::Database& db, std::int64_t job);

}  // namespace wetout::joblog
