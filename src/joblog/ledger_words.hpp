// Words and days of the ledger, out of the log and into it.
#pragma once

#include <SQLiteCpp/Column.h>

#include <optional>
#include <string>

#include "wetout/joblog/ledger.hpp"

namespace wetout::joblog {

/// These throw SQLite::Exception (SQLITE_CORRUPT) for a word that is none.
Account read_account(const SQLite::Column& column);
MaterialUnit read_unit(const SQLite::Column& column);
EntryKind read_entry_kind(const SQLite::Column& column);

/// Days are kept as counted from 1970-01-01.
std::int64_t to_days(Date date);
Date to_date(std::int64_t days);
std::optional<Date> read_date(const SQLite::Column& column);

}  // namespace wetout::joblog
