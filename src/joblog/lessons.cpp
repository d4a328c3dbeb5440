// Which events teach.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <string>

#include "joblog/event_rows.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {
namespace {

bool teaches(EventKind kind) {
  switch (kind) {
    case EventKind::mixed:
    case EventKind::left:
    case EventKind::spilled:
    case EventKind::started:
    case EventKind::done:
    case EventKind::milestone:
      return true;
    case EventKind::conditions:
    case EventKind::note:
    case EventKind::undo:
      return false;
  }
  return false;
}

base::Result<Lesson> compare(SQLite::Database& db, std::int64_t number, bool counts) {
  auto row = read_event(db, number);
  const std::string text = std::to_string(number);
  if (!row) return base::fail(unknown_event(number));
  if (!teaches(row->kind)) {
    return base::fail({.code = "event.no_lesson",
                       .message = "Nothing is learned from event " + text + ", a record of kind " +
                                  std::string(to_string(row->kind)) + ".",
                       .found = text,
                       .expected = "what was mixed, left or spilled, a start, an end, or a "
                                   "milestone"});
  }
  if (row->undone_by) {
    return base::fail({.code = "event.undone",
                       .message = "Event " + text + " has been taken back by event " +
                                  std::to_string(*row->undone_by) + ": it does not count.",
                       .found = text});
  }
  const bool already = row->counts == counts;
  row->counts = counts;
  return Lesson{std::move(*row), already};
}

}  // namespace

base::Result<Lesson> Log::set_lesson(std::int64_t event, bool counts, Instant made) {
  return impl_->guarded([&]() -> base::Result<Lesson> {
    SQLite::Database& db = impl_->db();
    Transaction transaction(db, Transaction::Kind::immediate);
    auto lesson = compare(db, event, counts);
    if (!lesson || lesson->already) return lesson;
    SQLite::Statement insert(db,
                             "INSERT INTO lesson(id, event, made, counts)"
                             " SELECT 1 + ifnull(max(id), 0), ?1, ?2, ?3 FROM lesson");
    insert.bind(1, event);
    insert.bind(2, to_seconds(made));
    insert.bind(3, counts ? 1 : 0);
    insert.exec();
    transaction.commit();
    return lesson;
  });
}

base::Result<Lesson> Log::foresee_lesson(std::int64_t event, bool counts) const {
  return impl_->guarded([&] {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    return compare(impl_->db(), event, counts);
  });
}

}  // namespace wetout::joblog
