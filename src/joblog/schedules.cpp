// Reading schedules back.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

StepState read_state(SQLite::Column column) {
  const std::string word = column.getString();
  for (const StepState state : {StepState::planned, StepState::fixed, StepState::done}) {
    if (to_string(state) == word) return state;
  }
  throw SQLite::Exception("a step of a schedule is in no known state", SQLITE_CORRUPT);
}

std::vector<ScheduledJob> jobs_of(SQLite::Database& db, std::int64_t number) {
  SQLite::Statement rows(
      db,
      "SELECT slug, revision FROM schedule_job"
      " JOIN job ON job.id = schedule_job.job WHERE schedule = ?1 ORDER BY slug");
  rows.bind(1, number);
  std::vector<ScheduledJob> jobs;
  while (rows.executeStep()) {
    jobs.push_back({rows.getColumn(0).getString(), rows.getColumn(1).getInt()});
  }
  return jobs;
}

std::optional<ScheduleRow> read_schedule(SQLite::Database& db, std::int64_t number) {
  SQLite::Statement row(db,
                        "SELECT made, program, input_key, replaces, format, result, body"
                        " FROM schedule LEFT JOIN document ON sha256 = result"
                        " WHERE schedule.id = ?1");
  row.bind(1, number);
  if (!row.executeStep()) return std::nullopt;
  ScheduleRow schedule;
  schedule.number = number;
  schedule.made = to_instant(row.getColumn(0).getInt64());
  schedule.program = row.getColumn(1).getString();
  schedule.input_key = read_digest(row.getColumn(2));
  schedule.replaces = read_number(row.getColumn(3));
  schedule.jobs = jobs_of(db, number);
  schedule.format = row.getColumn(4).getString();
  schedule.sha256 = read_digest(row.getColumn(5));
  schedule.body = checked_body(row.getColumn(6), schedule.sha256);
  return schedule;
}

}  // namespace

std::string_view to_string(StepState state) {
  switch (state) {
    case StepState::planned:
      return "planned";
    case StepState::fixed:
      return "fixed";
    case StepState::done:
      return "done";
  }
  base::broken_promise("state of a step outside its list");
}

std::optional<std::int64_t> last_schedule_of(SQLite::Database& db, std::int64_t job) {
  SQLite::Statement last(db, "SELECT max(schedule) FROM schedule_job WHERE job = ?1");
  last.bind(1, job);
  last.executeStep();
  return read_number(last.getColumn(0));
}

std::optional<ScheduleRow> Log::last_schedule(std::string_view slug) const {
  return impl_->guarded([&]() -> std::optional<ScheduleRow> {
    SQLite::Database& db = impl_->db();
    const Transaction one_view(db, Transaction::Kind::read);
    const std::optional<JobState> job = find_job(db, slug);
    const std::optional<std::int64_t> number = job ? last_schedule_of(db, job->id) : std::nullopt;
    if (!number) return std::nullopt;
    return read_schedule(db, *number);
  });
}

std::optional<ScheduleRow> Log::schedule(std::int64_t number) const {
  return impl_->guarded([&] {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    return read_schedule(impl_->db(), number);
  });
}

std::vector<ScheduledStep> Log::schedule_steps(std::int64_t number) const {
  return impl_->guarded([&] {
    SQLite::Statement rows(impl_->db(),
                           "SELECT slug, step, start, finish, state FROM schedule_step"
                           " JOIN job ON job.id = schedule_step.job WHERE schedule = ?1"
                           " ORDER BY slug, start, step");
    rows.bind(1, number);
    std::vector<ScheduledStep> steps;
    while (rows.executeStep()) {
      steps.push_back({rows.getColumn(0).getString(), rows.getColumn(1).getString(),
                       to_instant(rows.getColumn(2).getInt64()),
                       to_instant(rows.getColumn(3).getInt64()), read_state(rows.getColumn(4))});
    }
    return steps;
  });
}

std::optional<WeatherText> Log::schedule_weather(std::int64_t number) const {
  return impl_->guarded([&]() -> std::optional<WeatherText> {
    SQLite::Statement row(impl_->db(),
                          "SELECT weather_name, weather_format, weather, body FROM schedule"
                          " LEFT JOIN document ON sha256 = weather"
                          " WHERE schedule.id = ?1 AND weather IS NOT NULL");
    row.bind(1, number);
    if (!row.executeStep()) return std::nullopt;
    return WeatherText{row.getColumn(0).getString(), row.getColumn(1).getString(),
                       checked_body(row.getColumn(3), read_digest(row.getColumn(2)))};
  });
}

std::vector<ScheduleHead> Log::schedules(std::optional<std::string_view> slug) const {
  return impl_->guarded([&] {
    SQLite::Database& db = impl_->db();
    const Transaction one_view(db, Transaction::Kind::read);
    SQLite::Statement rows(db,
                           "SELECT id, made, replaces FROM schedule WHERE ?1 IS NULL OR id IN"
                           " (SELECT schedule FROM schedule_job JOIN job ON job.id ="
                           "  schedule_job.job WHERE slug = ?1) ORDER BY id");
    if (slug) bind_text(rows, 1, *slug);
    std::vector<ScheduleHead> heads;
    while (rows.executeStep()) {
      const std::int64_t number = rows.getColumn(0).getInt64();
      heads.push_back({number, to_instant(rows.getColumn(1).getInt64()),
                       read_number(rows.getColumn(2)), jobs_of(db, number)});
    }
    return heads;
  });
}

}  // namespace wetout::joblog
