// Saving plans and reading them back.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>

#include "joblog/log_impl.hpp"
#include "joblog/rows.hpp"
#include "joblog/transaction.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/words.hpp"

namespace wetout::joblog {
namespace {

void check_promises(const NewPlan& plan) {
  constexpr std::string_view roles[] = {"job", "shop", "outline", "learned", "options"};
  base::promise(base::is_slug(plan.job_slug), "a job's id is a slug");
  base::promise(!plan.job_name.empty(), "a job has a name");
  base::promise(!plan.program.empty() && !plan.result_format.empty(), "a plan names its makers");
  base::promise(static_cast<bool>(plan.result_body), "a plan has a result");
  for (auto input = plan.inputs.begin(); input != plan.inputs.end(); ++input) {
    base::promise(std::find(std::begin(roles), std::end(roles), input->role) != std::end(roles),
                  "an input has a known role");
    base::promise(!input->format.empty(), "an input has a format");
    base::promise(std::none_of(plan.inputs.begin(), input,
                               [&](const Input& other) {
                                 return other.role == input->role && other.name == input->name;
                               }),
                  "inputs of one role have different names");
  }
}

void insert_plan(SQLite::Database& db, std::int64_t job, int revision, const NewPlan& plan) {
  const Digest result = keep_document(db, plan.result_body(revision));
  SQLite::Statement insert(
      db,
      "INSERT INTO plan(job, revision, made, program, input_key, format, result, inputs)"
      " VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
  insert.bind(1, job);
  insert.bind(2, revision);
  insert.bind(3, to_seconds(plan.made));
  bind_text(insert, 4, plan.program);
  bind_digest(insert, 5, plan.input_key);
  bind_text(insert, 6, plan.result_format);
  bind_digest(insert, 7, result);
  insert.bind(8, static_cast<std::int64_t>(plan.inputs.size()));
  insert.exec();
  const std::int64_t id = db.getLastInsertRowid();

  SQLite::Statement add(
      db, "INSERT INTO plan_input(plan, role, name, format, document) VALUES(?1, ?2, ?3, ?4, ?5)");
  for (const Input& input : plan.inputs) {
    const Digest digest = keep_document(db, input.body);
    add.bind(1, id);
    bind_text(add, 2, input.role);
    bind_text(add, 3, input.name);
    bind_text(add, 4, input.format);
    bind_digest(add, 5, digest);
    add.exec();
    add.reset();
  }
}

}  // namespace

Saved Log::save_plan(const NewPlan& plan) {
  check_promises(plan);
  return impl_->guarded([&] {
    SQLite::Database& db = impl_->db();
    Transaction transaction(db, Transaction::Kind::immediate);
    const std::optional<JobState> job = find_job(db, plan.job_slug);
    Saved saved;
    if (job && job->archived) {
      bring_back(db, job->id);
      saved.brought_back = true;
    }
    saved.unchanged = job && job->last_key == plan.input_key;
    saved.revision = job ? job->last_revision : 0;
    if (!saved.unchanged) {
      ++saved.revision;
      const std::int64_t id =
          job ? job->id : insert_job(db, plan.job_slug, plan.job_name, plan.made);
      insert_plan(db, id, saved.revision, plan);
    }
    transaction.commit();
    return saved;
  });
}

Saved Log::foresee_plan(std::string_view slug, const Digest& input_key) const {
  return impl_->guarded([&] {
    const std::optional<JobState> job = find_job(impl_->db(), slug);
    if (!job) return Saved{1, false, false};
    const bool unchanged = job->last_key == input_key;
    return Saved{job->last_revision + (unchanged ? 0 : 1), unchanged, job->archived};
  });
}

std::vector<RevisionRow> Log::revisions(std::string_view slug) const {
  return impl_->guarded([&] {
    SQLite::Statement rows(impl_->db(),
                           "SELECT revision, made, program, input_key FROM plan"
                           " JOIN job ON job.id = plan.job WHERE slug = ?1 ORDER BY revision");
    bind_text(rows, 1, slug);
    std::vector<RevisionRow> revisions;
    while (rows.executeStep()) {
      revisions.push_back({rows.getColumn(0).getInt(), to_instant(rows.getColumn(1).getInt64()),
                           rows.getColumn(2).getString(), read_digest(rows.getColumn(3))});
    }
    return revisions;
  });
}

std::optional<PlanRow> Log::plan(std::string_view slug, std::optional<int> revision) const {
  return impl_->guarded([&]() -> std::optional<PlanRow> {
    SQLite::Statement rows(
        impl_->db(),
        "SELECT slug, name, revision, made, program, input_key, format, result, body FROM plan"
        " JOIN job ON job.id = plan.job LEFT JOIN document ON sha256 = result"
        " WHERE slug = ?1 AND (?2 IS NULL OR revision = ?2) ORDER BY revision DESC LIMIT 1");
    bind_text(rows, 1, slug);
    if (revision) rows.bind(2, *revision);
    if (!rows.executeStep()) return std::nullopt;
    PlanRow plan;
    plan.job_slug = rows.getColumn(0).getString();
    plan.job_name = rows.getColumn(1).getString();
    plan.revision = rows.getColumn(2).getInt();
    plan.made = to_instant(rows.getColumn(3).getInt64());
    plan.program = rows.getColumn(4).getString();
    plan.input_key = read_digest(rows.getColumn(5));
    plan.format = rows.getColumn(6).getString();
    plan.sha256 = read_digest(rows.getColumn(7));
    plan.body = checked_body(rows.getColumn(8), plan.sha256);
    return plan;
  });
}

std::vector<InputRow> Log::inputs(std::string_view slug, int revision) const {
  return impl_->guarded([&] {
    SQLite::Statement rows(
        impl_->db(),
        "SELECT role, plan_input.name, plan_input.format, document, body FROM plan_input"
        " JOIN plan ON plan.id = plan_input.plan JOIN job ON job.id = plan.job"
        " LEFT JOIN document ON sha256 = plan_input.document"
        " WHERE slug = ?1 AND revision = ?2 ORDER BY role, plan_input.name");
    bind_text(rows, 1, slug);
    rows.bind(2, revision);
    std::vector<InputRow> inputs;
    while (rows.executeStep()) {
      InputRow input;
      input.role = rows.getColumn(0).getString();
      input.name = rows.getColumn(1).getString();
      input.format = rows.getColumn(2).getString();
      input.sha256 = read_digest(rows.getColumn(3));
      input.body = checked_body(rows.getColumn(4), input.sha256);
      inputs.push_back(std::move(input));
    }
    return inputs;
  });
}

}  // namespace wetout::joblog
