#include "record_booked.hpp"

#include <map>
#include <utility>
#include <variant>

#include "ledger_entries.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

EntryContext context_of(const JobOfRecord& job, const joblog::Log* log) {
  std::string currency = job.shop ? job.shop->shop.currency : "";
  if (log != nullptr) {
    if (const auto kept = log->currency()) currency = *kept;
  }
  return entry_context(log, job.zone, std::move(currency));
}

joblog::EntryKind kind_of(const joblog::NewEntry& entry) {
  if (std::holds_alternative<joblog::NewUse>(entry)) return joblog::EntryKind::use;
  if (std::holds_alternative<joblog::NewLabour>(entry)) return joblog::EntryKind::labour;
  if (std::holds_alternative<joblog::NewCount>(entry)) return joblog::EntryKind::count;
  return joblog::EntryKind::undo;
}

// What an entry of this call says besides its lines. An undo is of the day of what it takes back.
joblog::EntryRow row_of(const joblog::NewEntry& entry, const joblog::Log* log) {
  joblog::EntryRow row;
  row.kind = kind_of(entry);
  const auto take = [&](const joblog::EntryHead& head) {
    row.at = head.at;
    row.on = head.on;
    row.recorded = head.recorded;
    row.event = head.event;
    row.note = head.note;
  };
  if (const auto* use = std::get_if<joblog::NewUse>(&entry)) take(use->head);
  if (const auto* kept = std::get_if<joblog::NewCount>(&entry)) take(kept->head);
  if (const auto* work = std::get_if<joblog::NewLabour>(&entry)) take(work->head);
  if (const auto* undo = std::get_if<joblog::NewReversal>(&entry)) {
    joblog::EntryFilter filter;
    filter.number = undo->number;
    const joblog::EntryRow undone = log->entries(filter).at(0);
    row.at = undone.at;
    row.on = undone.on;
    row.recorded = undo->recorded;
    row.event = undo->event;
    row.undoes = undo->number;
    row.note = undo->note;
  }
  return row;
}

base::Notice short_of(const joblog::Shortage& shortage, MaterialUnit unit) {
  const auto count = static_cast<double>(shortage.quantity);
  base::Notice notice{.code = "stock.overdrawn",
                      .text =
                          "more was taken than the log knows to be there: a purchase is not in "
                          "it, or a count is due",
                      .subject = shortage.material};
  switch (unit) {
    case MaterialUnit::milligram:
      notice.value = count / 1e3;
      notice.unit = "g";
      break;
    case MaterialUnit::micrometre:
      notice.value = count / 1e6;
      notice.unit = "m";
      break;
    case MaterialUnit::piece:
      notice.value = count;
      notice.unit = "pieces";
      break;
  }
  return notice;
}

}  // namespace

std::vector<report::LedgerEntry> booked_entries(const std::vector<joblog::NewEntry>& entries,
                                                const std::vector<joblog::Booked>& booked,
                                                const std::vector<joblog::Material>& materials,
                                                const JobOfRecord& job, const joblog::Log* log) {
  std::vector<report::LedgerEntry> all;
  if (entries.empty()) return all;
  EntryContext context = context_of(job, log);
  for (const joblog::Material& one : materials) context.units.emplace(one.slug, one.unit);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    joblog::EntryRow row = row_of(entries[i], log);
    row.number = booked[i].number;
    row.lines = booked[i].lines;
    all.push_back(entry_of(row, context));
    all.back().already = booked[i].already;
  }
  return all;
}

std::vector<report::LedgerEntry> earlier_entries(std::int64_t event, const JobOfRecord& job,
                                                 const joblog::Log& log) {
  joblog::EntryFilter filter;
  filter.event = event;
  std::vector<report::LedgerEntry> all;
  const auto rows = log.entries(filter);
  if (rows.empty()) return all;
  const EntryContext context = context_of(job, &log);
  for (const joblog::EntryRow& row : rows) {
    all.push_back(entry_of(row, context));
    all.back().already = true;
  }
  return all;
}

base::Notices notices_of(const std::vector<joblog::Booked>& booked, const Bookings& bookings) {
  std::map<std::string, MaterialUnit> units;
  for (const joblog::Material& one : bookings.materials) units.emplace(one.slug, one.unit);
  base::Notices notices;
  for (const std::string& slug : bookings.never_received) {
    notices.push_back({.code = "stock.never_received",
                       .text = "none of it was ever received, so it costs nothing here",
                       .subject = slug});
  }
  for (const joblog::Booked& one : booked) {
    for (const joblog::Shortage& shortage : one.shortages) {
      if (bookings.unreceived.count(shortage.material) != 0) continue;
      notices.push_back(short_of(shortage, units.at(shortage.material)));
    }
    for (const joblog::MovementRow& line : one.lines) {
      if (!line.expired) continue;
      notices.push_back({.code = "stock.expired",
                         .text = "lot " + line.lot + " is past its last good day",
                         .subject = line.material});
    }
  }
  return notices;
}

}  // namespace wetout::work
