// Recording what was done, taking it back, and reading it.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <algorithm>
#include <utility>

#include "joblog/event_rows.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/words.hpp"

namespace wetout::joblog {
namespace {

void check_promises(const NewEvents& events) {
  base::promise(base::is_slug(events.job_slug), "a job's id is a slug");
  base::promise(!events.begin_as || !events.begin_as->empty(), "a job has a name");
  base::promise(!events.events.empty(), "something is recorded");
  for (auto event = events.events.begin(); event != events.events.end(); ++event) {
    check_event(*event);
    base::promise(std::none_of(events.events.begin(), event,
                               [&](const NewEvent& other) { return other.token == event->token; }),
                  "events of one call have different tokens");
  }
}

base::Problem taken_token(const EventRow& row) {
  return {.code = "event.token",
          .message = "This token belongs to event " + std::to_string(row.number) + " of the log (" +
                     std::string(to_string(row.kind)) + (row.step.empty() ? "" : ", " + row.step) +
                     "), which says something else.",
          .found = row.token,
          .hint = "Use a new token for a new record."};
}

// The row an event will be, or the one it already is.
base::Result<std::vector<RecordedEvent>> match(SQLite::Database& db, const NewEvents& events) {
  std::vector<RecordedEvent> matched;
  base::Problems problems;
  std::int64_t number = next_event(db);
  for (const NewEvent& event : events.events) {
    EventRow row = {.token = event.token,
                    .job_slug = events.job_slug,
                    .kind = event.kind,
                    .step = event.step,
                    .at = event.at,
                    .recorded = events.recorded,
                    .facts = event.facts};
    auto earlier = find_event(db, event.token);
    if (!earlier) {
      row.number = number++;
      matched.push_back({std::move(row), false});
    } else if (says_the_same(*earlier, row)) {
      matched.push_back({std::move(*earlier), true});
    } else {
      problems.push_back(taken_token(*earlier));
    }
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  return matched;
}

base::Result<RecordedEvents> compare(SQLite::Database& db, const std::optional<JobState>& job,
                                     const NewEvents& events) {
  if (!job && !events.begin_as) return base::fail(unknown_job(events.job_slug));
  auto matched = match(db, events);
  if (!matched) return tl::unexpected(matched.error());
  return RecordedEvents{std::move(*matched), !job, job && job->archived};
}

base::Result<RecordedUndo> compare(SQLite::Database& db, const NewUndo& undo) {
  const std::string number = std::to_string(undo.number);
  auto undone = read_event(db, undo.number);
  if (!undone) return base::fail(unknown_event(undo.number));
  EventRow row = {.number = next_event(db),
                  .token = undo.token,
                  .job_slug = undone->job_slug,
                  .kind = EventKind::undo,
                  .step = undone->step,
                  .at = undo.recorded,
                  .recorded = undo.recorded,
                  .facts = {.note = undo.note},
                  .undoes = undo.number};
  if (auto earlier = find_event(db, undo.token)) {
    if (!says_the_same(*earlier, row)) return base::fail(taken_token(*earlier));
    return RecordedUndo{{std::move(*earlier), true}, std::move(*undone)};
  }
  if (undone->kind == EventKind::undo) {
    return base::fail({.code = "event.is_undo",
                       .message = "Event " + number + " takes event " +
                                  std::to_string(*undone->undoes) +
                                  " back and cannot be taken back itself.",
                       .found = number,
                       .hint = "Record what was taken back once more."});
  }
  if (undone->undone_by) {
    return base::fail({.code = "event.undone",
                       .message = "Event " + number + " has been taken back already, by event " +
                                  std::to_string(*undone->undone_by) + ".",
                       .found = number});
  }
  undone->undone_by = row.number;
  return RecordedUndo{{std::move(row), false}, std::move(*undone)};
}

}  // namespace

base::Result<RecordedEvents> Log::record_events(const NewEvents& events) {
  check_promises(events);
  return impl_->guarded([&]() -> base::Result<RecordedEvents> {
    SQLite::Database& db = impl_->db();
    Transaction transaction(db, Transaction::Kind::immediate);
    const std::optional<JobState> job = find_job(db, events.job_slug);
    auto recorded = compare(db, job, events);
    if (!recorded) return recorded;
    const std::int64_t id =
        job ? job->id : insert_job(db, events.job_slug, *events.begin_as, events.recorded);
    if (recorded->brought_back) bring_back(db, id);
    for (const RecordedEvent& event : recorded->events) {
      if (!event.already) insert_event(db, id, event.row);
    }
    transaction.commit();
    return recorded;
  });
}

base::Result<RecordedEvents> Log::foresee_events(const NewEvents& events) const {
  check_promises(events);
  return impl_->guarded([&] {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    return compare(impl_->db(), find_job(impl_->db(), events.job_slug), events);
  });
}

base::Result<RecordedUndo> Log::undo_event(const NewUndo& undo) {
  base::promise(!undo.token.empty(), "an event has a token");
  return impl_->guarded([&]() -> base::Result<RecordedUndo> {
    SQLite::Database& db = impl_->db();
    Transaction transaction(db, Transaction::Kind::immediate);
    auto recorded = compare(db, undo);
    if (!recorded || recorded->undo.already) return recorded;
    insert_event(db, job_of_event(db, undo.number), recorded->undo.row);
    transaction.commit();
    return recorded;
  });
}

base::Result<RecordedUndo> Log::foresee_undo(const NewUndo& undo) const {
  base::promise(!undo.token.empty(), "an event has a token");
  return impl_->guarded([&] {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    return compare(impl_->db(), undo);
  });
}

std::vector<EventRow> Log::events(std::string_view slug) const {
  return impl_->guarded([&] { return read_events(impl_->db(), slug); });
}

std::optional<EventRow> Log::event(std::int64_t number) const {
  return impl_->guarded([&] { return read_event(impl_->db(), number); });
}

}  // namespace wetout::joblog
