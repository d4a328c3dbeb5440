#include "wetout/work/record.hpp"

#include <algorithm>
#include <utility>

#include "record_answer.hpp"
#include "record_facts.hpp"
#include "record_job.hpp"
#include "record_step.hpp"
#include "stored_plan.hpp"
#include "wetout/base/check.hpp"

namespace wetout::work {
namespace {

using joblog::Access;
using joblog::Log;

// For reading, or nothing where there is none yet.
std::optional<Log> log_so_far(const Workshop& workshop) {
  if (!Log::exists(workshop.log)) return std::nullopt;
  return Log::open(workshop.log);
}

base::Result<joblog::RecordedEvents> keep(const Workshop& workshop, const Log* log,
                                          const joblog::NewEvents& events) {
  if (workshop.dry_run) {
    return log != nullptr ? log->foresee_events(events) : Log::in_memory().foresee_events(events);
  }
  // A place that may be a slip of the hand is not made; a log that is there is only opened.
  Log writing =
      Log::open(workshop.log, {.access = Access::write, .make_folder = workshop.make_log_folder});
  return writing.record_events(events);
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

units::System units_of(const JobOfRecord& job) {
  return job.shop ? job.shop->units : units::System::us;
}

}  // namespace

base::Result<Recorded> record(const Workshop& workshop, const RecordRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  base::promise(request.part_a.has_value() == request.part_b.has_value(), "both parts or neither");
  const std::optional<Log> log = log_so_far(workshop);
  const auto job = job_of_record(workshop, log ? &*log : nullptr, request.job, request.begin);
  if (!job) return tl::unexpected(job.error());
  const auto now = workshop.now(job->zone);
  if (!now) return tl::unexpected(now.error());
  const auto step = step_meant(*job, request.step);
  if (!step) return tl::unexpected(step.error());
  const auto before = log ? log->events(job->slug) : std::vector<joblog::EventRow>{};
  auto facts = facts_of(request, *job, *step, before, *now);
  if (!facts) return tl::unexpected(facts.error());

  joblog::NewEvents events;
  events.job_slug = job->slug;
  if (request.begin) events.begin_as = job->name;
  events.recorded = *now;
  events.events = std::move(facts->events);
  const auto kept = keep(workshop, log ? &*log : nullptr, events);
  if (!kept) return tl::unexpected(kept.error());

  const std::string name = schedule::to_string(*step);
  Recorded answer{record_document(*job, "record", *now), units_of(*job)};
  report::RecordDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  document.job.began = kept->began;
  document.job.brought_back = kept->brought_back;
  for (const joblog::RecordedEvent& event : kept->events) {
    document.events.push_back(fact_of(event.row, event.already, job->zone));
  }
  document.totals = totals_of(with(before, *kept), *job, name);
  document.notices = std::move(facts->notices);
  for (base::Notice& notice : notices_of(document.totals.front())) {
    document.notices.push_back(std::move(notice));
  }
  if (request.left && *request.left > units::Mass{}) {
    document.cautions.push_back(leftover_caution(*job, name));
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
  const auto undone = workshop.dry_run
                          ? log->foresee_undo(undo)
                          : Log::open(workshop.log, {.access = Access::write}).undo_event(undo);
  if (!undone) return tl::unexpected(undone.error());

  Recorded answer{record_document(*job, "undo", *now), units_of(*job)};
  report::RecordDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  document.events.push_back(fact_of(undone->undo.row, undone->undo.already, job->zone));
  document.undone = fact_of(undone->undone, false, job->zone);
  auto rows = log->events(job->slug);
  for (joblog::EventRow& event : rows) {
    if (event.number == request.event) event.undone_by = undone->undo.row.number;
  }
  if (!row->step.empty()) document.totals = totals_of(rows, *job, row->step);
  return answer;
}

}  // namespace wetout::work
