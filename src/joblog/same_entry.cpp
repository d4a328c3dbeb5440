// Whether an entry that is booked once more is the one that is there.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "joblog/entry_rows.hpp"
#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"

namespace wetout::joblog {
namespace {

using Amounts = std::map<std::string, std::int64_t>;

bool is_lot_as(SQLite::Database& db, const std::string& label, const Received& part) {
  SQLite::Statement lot(db,
                        "SELECT batch, expires, width_um FROM lot"
                        " JOIN material ON material.id = material WHERE slug = ?1 AND label = ?2");
  bind_text(lot, 1, part.material.slug);
  bind_text(lot, 2, label);
  return lot.executeStep() && lot.getColumn(0).getString() == part.batch &&
         read_date(lot.getColumn(1)) == part.expires &&
         read_number(lot.getColumn(2)) == part.width_um;
}

// A lot that was taken back may have been described anew by a later receipt.
bool is_same(SQLite::Database& db, const EntryRow& row, const NewReceipt& receipt) {
  std::size_t n = 0;
  for (const MovementRow& line : row.lines) {
    if (line.source != Account::supplier) continue;
    if (n == receipt.parts.size()) return false;
    const Received& part = receipt.parts[n++];
    if (line.material != part.material.slug || line.quantity != part.quantity ||
        line.minor != part.cost_minor || (!part.lot.empty() && line.lot != part.lot) ||
        (!row.undone_by && !is_lot_as(db, line.lot, part))) {
      return false;
    }
  }
  return n == receipt.parts.size();
}

bool are_same(const EntryRow& row, const std::vector<Taking>& takings) {
  Amounts booked;
  std::map<std::pair<std::string, std::string>, std::int64_t> of_lots;
  for (const MovementRow& line : row.lines) {
    booked[line.material] += line.quantity;
    of_lots[{line.material, line.lot}] += line.quantity;
  }
  Amounts wanted;
  for (const Taking& taking : takings) {
    wanted[taking.material.slug] += taking.quantity;
    if (!taking.lot.empty()) of_lots[{taking.material.slug, taking.lot}] -= taking.quantity;
  }
  return booked == wanted && std::all_of(of_lots.begin(), of_lots.end(),
                                         [](const auto& lot) { return lot.second >= 0; });
}

bool is_of(const EntryRow& row, const std::string& job, const std::string& step) {
  return std::all_of(row.lines.begin(), row.lines.end(), [&](const MovementRow& line) {
    return line.job_slug == job && line.step == step;
  });
}

bool is_same(SQLite::Database&, const EntryRow& row, const NewUse& use) {
  return is_of(row, use.job_slug, use.step) && are_same(row, use.takings);
}

bool is_same(SQLite::Database&, const EntryRow& row, const NewWaste& waste) {
  return are_same(row, waste.takings);
}

bool are_same(const EntryRow& row, const std::vector<Cut>& cuts) {
  if (row.lines.size() != 2 * cuts.size()) return false;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const MovementRow& off = row.lines[2 * i];
    const MovementRow& piece = row.lines[2 * i + 1];
    if (off.source != Account::stock || off.material != cuts[i].material.slug ||
        off.quantity != cuts[i].quantity || piece.quantity != cuts[i].length ||
        (!cuts[i].lot.empty() && off.lot != cuts[i].lot)) {
      return false;
    }
  }
  return true;
}

bool is_same(SQLite::Database& db, const EntryRow& row, const NewCount& count) {
  if (count.counts.empty()) return are_same(row, count.cuts);
  std::set<std::string> booked;
  for (const MovementRow& line : row.lines) booked.insert(line.material);
  std::set<std::string> wanted;
  for (const Counted& one : count.counts) {
    wanted.insert(one.material.slug);
    if (on_hand_after(db, row.number, one.material.slug, one.lot) != one.quantity) return false;
  }
  return booked == wanted;
}

bool is_same(SQLite::Database&, const EntryRow& row, const NewLabour& labour) {
  return is_of(row, labour.job_slug, labour.step) && row.lines.size() == 1 &&
         row.lines[0].quantity == labour.minutes && row.lines[0].minor == labour.cost_minor;
}

struct Said {
  EntryKind kind;
  std::optional<std::int64_t> event;
  std::string note;
};

Said said(const NewReversal& reversal) { return {EntryKind::undo, reversal.event, reversal.note}; }
template <class Entry>
Said said(const Entry& entry, EntryKind kind) {
  return {kind, entry.head.event, entry.head.note};
}
Said said(const NewReceipt& entry) { return said(entry, EntryKind::receive); }
Said said(const NewUse& entry) { return said(entry, EntryKind::use); }
Said said(const NewWaste& entry) { return said(entry, EntryKind::waste); }
Said said(const NewCount& entry) { return said(entry, EntryKind::count); }
Said said(const NewLabour& entry) { return said(entry, EntryKind::labour); }

bool is_same(SQLite::Database&, const EntryRow& row, const NewReversal& reversal) {
  return row.undoes == reversal.number;
}

}  // namespace

bool says_the_same(SQLite::Database& db, const EntryRow& row, const NewEntry& entry) {
  return std::visit(
      [&](const auto& wanted) {
        const Said words = said(wanted);
        return row.kind == words.kind && row.event == words.event && row.note == words.note &&
               is_same(db, row, wanted);
      },
      entry);
}

}  // namespace wetout::joblog
