// Rows of the table of events, in and out.
#pragma once

#include <SQLiteCpp/Database.h>

#include <optional>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/events.hpp"

namespace wetout::joblog {

/// Throws std::logic_error when kind, step and facts do not go together as Facts says.
void check_event(const NewEvent& event);

/// True when the two record the same fact: all but number, `at` and `recorded`, and whether one
/// was undone since.
bool says_the_same(const EventRow& a, const EventRow& b);

/// The rest throws SQLite::Exception.

/// The number the next event will have.
std::int64_t next_event(SQLite::Database& db);
void insert_event(SQLite::Database& db, std::int64_t job, const EventRow& row);
/// The id of the job of an event that is there.
std::int64_t job_of_event(SQLite::Database& db, std::int64_t number);
std::optional<EventRow> read_event(SQLite::Database& db, std::int64_t number);
base::Problem unknown_event(std::int64_t number);
std::optional<EventRow> find_event(SQLite::Database& db, std::string_view token);
/// By number.
std::vector<EventRow> read_events(SQLite::Database& db, std::string_view slug);

}  // namespace wetout::joblog
