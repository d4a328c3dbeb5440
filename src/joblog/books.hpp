// Booking entries: token, shelf, rows.
#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include <optional>
#include <string>

#include "joblog/draft.hpp"

namespace wetout::joblog {

/// A statement that is prepared when it is first run.
class Prepared {
 public:
  Prepared(SQLite::Database& db, const char* sql) : db_(db), sql_(sql) {}
  /// Ready to be bound; earlier bindings stay.
  SQLite::Statement& ready();

 private:
  SQLite::Database& db_;
  const char* sql_;
  std::optional<SQLite::Statement> statement_ = {};
};

/// Books one entry after the other in one transaction, which its user opens before making it.
/// Members throw SQLite::Exception.
class Books {
 public:
  enum class Mode {
    write,
    foresee,  ///< works out what would be booked, each entry after those before it
  };
  Books(SQLite::Database& db, Mode mode);

  base::Result<Booked> book(const NewEntry& entry);

 private:
  base::Result<Booked> book_new(const NewEntry& entry);
  Draft draft_of(const NewEntry& entry, base::Problems& problems);
  DraftJob find_job(const std::string& slug, const std::string& step, base::Problems& problems);
  void check_currency(const Draft& draft, base::Problems& problems);
  std::int64_t next_number();
  void write(const Draft& draft, std::int64_t number);
  void write_material(ShelfMaterial& material);
  void write_lot(const ShelfMaterial& material, ShelfLot& lot);
  void write_lines(const Draft& draft, std::int64_t number);

  SQLite::Database& db_;
  Mode mode_;
  Shelf shelf_;
  std::optional<std::string> currency_;
  std::optional<std::int64_t> last_number_ = {};
  Prepared find_token_, find_job_, add_lot_, add_entry_, add_movement_;
};

}  // namespace wetout::joblog
