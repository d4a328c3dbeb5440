#include "wetout/work/ledger.hpp"

#include <deque>
#include <utility>

#include "ledger_job.hpp"
#include "ledger_shop.hpp"
#include "ledger_totals.hpp"
#include "stored_plan.hpp"
#include "wetout/base/check.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

LedgerAnswer answer_of(const LedgerShop& shop, std::string action) {
  LedgerAnswer answer;
  answer.units = shop.units;
  answer.document.program = program();
  answer.document.made = time::rfc3339(shop.now, shop.context.zone);
  answer.document.action = std::move(action);
  answer.document.currency = shop.context.currency;
  return answer;
}

// The job that is meant, or nothing where none is named.
base::Result<std::optional<std::string>> job_meant(const LedgerShop& shop,
                                                   const std::optional<std::string>& typed) {
  if (!typed) return std::nullopt;
  auto slug = job_named(shop.log, *typed);
  if (!slug) return tl::unexpected(slug.error());
  return std::optional(std::move(*slug));
}

void latest_entries(const LedgerShop& shop, const joblog::EntryFilter& filter,
                    std::optional<std::size_t> most, report::LedgerDocument& document) {
  std::deque<joblog::EntryRow> last;
  shop.log.each_entry(filter, [&](const joblog::EntryRow& entry) {
    last.push_back(entry);
    if (!most || last.size() <= *most) return;
    last.pop_front();
    ++document.earlier;
  });
  for (const joblog::EntryRow& entry : last) {
    document.entries.push_back(entry_of(entry, shop.context));
  }
}

}  // namespace

base::Result<LedgerAnswer> ledger(const Workshop& workshop, const LedgerRequest& request) {
  const auto shop = ledger_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto slug = job_meant(*shop, request.job);
  if (!slug) return tl::unexpected(slug.error());
  LedgerAnswer answer = answer_of(*shop, *slug ? "job" : "list");
  report::LedgerDocument& document = answer.document;
  if (*slug) {
    const joblog::JobRow job = shop->log.job(**slug).value();
    document.job = report::LedgerJob{job.slug, job.name, std::nullopt};
  }
  if (!request.by) {
    joblog::EntryFilter filter;
    filter.job_slug = *slug;
    latest_entries(*shop, filter, request.latest, document);
    if (*slug) {
      tell_job(*shop, **slug, document);
    } else {
      document.months = month_sums(*shop, *slug);
    }
    return answer;
  }
  switch (*request.by) {
    case LedgerBy::month:
      document.action = "month";
      document.months = month_sums(*shop, *slug);
      break;
    case LedgerBy::material:
      document.action = "material";
      document.materials = material_sums(*shop, *slug);
      break;
    case LedgerBy::job:
      document.action = "board";
      document.boards = board_sums(*shop, *slug);
      break;
  }
  return answer;
}

base::Result<void> export_ledger(const Workshop& workshop, const std::optional<std::string>& job,
                                 LedgerExport format,
                                 const std::function<void(std::string_view)>& write) {
  const auto shop = ledger_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto slug = job_meant(*shop, job);
  if (!slug) return tl::unexpected(slug.error());
  const bool is_journal = format == LedgerExport::journal;
  const auto write_entry = [&](const report::LedgerEntry& entry) {
    write(is_journal ? report::journal_entry(entry) : report::csv_rows(entry));
  };
  write(is_journal ? report::journal_head({.program = program(),
                                           .made = time::rfc3339(shop->now, shop->context.zone),
                                           .currency = shop->context.currency,
                                           .job = *slug})
                   : report::csv_head());
  joblog::EntryFilter filter;
  filter.job_slug = *slug;
  shop->log.each_entry(
      filter, [&](const joblog::EntryRow& entry) { write_entry(entry_of(entry, shop->context)); });
  for (const report::LedgerEntry& entry : unbooked_work(*shop, *slug)) write_entry(entry);
  return {};
}

base::Result<LedgerAnswer> undo_entry(const Workshop& workshop, const LedgerUndo& undo) {
  base::promise(!undo.token.empty(), "a call has a token");
  const auto shop = ledger_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const joblog::NewReversal reversal{.token = undo.token + "/undo",
                                     .number = undo.entry,
                                     .recorded = shop->now,
                                     .event = std::nullopt,
                                     .note = undo.note.value_or("")};
  std::optional<joblog::Booked> booked;
  if (workshop.dry_run) {
    const auto all = shop->log.foresee_bookings({reversal});
    if (!all) return tl::unexpected(all.error());
    booked = all->front();
  } else {
    const auto one =
        joblog::Log::open(workshop.log, {.access = joblog::Access::write}).book(reversal);
    if (!one) return tl::unexpected(one.error());
    booked = *one;
  }
  LedgerAnswer answer = answer_of(*shop, "undo");
  report::LedgerDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  joblog::EntryFilter filter;
  filter.number = undo.entry;
  const joblog::EntryRow undone = shop->log.entries(filter).at(0);
  joblog::EntryRow row;
  row.number = booked->number;
  row.kind = joblog::EntryKind::undo;
  row.at = undone.at;
  row.on = undone.on;
  row.recorded = shop->now;
  row.undoes = undo.entry;
  row.note = reversal.note;
  row.lines = booked->lines;
  document.entries.push_back(entry_of(row, shop->context));
  document.entries.back().already = booked->already;
  document.undone = entry_of(undone, shop->context);
  document.undone->undone_by = booked->number;
  if (undone.event) {
    document.notices.push_back(
        {.code = "ledger.of_event",
         .text = "it came from a record, which stays: wetout record undo takes that back",
         .subject = "event " + std::to_string(*undone.event)});
  }
  return answer;
}

}  // namespace wetout::work
