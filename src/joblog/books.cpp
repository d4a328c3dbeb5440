#include "joblog/books.hpp"

#include <SQLiteCpp/Column.h>

#include <utility>

#include "joblog/entry_rows.hpp"
#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

const std::string& token_of(const NewEntry& entry) {
  return std::visit(
      [](const auto& one) -> const std::string& {
        if constexpr (requires { one.head; }) {
          return one.head.token;
        } else {
          return one.token;
        }
      },
      entry);
}

base::Problem taken_token(const EntryRow& row) {
  return {.code = "entry.token",
          .message = "This token belongs to entry " + std::to_string(row.number) +
                     " of the ledger (" + std::string(to_string(row.kind)) +
                     "), which says something else.",
          .found = row.token,
          .hint = "Use a new token for a new entry."};
}

// What keeps an entry from being taken back.
std::optional<base::Problem> objection(std::int64_t number, const std::optional<EntryRow>& entry) {
  const std::string name = std::to_string(number);
  if (!entry) {
    return base::Problem{.code = "entry.unknown",
                         .message = "There is no entry " + name + " in the ledger.",
                         .found = name,
                         .expected = "the number of an entry, as `wetout ledger` lists them"};
  }
  if (entry->kind == EntryKind::undo) {
    return base::Problem{.code = "entry.is_undo",
                         .message = "Entry " + name + " takes entry " +
                                    std::to_string(*entry->undoes) +
                                    " back and cannot be taken back itself.",
                         .found = name,
                         .hint = "Book what was taken back once more."};
  }
  if (entry->undone_by) {
    return base::Problem{.code = "entry.undone",
                         .message = "Entry " + name + " has been taken back already, by entry " +
                                    std::to_string(*entry->undone_by) + ".",
                         .found = name};
  }
  return std::nullopt;
}

std::optional<std::string> read_currency(SQLite::Database& db) {
  SQLite::Statement row(db, "SELECT code FROM currency");
  if (!row.executeStep()) return std::nullopt;
  return row.getColumn(0).getString();
}

Booked answer(const Draft& draft, std::int64_t number) {
  Booked booked{.number = number, .shortages = draft.shortages};
  booked.lines.reserve(draft.lines.size());
  for (const DraftLine& line : draft.lines) {
    booked.lines.push_back(
        {.source = line.source,
         .target = line.target,
         .material = line.material == nullptr ? "" : line.material->material.slug,
         .lot = line.lot == nullptr ? "" : line.lot->label,
         .job_slug = line.job_slug,
         .step = line.step,
         .quantity = line.quantity,
         .minor = line.minor,
         .expired = line.expired,
         .overdrawn = line.overdrawn});
  }
  return booked;
}

void bind_word(SQLite::Statement& statement, int at, const std::string& word) {
  if (word.empty()) {
    statement.bind(at);
  } else {
    statement.bindNoCopy(at, word);
  }
}

void bind_number(SQLite::Statement& statement, int at, std::optional<std::int64_t> number) {
  if (number) {
    statement.bind(at, *number);
  } else {
    statement.bind(at);
  }
}

// Words of the log are literals.
void bind_literal(SQLite::Statement& statement, int at, std::string_view word) {
  statement.bindNoCopy(at, word.data());
}

}  // namespace

SQLite::Statement& Prepared::ready() {
  if (!statement_) statement_.emplace(db_, sql_);
  statement_->reset();
  return *statement_;
}

Books::Books(SQLite::Database& db, Mode mode)
    : db_(db),
      mode_(mode),
      shelf_(db),
      currency_(read_currency(db)),
      find_token_(db, "SELECT id FROM entry WHERE token = ?1"),
      find_job_(db, "SELECT id FROM job WHERE slug = ?1"),
      add_lot_(db,
               "INSERT INTO lot(material, label, batch, received, expires, width_um)"
               " VALUES(?1, ?2, ?3, ?4, ?5, ?6)"),
      add_entry_(db,
                 "INSERT INTO entry(id, token, kind, at, day, recorded, event, undoes, note)"
                 " VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)"),
      add_movement_(db,
                    "INSERT INTO movement(entry, line, source, target, lot, job, step, quantity,"
                    " minor) VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)") {}

base::Result<Booked> Books::book(const NewEntry& entry) {
  const std::string& token = token_of(entry);
  base::promise(!token.empty(), "an entry has a token");
  SQLite::Statement& same = find_token_.ready();
  same.bindNoCopy(1, token);
  if (!same.executeStep()) return book_new(entry);
  const auto earlier = read_entry(db_, same.getColumn(0).getInt64());
  if (!says_the_same(db_, *earlier, entry)) return base::fail(taken_token(*earlier));
  return answer_again(db_, *earlier);
}

base::Result<Booked> Books::book_new(const NewEntry& entry) {
  base::Problems problems;
  const Draft draft = draft_of(entry, problems);
  check_currency(draft, problems);
  if (problems.empty()) {
    for (const DraftLine& line : draft.lines) {
      const std::string of = line.material == nullptr ? "" : line.material->material.slug;
      is_in_range(line.quantity, 0, "quantity", of, problems);
      is_in_range(line.minor, 0, "cost", of, problems);
    }
  }
  if (!problems.empty()) {
    shelf_.forget();
    return base::fail(std::move(problems));
  }
  const std::int64_t number = next_number();
  if (mode_ == Mode::write) write(draft, number);
  if (!draft.currency.empty()) currency_ = draft.currency;
  last_number_ = number;
  return answer(draft, number);
}

Draft Books::draft_of(const NewEntry& entry, base::Problems& problems) {
  struct Drafter {
    Books& books;
    base::Problems& problems;
    Draft operator()(const NewReceipt& receipt) { return draft(receipt, books.shelf_, problems); }
    Draft operator()(const NewUse& use) {
      return draft(use, books.find_job(use.job_slug, use.step, problems), books.shelf_, problems);
    }
    Draft operator()(const NewWaste& waste) { return draft(waste, books.shelf_, problems); }
    Draft operator()(const NewCount& count) { return draft(count, books.shelf_, problems); }
    Draft operator()(const NewLabour& labour) {
      return draft(labour, books.find_job(labour.job_slug, labour.step, problems), problems);
    }
    Draft operator()(const NewReversal& reversal) {
      const auto undone = read_entry(books.db_, reversal.number);
      if (auto problem = objection(reversal.number, undone)) {
        problems.push_back(std::move(*problem));
        return {};
      }
      return draft(reversal, *undone, books.db_, books.shelf_);
    }
  };
  return std::visit(Drafter{*this, problems}, entry);
}

DraftJob Books::find_job(const std::string& slug, const std::string& step,
                         base::Problems& problems) {
  SQLite::Statement& row = find_job_.ready();
  row.bindNoCopy(1, slug);
  DraftJob job{.slug = slug, .step = step};
  if (row.executeStep()) {
    job.id = row.getColumn(0).getInt64();
  } else if (mode_ == Mode::write) {
    problems.push_back(unknown_job(slug));
  }
  row.reset();
  return job;
}

void Books::check_currency(const Draft& draft, base::Problems& problems) {
  if (draft.currency.empty() || !currency_ || draft.currency == *currency_) return;
  problems.push_back({.code = "ledger.currency",
                      .message = "The ledger is kept in " + *currency_ + ".",
                      .found = draft.currency,
                      .expected = *currency_,
                      .hint = "A log has one currency. Enter what was paid in it."});
}

std::int64_t Books::next_number() {
  if (last_number_) return *last_number_ + 1;
  SQLite::Statement last(db_, "SELECT ifnull(max(id), 0) FROM entry");
  last.executeStep();
  return last.getColumn(0).getInt64() + 1;
}

void Books::write(const Draft& draft, std::int64_t number) {
  if (!draft.currency.empty() && !currency_) {
    SQLite::Statement add(db_, "INSERT INTO currency(id, code) VALUES(1, ?1)");
    bind_text(add, 1, draft.currency);
    add.exec();
  }
  for (const DraftLine& line : draft.lines) {
    if (line.material == nullptr) continue;
    write_material(*line.material);
    if (line.lot->is_new) write_lot(*line.material, *line.lot);
  }
  SQLite::Statement& add = add_entry_.ready();
  add.bind(1, number);
  add.bindNoCopy(2, draft.head.token);
  bind_literal(add, 3, to_string(draft.kind));
  add.bind(4, to_seconds(draft.head.at));
  add.bind(5, to_days(draft.head.on));
  add.bind(6, to_seconds(draft.head.recorded));
  bind_number(add, 7, draft.head.event);
  bind_number(add, 8, draft.undoes);
  bind_word(add, 9, draft.head.note);
  add.exec();
  write_lines(draft, number);
}

void Books::write_material(ShelfMaterial& material) {
  if (material.id != 0 && !material.is_renamed) return;
  SQLite::Statement put(db_, material.id == 0
                                 ? "INSERT INTO material(slug, name, unit) VALUES(?1, ?2, ?3)"
                                 : "UPDATE material SET name = ?2 WHERE slug = ?1 AND unit = ?3");
  bind_text(put, 1, material.material.slug);
  bind_text(put, 2, material.material.name);
  bind_literal(put, 3, to_string(material.material.unit));
  put.exec();
  if (material.id == 0) material.id = db_.getLastInsertRowid();
  material.is_renamed = false;
}

void Books::write_lot(const ShelfMaterial& material, ShelfLot& lot) {
  SQLite::Statement again(db_,
                          "UPDATE lot SET batch = ?3, received = ?4, expires = ?5, width_um = ?6"
                          " WHERE material = ?1 AND label = ?2");
  SQLite::Statement& put = lot.id == 0 ? add_lot_.ready() : again;
  put.bind(1, material.id);
  put.bindNoCopy(2, lot.label);
  bind_word(put, 3, lot.batch);
  put.bind(4, to_seconds(lot.received));
  bind_number(put, 5, lot.expires ? std::optional(to_days(*lot.expires)) : std::nullopt);
  bind_number(put, 6, lot.width_um);
  put.exec();
  if (lot.id == 0) lot.id = db_.getLastInsertRowid();
  lot.is_new = false;
}

void Books::write_lines(const Draft& draft, std::int64_t number) {
  std::int64_t n = 0;
  for (const DraftLine& line : draft.lines) {
    SQLite::Statement& add = add_movement_.ready();
    add.bind(1, number);
    add.bind(2, ++n);
    bind_literal(add, 3, to_string(line.source));
    bind_literal(add, 4, to_string(line.target));
    bind_number(add, 5, line.lot == nullptr ? std::nullopt : std::optional(line.lot->id));
    bind_number(add, 6, line.job);
    bind_word(add, 7, line.step);
    add.bind(8, line.quantity);
    add.bind(9, line.minor);
    add.exec();
  }
}

}  // namespace wetout::joblog
