// Taking entries back.
#include <SQLiteCpp/Column.h>

#include "joblog/draft.hpp"
#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"

namespace wetout::joblog {

Draft draft(const NewReversal& reversal, const EntryRow& undone, SQLite::Database& db,
            Shelf& shelf) {
  Draft draft{.kind = EntryKind::undo,
              .head = {.token = reversal.token,
                       .at = undone.at,
                       .on = undone.on,
                       .recorded = reversal.recorded,
                       .event = reversal.event,
                       .note = reversal.note},
              .undoes = reversal.number};
  SQLite::Statement rows(db,
                         "SELECT source, target, lot, job, slug, step, quantity, minor"
                         " FROM movement LEFT JOIN job ON job.id = job WHERE entry = ?1"
                         " ORDER BY line");
  rows.bind(1, reversal.number);
  while (rows.executeStep()) {
    DraftLine line{.source = read_account(rows.getColumn(1)),
                   .target = read_account(rows.getColumn(0)),
                   .job = read_number(rows.getColumn(3)),
                   .job_slug = rows.getColumn(4).getString(),
                   .step = rows.getColumn(5).getString(),
                   .quantity = rows.getColumn(6).getInt64(),
                   .minor = rows.getColumn(7).getInt64()};
    if (const auto id = read_number(rows.getColumn(2))) {
      line.material = &shelf.material_of(*id);
      line.lot = line.material->find(*id);
      line.material->move(*line.lot, line.source, line.target, line.quantity, line.minor);
    }
    draft.lines.push_back(std::move(line));
  }
  settle(draft);
  return draft;
}

}  // namespace wetout::joblog
