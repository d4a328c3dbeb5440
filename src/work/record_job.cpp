#include "record_job.hpp"

#include <algorithm>
#include <utility>

#include "job_and_shop.hpp"
#include "stored_plan.hpp"
#include "wetout/base/words.hpp"

namespace wetout::work {
namespace {

// A shop file that went with the plan may be refused by a later reader; what happened can be
// recorded all the same.
std::optional<files::ShopFile> shop_of(const Workshop& workshop, const StoredPlan* stored) {
  if (stored != nullptr) {
    if (auto shop = files::parse_shop(stored->shop_text, stored->shop_name))
      return std::move(*shop);
  }
  const auto path = find_shop(workshop, workshop.here / "x");
  if (!path) return std::nullopt;
  auto shop = files::read_shop(*path);
  if (!shop) return std::nullopt;
  return std::move(*shop);
}

base::Result<JobOfRecord> with_shop(const Workshop& workshop, JobOfRecord job,
                                    const StoredPlan* stored) {
  job.shop = shop_of(workshop, stored);
  if (!job.shop) return job;
  const auto zone = time::Zone::named(job.shop->time_zone);
  if (!zone) return tl::unexpected(zone.error());
  job.zone = *zone;
  return job;
}

base::Result<JobOfRecord> known_job(const Workshop& workshop, const joblog::Log& log,
                                    const std::string& slug) {
  JobOfRecord job;
  const joblog::JobRow row = log.job(slug).value();
  job.slug = slug;
  job.name = row.name;
  if (const auto last = log.last_schedule(slug)) {
    std::vector<joblog::ScheduledStep> steps = log.schedule_steps(last->number);
    std::erase_if(steps, [&](const joblog::ScheduledStep& step) { return step.job != slug; });
    job.steps = std::move(steps);
  }
  if (row.revisions == 0) return with_shop(workshop, std::move(job), nullptr);
  auto stored = stored_plan(log, slug, std::nullopt);
  if (!stored) return tl::unexpected(stored.error());
  job.plan = std::move(stored->document);
  return with_shop(workshop, std::move(job), &*stored);
}

base::Result<JobOfRecord> new_job(const Workshop& workshop, const std::string& typed) {
  const std::string slug = base::slug(typed);
  const bool reserved = base::is_reserved(slug);
  if (!base::is_slug(slug) || reserved) {
    return base::fail(
        {.code = "job.id",
         .message = reserved ? "\"" + slug + "\" is a word of the command line"
                             : "this cannot be the id of a job",
         .key = "JOB",
         .found = typed,
         .expected = "letters a-z, digits and hyphens, at most 64, e.g. \"sandpiper-2\""});
  }
  JobOfRecord job;
  job.slug = slug;
  job.name = typed;
  return with_shop(workshop, std::move(job), nullptr);
}

base::Problems with_hint(base::Problems problems, const std::string& typed) {
  for (base::Problem& problem : problems) {
    if (!problem.hint.empty() || problem.code != "job.unknown") continue;
    problem.hint = is_file_argument(typed) ? "plan it first: wetout plan " + typed
                                           : "--new begins a job without a plan";
  }
  return problems;
}

}  // namespace

base::Result<JobOfRecord> job_of_record(const Workshop& workshop, const joblog::Log* log,
                                        const std::string& typed, bool begin) {
  if (log == nullptr) {
    if (begin) return new_job(workshop, typed);
    return tl::unexpected(open_log(workshop).error());
  }
  if (begin) {
    // A new job may begin like another one.
    const std::string slug = base::slug(typed);
    return log->job(slug) ? known_job(workshop, *log, slug) : new_job(workshop, typed);
  }
  const auto slug = job_named(*log, typed);
  if (!slug) return base::fail(with_hint(slug.error(), typed));
  return known_job(workshop, *log, *slug);
}

}  // namespace wetout::work
