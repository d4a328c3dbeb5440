// What was bought, used and worked, and what it cost: the answer of `ledger`.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view ledger_format = "wetout.ledger/1";

/// Goods are counted in whole units, so that they add up: milligrams, micrometres of roll, pieces;
/// work in minutes.
enum class GoodsUnit { gram, metre, piece, minute };

struct GoodsAmount {
  std::int64_t count = 0;  ///< milligrams, micrometres, pieces, minutes
  GoodsUnit unit = GoodsUnit::gram;
  friend bool operator==(const GoodsAmount&, const GoodsAmount&) = default;
};

/// One way of goods or work and their cost.
struct LedgerLine {
  std::string from;                     ///< supplier | stock | board | waste | adjustment | labour
  std::string to;                       ///< likewise
  std::optional<std::string> material;  ///< id; nothing: work
  std::optional<std::string> lot;       ///< label
  std::optional<std::string> job;       ///< id
  std::optional<std::string> step;      ///< "bottom-lam/wet"
  GoodsAmount amount;
  units::Money cost;
  bool expired = false;                  ///< of a taking just booked: the lot was past its date
  std::optional<GoodsAmount> overdrawn;  ///< likewise: how much of it the lot did not have
};

struct LedgerEntry {
  std::optional<std::int64_t> number;   ///< in the whole log; nothing: worked out, not booked
  bool already = false;                 ///< it was there before: the call was sent again
  std::string kind;                     ///< receive | use | waste | count | labour | undo
  std::string date;                     ///< "2026-06-13", on the shop's calendar
  std::string at;                       ///< RFC 3339 with offset
  std::optional<std::string> recorded;  ///< likewise
  std::optional<std::int64_t> event;    ///< the recorded event that it came from
  std::optional<std::int64_t> undoes;
  std::optional<std::int64_t> undone_by;
  std::optional<std::string> note;
  std::vector<LedgerLine> lines;
};

struct LedgerJob {
  std::string id;
  std::string name;
  std::optional<int> revision;  ///< of its last plan
};

/// A material in a coat: what the plan said, what was recorded as mixed, what was taken from stock.
struct PlanVsActual {
  std::optional<std::string> coat;      ///< id; nothing: of no coat
  std::string material;                 ///< id
  std::optional<GoodsAmount> planned;   ///< nothing: the plan has none of it
  std::optional<GoodsAmount> recorded;  ///< parts of what was mixed; nothing: not recorded
  GoodsAmount used;                     ///< from stock
  std::optional<units::Money> planned_cost;
  units::Money cost;
};

/// Work on one step.
struct StepWork {
  std::optional<std::string> step;  ///< nothing: of no step
  std::int64_t minutes = 0;
  std::optional<units::Money> cost;  ///< nothing: the shop file gives no labour
  bool booked = false;               ///< in the ledger; else worked out from start and done
};

struct JobSums {
  std::optional<units::Money> planned_goods;
  units::Money goods;
  units::Money labour;
  std::int64_t minutes = 0;
  units::Money all;                   ///< goods and labour
  std::optional<double> waste_share;  ///< of the resin recorded as mixed, left over or spilled
};

struct GoodsFlow {
  GoodsAmount amount;
  units::Money cost;
};

struct MaterialSums {
  std::string material;
  std::string name;
  GoodsFlow received, used, wasted, adjusted, on_hand;
};

struct MonthSums {
  std::string month;  ///< "2026-06"
  units::Money received, used, wasted, adjusted, labour;
  std::int64_t minutes = 0;
};

struct BoardSums {
  std::string job;  ///< id
  std::string name;
  units::Money goods, labour, all;
  std::int64_t minutes = 0;
};

struct LedgerDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string action;   ///< list | job | month | material | board | undo
  bool saved = false;   ///< true of an undo that was not a dry run
  std::string currency;
  std::optional<LedgerJob> job;
  std::vector<LedgerEntry> entries;   ///< by number; of a list perhaps the last ones only
  std::int64_t earlier = 0;           ///< entries before those
  std::optional<LedgerEntry> undone;  ///< what an undo took back
  std::optional<JobSums> cost;        ///< of a job
  std::vector<PlanVsActual> plan_vs_actual;
  std::vector<StepWork> work;
  std::vector<MonthSums> months;
  std::vector<MaterialSums> materials;
  std::vector<BoardSums> boards;
  base::Notices notices;
};

/// One line; docs/formats/ledger.schema.json.
std::string to_json(const LedgerDocument& document);
std::string to_text(const LedgerDocument& document, units::System system);

/// What stands before the entries of an export.
struct ExportHead {
  std::string program;
  std::string made;
  std::string currency;
  std::optional<std::string> job;  ///< id
};

/// A plain-text double-entry journal (docs/formats/journal.md), entry by entry.
std::string journal_head(const ExportHead& head);
std::string journal_entry(const LedgerEntry& entry);

/// A table for spreadsheets (docs/formats/journal.md), a row for each line of an entry. Cells that
/// a spreadsheet might take for a formula are marked as text.
std::string csv_head();
std::string csv_rows(const LedgerEntry& entry);

}  // namespace wetout::report
