#include "wetout/work/record.hpp"

#include <algorithm>
#include <utility>

#include "record_answer.hpp"
#include "record_booked.hpp"
#include "record_bookings.hpp"
#include "record_job.hpp"
#include "record_one.hpp"
#include "stored_plan.hpp"
#include "wetout/base/check.hpp"

namespace wetout::work {
namespace {

using joblog::Access;
using joblog::Log;

// Events that are kept, and what was booked for them.
struct Kept {
  joblog::RecordedEvents events;
  Bookings bookings;
  std::vector<joblog::Booked> booked;
};

base::Result<Kept> foresee(const Log* log, const RecordToKeep& record) {
  auto events = foresee_events(log, record);
  if (!events) return tl::unexpected(events.error());
  auto booked = foresee_all(log, events->bookings.entries);
  if (!booked) return tl::unexpected(booked.error());
  return Kept{std::move(events->events), std::move(events->bookings), std::move(*booked)};
}

// All of it or nothing.
base::Result<Kept> keep(Log& log, const RecordToKeep& record) {
  Kept kept;
  const auto done = log.together([&]() -> base::Result<void> {
    auto events = keep_events(log, record);
    if (!events) return tl::unexpected(events.error());
    auto booked = book_all(log, events->bookings.entries);
    if (!booked) return tl::unexpected(booked.error());
    kept = {std::move(events->events), std::move(events->bookings), std::move(*booked)};
    return {};
  });
  if (!done) return tl::unexpected(done.error());
  return kept;
}

struct TakenBack {
  joblog::RecordedUndo undone;
  std::vector<joblog::NewEntry> entries;
  std::vector<joblog::Booked> booked;
};

base::Result<TakenBack> foresee_back(const Log& log, const joblog::NewUndo& undo) {
  TakenBack out;
  auto undone = log.foresee_undo(undo);
  if (!undone) return tl::unexpected(undone.error());
  out.undone = std::move(*undone);
  if (!out.undone.undo.already) out.entries = reversals_of(log, undo.number, out.undone.undo.row);
  auto booked = foresee_all(&log, out.entries);
  if (!booked) return tl::unexpected(booked.error());
  out.booked = std::move(*booked);
  return out;
}

// The event and what was booked for it, or nothing.
base::Result<TakenBack> take_back(Log& log, const joblog::NewUndo& undo) {
  TakenBack out;
  const auto done = log.together([&]() -> base::Result<void> {
    auto undone = log.undo_event(undo);
    if (!undone) return tl::unexpected(undone.error());
    out.undone = std::move(*undone);
    if (!out.undone.undo.already) out.entries = reversals_of(log, undo.number, out.undone.undo.row);
    auto booked = book_all(log, out.entries);
    if (!booked) return tl::unexpected(booked.error());
    out.booked = std::move(*booked);
    return {};
  });
  if (!done) return tl::unexpected(done.error());
  return out;
}

void show_booked(report::RecordDocument& document, const Kept& kept, const JobOfRecord& job,
                 const Log* log) {
  for (const joblog::RecordedEvent& event : kept.events.events) {
    if (!event.already) continue;
    for (report::LedgerEntry& entry : earlier_entries(event.row.number, job, *log)) {
      document.booked.push_back(std::move(entry));
    }
  }
  for (report::LedgerEntry& entry :
       booked_entries(kept.bookings.entries, kept.booked, kept.bookings.materials, job, log)) {
    document.booked.push_back(std::move(entry));
  }
}

// The events so far and the new ones: what the totals are made of, on a dry run as well.
std::vector<joblog::EventRow> with(std::vector<joblog::EventRow> before,
                                   const joblog::RecordedEvents& recorded) {
  for (const joblog::RecordedEvent& event : recorded.events) {
    const bool there = std::any_of(before.begin(), before.end(), [&](const joblog::EventRow& row) {
      return row.number == event.row.number;
    });
    if (!there) before.push_back(event.row);
  }
  return before;
}

void add(base::Notices& notices, const base::Notices& more) {
  notices.insert(notices.end(), more.begin(), more.end());
}

units::System units_of(const JobOfRecord& job) {
  return job.shop ? job.shop->units : units::System::us;
}

}  // namespace

base::Result<Recorded> record(const Workshop& workshop, const RecordRequest& request) {
  const std::optional<Log> log = log_so_far(workshop);
  const auto wanted = record_to_keep(workshop, log ? &*log : nullptr, request);
  if (!wanted) return tl::unexpected(wanted.error());
  const JobOfRecord& job = wanted->job;
  std::optional<Log> writing;
  if (!workshop.dry_run) writing = log_to_write(workshop);
  const Log* const seen = writing ? &*writing : log ? &*log : nullptr;
  const auto kept = writing ? keep(*writing, *wanted) : foresee(seen, *wanted);
  if (!kept) return tl::unexpected(kept.error());

  const std::string name = schedule::to_string(wanted->step);
  Recorded answer{record_document(job, "record", wanted->events.recorded), units_of(job)};
  report::RecordDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  document.job.began = kept->events.began;
  document.job.brought_back = kept->events.brought_back;
  for (const joblog::RecordedEvent& event : kept->events.events) {
    document.events.push_back(fact_of(event.row, event.already, job.zone));
  }
  show_booked(document, *kept, job, seen);
  document.totals = totals_of(with(wanted->before, kept->events), job, name);
  document.notices = wanted->notices;
  add(document.notices, kept->bookings.notices);
  add(document.notices, notices_of(kept->booked, kept->bookings));
  add(document.notices, notices_of(document.totals.front()));
  if (request.left && *request.left > units::Mass{}) {
    document.cautions.push_back(leftover_caution(job, name));
  }
  return answer;
}

base::Result<Recorded> recorded(const Workshop& workshop, std::string_view typed) {
  const std::optional<Log> log = log_so_far(workshop);
  const auto job = job_of_record(workshop, log ? &*log : nullptr, std::string(typed), false);
  if (!job) return tl::unexpected(job.error());
  const auto now = workshop.now(job->zone);
  if (!now) return tl::unexpected(now.error());
  Recorded answer{record_document(*job, "list", *now), units_of(*job)};
  const auto rows = log->events(job->slug);
  for (const joblog::EventRow& row : rows) {
    answer.document.events.push_back(fact_of(row, false, job->zone));
  }
  answer.document.totals = totals_of(rows, *job, std::nullopt);
  return answer;
}

base::Result<Recorded> undo_record(const Workshop& workshop, const UndoRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  joblog::NewUndo undo{.token = request.token + "/undo",
                       .number = request.event,
                       .recorded = {},
                       .note = request.note.value_or("")};
  // Whose clock is it? That of the event's job.
  const auto row = log->event(request.event);
  if (!row) return tl::unexpected(log->foresee_undo(undo).error());
  const auto job = job_of_record(workshop, &*log, row->job_slug, false);
  if (!job) return tl::unexpected(job.error());
  const auto now = workshop.now(job->zone);
  if (!now) return tl::unexpected(now.error());
  undo.recorded = *now;
  if (!workshop.dry_run) log = Log::open(workshop.log, {.access = Access::write});
  const auto taken_back = workshop.dry_run ? foresee_back(*log, undo) : take_back(*log, undo);
  if (!taken_back) return tl::unexpected(taken_back.error());
  const auto& undone = taken_back->undone;

  Recorded answer{record_document(*job, "undo", *now), units_of(*job)};
  report::RecordDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  document.events.push_back(fact_of(undone.undo.row, undone.undo.already, job->zone));
  document.undone = fact_of(undone.undone, false, job->zone);
  document.booked = undone.undo.already
                        ? earlier_entries(undone.undo.row.number, *job, *log)
                        : booked_entries(taken_back->entries, taken_back->booked, {}, *job, &*log);
  auto rows = log->events(job->slug);
  for (joblog::EventRow& event : rows) {
    if (event.number == request.event) event.undone_by = undone.undo.row.number;
  }
  if (!row->step.empty()) document.totals = totals_of(rows, *job, row->step);
  return answer;
}

}  // namespace wetout::work
