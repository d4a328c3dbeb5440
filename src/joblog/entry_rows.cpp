#include "joblog/entry_rows.hpp"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <map>
#include <string>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

// getString of NULL is empty.
constexpr const char* entry_query =
    "SELECT entry.id, entry.token, entry.kind, entry.at, entry.day, entry.recorded, entry.event,"
    " entry.undoes, later.id, entry.note, source, target, material.slug, label, job.slug, step,"
    " quantity, minor, source = 'stock' AND target IN ('board', 'waste') AND expires < entry.day"
    " FROM entry LEFT JOIN entry AS later ON later.undoes = entry.id"
    " LEFT JOIN movement ON movement.entry = entry.id LEFT JOIN lot ON lot.id = movement.lot"
    " LEFT JOIN material ON material.id = lot.material LEFT JOIN job ON job.id = movement.job ";

EntryRow read_head(SQLite::Statement& row) {
  return {.number = row.getColumn(0).getInt64(),
          .token = row.getColumn(1).getString(),
          .kind = read_entry_kind(row.getColumn(2)),
          .at = to_instant(row.getColumn(3).getInt64()),
          .on = to_date(row.getColumn(4).getInt64()),
          .recorded = to_instant(row.getColumn(5).getInt64()),
          .event = read_number(row.getColumn(6)),
          .undoes = read_number(row.getColumn(7)),
          .undone_by = read_number(row.getColumn(8)),
          .note = row.getColumn(9).getString()};
}

MovementRow read_line(SQLite::Statement& row) {
  return {.source = read_account(row.getColumn(10)),
          .target = read_account(row.getColumn(11)),
          .material = row.getColumn(12).getString(),
          .lot = row.getColumn(13).getString(),
          .job_slug = row.getColumn(14).getString(),
          .step = row.getColumn(15).getString(),
          .quantity = row.getColumn(16).getInt64(),
          .minor = row.getColumn(17).getInt64(),
          .expired = row.getColumn(18).getInt() == 1};
}

}  // namespace

void read_entries(SQLite::Database& db, const EntryFilter& filter,
                  const std::function<void(const EntryRow&)>& read) {
  std::string query = std::string(entry_query) + "WHERE TRUE";
  if (filter.job_slug) {
    query +=
        " AND entry.id IN (SELECT entry FROM movement JOIN job ON job.id = movement.job"
        " WHERE slug = ?1)";
  }
  if (filter.event) query += " AND entry.event = ?2";
  if (filter.number) query += " AND entry.id = ?3";
  SQLite::Statement rows(db, query + " ORDER BY entry.id, line");
  if (filter.job_slug) bind_text(rows, 1, *filter.job_slug);
  if (filter.event) rows.bind(2, *filter.event);
  if (filter.number) rows.bind(3, *filter.number);
  std::optional<EntryRow> entry;
  while (rows.executeStep()) {
    if (entry && entry->number != rows.getColumn(0).getInt64()) {
      read(*entry);
      entry.reset();
    }
    if (!entry) entry = read_head(rows);
    if (!rows.getColumn(10).isNull()) entry->lines.push_back(read_line(rows));
  }
  if (entry) read(*entry);
}

std::optional<EntryRow> read_entry(SQLite::Database& db, std::int64_t number) {
  std::optional<EntryRow> entry;
  read_entries(db, {.number = number}, [&](const EntryRow& row) { entry = row; });
  return entry;
}

std::int64_t on_hand_after(SQLite::Database& db, std::int64_t number, const std::string& material,
                           const std::string& lot) {
  SQLite::Statement sum(db,
                        "SELECT ifnull(sum(iif(target = 'stock', quantity, -quantity)), 0)"
                        " FROM material JOIN lot ON lot.material = material.id"
                        " JOIN movement ON movement.lot = lot.id"
                        " WHERE slug = ?1 AND (?2 = '' OR label = ?2) AND entry <= ?3");
  bind_text(sum, 1, material);
  bind_text(sum, 2, lot);
  sum.bind(3, number);
  sum.executeStep();
  return sum.getColumn(0).getInt64();
}

Booked answer_again(SQLite::Database& db, const EntryRow& row) {
  Booked booked{.number = row.number, .already = true, .lines = row.lines};
  if (row.kind != EntryKind::use && row.kind != EntryKind::waste) return booked;
  std::map<std::pair<std::string, std::string>, std::int64_t> on_hand;
  for (auto line = booked.lines.rbegin(); line != booked.lines.rend(); ++line) {
    const auto lot = std::pair(line->material, line->lot);
    const auto [after, is_first] = on_hand.emplace(lot, 0);
    if (is_first) after->second = on_hand_after(db, row.number, line->material, line->lot);
    line->overdrawn = std::clamp<std::int64_t>(-after->second, 0, line->quantity);
    after->second += line->quantity;
  }
  std::vector<std::string> materials;
  std::map<std::string, std::int64_t> taken;
  for (const MovementRow& line : booked.lines) {
    if (taken[line.material] == 0) materials.push_back(line.material);
    taken[line.material] += line.quantity;
  }
  for (const std::string& material : materials) {
    const std::int64_t missing =
        std::min(taken[material], -on_hand_after(db, row.number, material));
    if (missing > 0) booked.shortages.push_back({material, missing});
  }
  return booked;
}

}  // namespace wetout::joblog
