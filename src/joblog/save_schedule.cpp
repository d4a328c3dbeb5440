// Saving schedules.
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <set>
#include <utility>

#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

void check_promises(const NewSchedule& schedule) {
  base::promise(!schedule.program.empty() && !schedule.result_format.empty(),
                "a schedule names its makers");
  base::promise(static_cast<bool>(schedule.result_body), "a schedule has a result");
  base::promise(!schedule.weather || !schedule.weather->format.empty(), "a forecast has a format");
  base::promise(!schedule.jobs.empty(), "a schedule is of at least one job");
  std::set<std::string> slugs;
  for (const ScheduledJob& job : schedule.jobs) {
    base::promise(slugs.insert(job.slug).second, "a job is in a schedule once");
  }
  std::set<std::pair<std::string, std::string>> names;
  for (const ScheduledStep& step : schedule.steps) {
    base::promise(slugs.count(step.job) == 1, "a step belongs to a job of the schedule");
    base::promise(!step.step.empty() && names.emplace(step.job, step.step).second,
                  "a step has a name of its own in its job");
    base::promise(step.finish >= step.start, "a step ends after it has begun");
  }
}

std::int64_t next_number(SQLite::Database& db) {
  SQLite::Statement last(db, "SELECT 1 + ifnull(max(id), 0) FROM schedule");
  last.executeStep();
  return last.getColumn(0).getInt64();
}

// True when schedule `number` is of `jobs` jobs and has this key.
bool is_same(SQLite::Database& db, std::int64_t number, std::size_t jobs, const Digest& key) {
  SQLite::Statement same(db,
                         "SELECT 1 FROM schedule WHERE id = ?1 AND jobs = ?2 AND input_key = ?3");
  same.bind(1, number);
  same.bind(2, static_cast<std::int64_t>(jobs));
  bind_digest(same, 3, key);
  return same.executeStep();
}

// What becomes of a schedule of these jobs; nothing stands for a job that is not in the log.
SavedSchedule compare(SQLite::Database& db, const std::vector<std::optional<std::int64_t>>& jobs,
                      const Digest& key) {
  std::set<std::optional<std::int64_t>> lasts;
  for (const auto& job : jobs) lasts.insert(job ? last_schedule_of(db, *job) : std::nullopt);
  SavedSchedule saved;
  saved.replaces = *lasts.rbegin();  // nothing sorts before every number
  saved.unchanged =
      lasts.size() == 1 && saved.replaces && is_same(db, *saved.replaces, jobs.size(), key);
  if (!saved.unchanged) {
    saved.number = next_number(db);
    return saved;
  }
  saved.number = *saved.replaces;
  SQLite::Statement before(db, "SELECT replaces FROM schedule WHERE id = ?1");
  before.bind(1, saved.number);
  before.executeStep();
  saved.replaces = read_number(before.getColumn(0));
  return saved;
}

void insert_head(SQLite::Database& db, const SavedSchedule& saved, const NewSchedule& schedule) {
  const Digest result = keep_document(db, schedule.result_body(saved.number));
  SQLite::Statement insert(
      db,
      "INSERT INTO schedule(id, made, program, input_key, format, result, replaces, weather,"
      " weather_name, weather_format, jobs, steps)"
      " VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)");
  insert.bind(1, saved.number);
  insert.bind(2, to_seconds(schedule.made));
  bind_text(insert, 3, schedule.program);
  bind_digest(insert, 4, schedule.input_key);
  bind_text(insert, 5, schedule.result_format);
  bind_digest(insert, 6, result);
  if (saved.replaces) insert.bind(7, *saved.replaces);
  if (schedule.weather) {
    bind_digest(insert, 8, keep_document(db, schedule.weather->body));
    bind_text(insert, 9, schedule.weather->name);
    bind_text(insert, 10, schedule.weather->format);
  }
  insert.bind(11, static_cast<std::int64_t>(schedule.jobs.size()));
  insert.bind(12, static_cast<std::int64_t>(schedule.steps.size()));
  insert.exec();
}

void insert_steps(SQLite::Database& db, std::int64_t number, std::int64_t job,
                  std::string_view slug, const std::vector<ScheduledStep>& steps) {
  SQLite::Statement insert(db,
                           "INSERT INTO schedule_step(schedule, job, step, start, finish, state)"
                           " VALUES(?1, ?2, ?3, ?4, ?5, ?6)");
  for (const ScheduledStep& step : steps) {
    if (step.job != slug) continue;
    insert.bind(1, number);
    insert.bind(2, job);
    bind_text(insert, 3, step.step);
    insert.bind(4, to_seconds(step.start));
    insert.bind(5, to_seconds(step.finish));
    bind_text(insert, 6, to_string(step.state));
    insert.exec();
    insert.reset();
  }
}

void insert_schedule(SQLite::Database& db, const SavedSchedule& saved, const NewSchedule& schedule,
                     const std::vector<std::optional<std::int64_t>>& jobs) {
  insert_head(db, saved, schedule);
  SQLite::Statement insert(db,
                           "INSERT INTO schedule_job(schedule, job, revision) VALUES(?1, ?2, ?3)");
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    insert.bind(1, saved.number);
    insert.bind(2, *jobs[i]);
    insert.bind(3, schedule.jobs[i].revision);
    insert.exec();
    insert.reset();
    insert_steps(db, saved.number, *jobs[i], schedule.jobs[i].slug, schedule.steps);
  }
}

base::Problem unknown_plan(const ScheduledJob& job) {
  return {.code = "plan.unknown",
          .message = "The job \"" + job.slug + "\" has no plan of revision " +
                     std::to_string(job.revision) + ".",
          .found = std::to_string(job.revision),
          .hint = "`wetout jobs show " + job.slug + "` shows the last one."};
}

}  // namespace

base::Result<SavedSchedule> Log::save_schedule(const NewSchedule& schedule) {
  check_promises(schedule);
  return impl_->guarded([&]() -> base::Result<SavedSchedule> {
    SQLite::Database& db = impl_->db();
    Transaction transaction(db, Transaction::Kind::immediate);
    std::vector<std::optional<std::int64_t>> jobs;
    std::vector<std::string> brought_back;
    base::Problems problems;
    for (const ScheduledJob& wanted : schedule.jobs) {
      const std::optional<JobState> job = find_job(db, wanted.slug);
      if (!job) {
        problems.push_back(unknown_job(wanted.slug));
        continue;
      }
      // Revisions count without gaps.
      if (wanted.revision < 1 || wanted.revision > job->last_revision) {
        problems.push_back(unknown_plan(wanted));
      }
      jobs.push_back(job->id);
      if (job->archived) {
        bring_back(db, job->id);
        brought_back.push_back(wanted.slug);
      }
    }
    if (!problems.empty()) return base::fail(std::move(problems));
    SavedSchedule saved = compare(db, jobs, schedule.input_key);
    if (!saved.unchanged) insert_schedule(db, saved, schedule, jobs);
    saved.brought_back = std::move(brought_back);
    transaction.commit();
    return saved;
  });
}

SavedSchedule Log::foresee_schedule(const std::vector<std::string>& slugs,
                                    const Digest& input_key) const {
  base::promise(!slugs.empty(), "a schedule is of at least one job");
  return impl_->guarded([&] {
    SQLite::Database& db = impl_->db();
    const Transaction one_view(db, Transaction::Kind::read);
    std::vector<std::optional<std::int64_t>> jobs;
    std::vector<std::string> brought_back;
    for (const std::string& slug : slugs) {
      const std::optional<JobState> job = find_job(db, slug);
      jobs.push_back(job ? std::optional(job->id) : std::nullopt);
      if (job && job->archived) brought_back.push_back(slug);
    }
    SavedSchedule saved = compare(db, jobs, input_key);
    saved.brought_back = std::move(brought_back);
    return saved;
  });
}

}  // namespace wetout::joblog
