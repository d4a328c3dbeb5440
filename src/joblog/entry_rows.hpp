// Rows of the tables of entries and movements, out of the log.
#pragma once

#include <SQLiteCpp/Database.h>

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "wetout/joblog/ledger.hpp"
#include "wetout/joblog/stock.hpp"

namespace wetout::joblog {

/// All throw SQLite::Exception.

/// By number. `overdrawn` of their lines is not filled in.
void read_entries(SQLite::Database& db, const EntryFilter& filter,
                  const std::function<void(const EntryRow&)>& read);
std::optional<EntryRow> read_entry(SQLite::Database& db, std::int64_t number);

/// What was on hand after entry `number`: of a material, or of one lot of it.
std::int64_t on_hand_after(SQLite::Database& db, std::int64_t number, const std::string& material,
                           const std::string& lot = {});

/// What was answered when the entry was booked.
Booked answer_again(SQLite::Database& db, const EntryRow& row);

/// True when `row` is what this would have booked: the same goods, costs and notes; `at`, `on` and
/// `recorded` apart.
bool says_the_same(SQLite::Database& db, const EntryRow& row, const NewEntry& entry);

}  // namespace wetout::joblog
