#include "stored_plan.hpp"

#include <utility>
#include <vector>

#include "learned_use.hpp"
#include "wetout/base/words.hpp"

namespace wetout::work {

base::Result<joblog::Log> open_log(const Workshop& workshop) {
  if (!joblog::Log::exists(workshop.log)) {
    return base::fail({.code = "log.none",
                       .message = "there is no job log yet",
                       .file = workshop.log.string(),
                       .hint = "\"wetout plan FILE\" begins one"});
  }
  return joblog::Log::open(workshop.log);
}

base::Result<std::string> job_named(const joblog::Log& log, std::string_view typed) {
  std::vector<std::string> ids;
  for (const joblog::JobRow& job : log.jobs(true)) ids.push_back(job.slug);
  const std::vector<std::size_t> found = base::matches(typed, ids);
  if (found.size() == 1) return ids[found.front()];
  std::string list;
  for (const std::size_t i : found) list += (list.empty() ? "" : ", ") + ids[i];
  if (found.size() > 1) {
    return base::fail({.code = "job.ambiguous",
                       .message = "several jobs begin so",
                       .found = std::string(typed),
                       .expected = list,
                       .hint = "type more of the name"});
  }
  const auto near = base::nearest(base::slug(typed), ids);
  return base::fail({.code = "job.unknown",
                     .message = "the log has no job of this name",
                     .found = std::string(typed),
                     .expected = "a job of \"wetout jobs\", or the beginning of its name",
                     .hint = near ? "did you mean \"" + *near + "\"?" : ""});
}

base::Result<StoredPlan> stored_plan(const joblog::Log& log, const std::string& slug,
                                     std::optional<int> revision) {
  auto row = log.plan(slug, revision);
  if (!row) {
    const auto revisions = log.revisions(slug);
    if (revisions.empty()) {
      return base::fail({.code = "plan.none",
                         .message = "the job has records but no plan",
                         .found = slug,
                         .hint = "plan it: wetout plan FILE --as " + slug});
    }
    return base::fail({.code = "revision.unknown",
                       .message = "the job has no such revision",
                       .found = revision ? std::to_string(*revision) : "none",
                       .expected = "1 to " + std::to_string(revisions.back().revision)});
  }
  auto document = report::read_plan(row->body);
  if (!document) return tl::unexpected(document.error());
  StoredPlan stored;
  stored.document = std::move(*document);
  // A job may have been renamed since.
  stored.document.job.id = row->job_slug;
  for (joblog::InputRow& input : log.inputs(slug, row->revision)) {
    if (input.role == "job") {
      stored.job_text = std::move(input.body);
      stored.job_name = std::move(input.name);
    } else if (input.role == "shop") {
      stored.shop_text = std::move(input.body);
      stored.shop_name = std::move(input.name);
    } else if (input.role == "options") {
      stored.options = std::move(input.body);
    } else if (input.role == "learned") {
      stored.learned = std::move(input.body);
    } else if (input.role == "outline") {
      stored.outline = std::move(input.body);
    }
  }
  return stored;
}

base::Result<files::JobFile> job_of(const StoredPlan& stored) {
  return files::parse_job(stored.job_text, stored.job_name, board::defaults(),
                          [&](const std::string& name) -> base::Result<std::string> {
                            if (!stored.outline.empty()) return stored.outline;
                            return base::fail({.code = "outline.unread",
                                               .message = "the plan was kept without its drawing",
                                               .found = name});
                          });
}

base::Result<JobAndShop> files_as_written(const StoredPlan& stored) {
  auto job = job_of(stored);
  if (!job) return tl::unexpected(job.error());
  auto shop = files::parse_shop(stored.shop_text, stored.shop_name);
  if (!shop) return tl::unexpected(shop.error());
  return JobAndShop{std::move(*job), std::move(*shop), {}, {}};
}

base::Result<JobAndShop> files_of(const StoredPlan& stored) {
  auto both = files_as_written(stored);
  if (both) use_learned(*both, stored.learned);
  return both;
}

}  // namespace wetout::work
