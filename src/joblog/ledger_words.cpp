#include "joblog/ledger_words.hpp"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <array>

#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

constexpr std::array all_accounts = {Account::supplier, Account::stock,      Account::board,
                                     Account::waste,    Account::adjustment, Account::labour};
constexpr std::array all_units = {MaterialUnit::milligram, MaterialUnit::micrometre,
                                  MaterialUnit::piece};
constexpr std::array all_kinds = {EntryKind::receive, EntryKind::use,    EntryKind::waste,
                                  EntryKind::count,   EntryKind::labour, EntryKind::undo};

template <class Words>
auto read_word(const SQLite::Column& column, const Words& words, const char* complaint) {
  const std::string_view found(column.getText(), static_cast<std::size_t>(column.getBytes()));
  for (const auto word : words) {
    if (to_string(word) == found) return word;
  }
  throw SQLite::Exception(complaint, SQLITE_CORRUPT);
}

}  // namespace

std::string_view to_string(MaterialUnit unit) {
  switch (unit) {
    case MaterialUnit::milligram:
      return "mg";
    case MaterialUnit::micrometre:
      return "um";
    case MaterialUnit::piece:
      return "piece";
  }
  base::broken_promise("unit of a material outside its list");
}

std::string_view to_string(Account account) {
  switch (account) {
    case Account::supplier:
      return "supplier";
    case Account::stock:
      return "stock";
    case Account::board:
      return "board";
    case Account::waste:
      return "waste";
    case Account::adjustment:
      return "adjustment";
    case Account::labour:
      return "labour";
  }
  base::broken_promise("account outside its list");
}

std::string_view to_string(EntryKind kind) {
  switch (kind) {
    case EntryKind::receive:
      return "receive";
    case EntryKind::use:
      return "use";
    case EntryKind::waste:
      return "waste";
    case EntryKind::count:
      return "count";
    case EntryKind::labour:
      return "labour";
    case EntryKind::undo:
      return "undo";
  }
  base::broken_promise("kind of entry outside its list");
}

Account read_account(const SQLite::Column& column) {
  return read_word(column, all_accounts, "a movement names no known account");
}

MaterialUnit read_unit(const SQLite::Column& column) {
  return read_word(column, all_units, "a material has no known unit");
}

EntryKind read_entry_kind(const SQLite::Column& column) {
  return read_word(column, all_kinds, "an entry is of no known kind");
}

std::int64_t to_days(Date date) {
  base::promise(date.ok(), "a day is on the calendar");
  return std::chrono::sys_days(date).time_since_epoch().count();
}

Date to_date(std::int64_t days) {
  return Date(std::chrono::sys_days(std::chrono::days(static_cast<int>(days))));
}

std::optional<Date> read_date(const SQLite::Column& column) {
  if (column.isNull()) return std::nullopt;
  return to_date(column.getInt64());
}

}  // namespace wetout::joblog
