// What the ledger says, worked out once more from its movements.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <string>

#include "joblog/fifo.hpp"
#include "joblog/inspect.hpp"
#include "joblog/ledger_words.hpp"

namespace wetout::joblog {
namespace {

constexpr const char* code = "ledger";

std::string name_of(SQLite::Database& db, std::int64_t lot) {
  SQLite::Statement row(db,
                        "SELECT label || ' of ' || slug FROM lot JOIN material ON material.id ="
                        " material WHERE lot.id = ?1");
  row.bind(1, lot);
  return row.executeStep() ? row.getColumn(0).getString() : std::to_string(lot);
}

}  // namespace

void check_entries(std::vector<Finding>& findings, SQLite::Database& db) {
  find(findings, db, code,
       "SELECT 'there are ' || n || ' entries, the last is ' || last FROM"
       " (SELECT count(*) AS n, ifnull(max(id), 0) AS last FROM entry) WHERE n <> last");
  find(findings, db, code,
       "SELECT 'entry ' || id || ' has no movements' FROM entry"
       " WHERE NOT EXISTS(SELECT 1 FROM movement WHERE entry = entry.id)");
  find(findings, db, code,
       "SELECT 'entry ' || entry || ' has ' || count(*) || ' movements, the last is ' || max(line)"
       " FROM movement GROUP BY entry HAVING count(*) <> max(line)");
  find(findings, db, code,
       "SELECT 'entry ' || entry.id || ' is a ' || kind || ', and moves goods from ' || source ||"
       "   ' to ' || target FROM entry JOIN movement ON entry = entry.id"
       " WHERE NOT (CASE kind WHEN 'receive' THEN source = 'supplier'"
       "   WHEN 'use' THEN source = 'stock' AND target = 'board'"
       "   WHEN 'waste' THEN source = 'stock' AND target = 'waste'"
       "   WHEN 'count' THEN 'adjustment' IN (source, target)"
       "   WHEN 'labour' THEN source = 'labour' ELSE TRUE END"
       "   OR kind = 'receive' AND quantity = 0 AND 'adjustment' IN (source, target))");
  // Every line of what is undone comes back as it was; what is added to it moves no goods.
  find(findings, db, code,
       "SELECT 'entry ' || id || ' does not take back entry ' || undoes FROM entry"
       " WHERE undoes IS NOT NULL AND (EXISTS(SELECT 1 FROM entry AS other"
       "   WHERE other.id = entry.undoes AND other.kind = 'undo')"
       "  OR EXISTS(SELECT line, source, target, lot, job, step, quantity, minor FROM movement"
       "    WHERE entry = entry.undoes EXCEPT"
       "    SELECT line, target, source, lot, job, step, quantity, minor FROM movement"
       "    WHERE entry = entry.id)"
       "  OR EXISTS(SELECT 1 FROM movement WHERE entry = entry.id AND quantity > 0"
       "    AND line > (SELECT max(line) FROM movement WHERE entry = entry.undoes)))");
}

void check_lots(std::vector<Finding>& findings, SQLite::Database& db) {
  SQLite::Statement rows(db,
                         "SELECT lot, entry, source, target, quantity, minor, kind"
                         " FROM movement JOIN entry ON entry.id = entry"
                         " WHERE lot IS NOT NULL ORDER BY lot, entry, line");
  std::int64_t lot = 0;
  LotBalance balance;
  const auto close = [&] {
    const std::int64_t rest = residue(balance);
    if (rest == 0) return;
    findings.push_back({code, "lot " + name_of(db, lot) + " holds " +
                                  std::to_string(balance.quantity) + " at a cost of " +
                                  std::to_string(balance.minor)});
  };
  while (rows.executeStep()) {
    if (rows.getColumn(0).getInt64() != lot) {
      close();
      lot = rows.getColumn(0).getInt64();
      balance = {};
    }
    const bool is_coming = read_account(rows.getColumn(3)) == Account::stock;
    apply(balance, read_account(rows.getColumn(2)), read_account(rows.getColumn(3)),
          rows.getColumn(4).getInt64(), rows.getColumn(5).getInt64());
    // Whoever takes goods may take more than the log knows of; whoever counts finds no less than
    // nothing.
    if (!is_coming && balance.quantity < 0 &&
        read_entry_kind(rows.getColumn(6)) == EntryKind::count) {
      findings.push_back({code, "entry " + rows.getColumn(1).getString() + " counts less than" +
                                    " nothing of lot " + name_of(db, lot)});
    }
  }
  close();
}

void check_sums(std::vector<Finding>& findings, SQLite::Database& db) {
#define ADDED_UP                                                                         \
  "SELECT lot, source, target, count(*) AS lines, sum(quantity), sum(minor), min(entry)" \
  " FROM movement WHERE lot IS NOT NULL GROUP BY lot, source, target"
#define KEPT "SELECT lot, source, target, lines, quantity, minor, first FROM lot_sum"
  find(findings, db, code,
       "SELECT 'the sums kept of lot ' || label || ' of ' || slug ||"
       "   ' are not those of its movements' FROM (SELECT lot FROM"
       "   (SELECT * FROM (" ADDED_UP " EXCEPT " KEPT
       ")"
       "    UNION SELECT * FROM (" KEPT " EXCEPT " ADDED_UP
       ")) GROUP BY lot)"
       " JOIN lot ON lot.id = lot JOIN material ON material.id = material ORDER BY slug, label");
#undef ADDED_UP
#undef KEPT
}

}  // namespace wetout::joblog
