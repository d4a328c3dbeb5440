#include "ledger_entries.hpp"

#include <optional>
#include <utility>

#include "stock_shop.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

std::optional<std::string> given(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(text);
}

}  // namespace

EntryContext entry_context(const joblog::Log* log, const time::Zone& zone, std::string currency) {
  EntryContext context{zone, std::move(currency), {}};
  if (log == nullptr) return context;
  for (const joblog::MaterialTotals& totals : log->material_totals()) {
    context.units[totals.material.slug] = totals.material.unit;
  }
  return context;
}

report::LedgerLine line_of(const joblog::MovementRow& row, const EntryContext& context) {
  report::LedgerLine line;
  line.from = joblog::to_string(row.source);
  line.to = joblog::to_string(row.target);
  line.material = given(row.material);
  line.lot = given(row.lot);
  line.job = given(row.job_slug);
  line.step = given(row.step);
  line.amount.count = row.quantity;
  line.amount.unit = report::GoodsUnit::minute;
  if (!row.material.empty()) line.amount.unit = unit_of(context.units.at(row.material));
  line.cost = {row.minor, context.currency};
  line.expired = row.expired;
  if (row.overdrawn > 0) line.overdrawn = report::GoodsAmount{row.overdrawn, line.amount.unit};
  return line;
}

report::LedgerEntry entry_of(const joblog::EntryRow& row, const EntryContext& context) {
  report::LedgerEntry entry;
  entry.number = row.number;
  entry.kind = joblog::to_string(row.kind);
  entry.date = time::print(row.on);
  entry.at = time::rfc3339(row.at, context.zone);
  entry.recorded = time::rfc3339(row.recorded, context.zone);
  entry.event = row.event;
  entry.undoes = row.undoes;
  entry.undone_by = row.undone_by;
  entry.note = given(row.note);
  for (const joblog::MovementRow& line : row.lines) entry.lines.push_back(line_of(line, context));
  return entry;
}

}  // namespace wetout::work
