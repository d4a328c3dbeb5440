#include "schedule_boards.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "plan_kept.hpp"
#include "stored_plan.hpp"

namespace wetout::work {
namespace {

BoardToSchedule board(std::string job, int revision, JobAndShop files, MixingChoices choices,
                      laminate::Plan plan) {
  schedule::BoardWork work = board_work(job, files, std::move(plan));
  return {std::move(job), revision, std::move(files), std::move(choices), std::move(work)};
}

base::Result<BoardToSchedule> of_file(const Workshop& workshop, const std::string& file) {
  auto kept = plan_and_keep(workshop, {.file = file, .as = {}, .choices = {}});
  if (!kept) return tl::unexpected(kept.error());
  report::PlanDocument& document = kept->printable.document;
  const report::JobRef job = document.job;
  if (!kept->printable.unchanged && job.saved) {
    workshop.sink(base::Level::info,
                  "planned: revision " + std::to_string(job.revision) + " of " + job.id);
  }
  return board(job.id, job.revision, std::move(kept->files), {}, std::move(document.plan));
}

base::Result<BoardToSchedule> of_log(const Workshop& workshop, const std::string& name) {
  const auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, name);
  if (!slug) return tl::unexpected(slug.error());
  auto stored = stored_plan(*log, *slug, std::nullopt);
  if (!stored) return tl::unexpected(stored.error());
  auto both = files_of(*stored);
  if (!both) return tl::unexpected(both.error());
  const std::string name_now = shown(workshop, stored->shop_name).string();
  if (const auto today = files::read_shop(stored->shop_name);
      today && today->source.text != stored->shop_text) {
    workshop.sink(base::Level::warn, name_now + " has changed since; used is that of revision " +
                                         std::to_string(stored->document.job.revision) + " of " +
                                         *slug);
  }
  both->shop.source.name = name_now;
  // A shop file names its forecast relative to itself, wherever the command is given.
  if (auto& weather = both->shop.weather) weather = shown(workshop, *weather);
  return board(*slug, stored->document.job.revision, std::move(*both),
               choices_from(stored->options), std::move(stored->document.plan));
}

}  // namespace

schedule::BoardWork board_work(std::string job, const JobAndShop& files, laminate::Plan plan) {
  schedule::BoardWork work;
  work.job = std::move(job);
  work.plan = std::move(plan);
  work.coats = files.job.coats;
  work.spackle = files.job.steps.spackle;
  work.artwork = files.job.steps.artwork;
  work.spot = files.job.steps.spot;
  return work;
}

base::Result<std::vector<BoardToSchedule>> boards_to_schedule(
    const Workshop& workshop, const std::vector<std::string>& jobs) {
  std::vector<BoardToSchedule> boards;
  base::Problems problems;
  for (const std::string& name : jobs) {
    auto one = is_file_argument(name) ? of_file(workshop, name) : of_log(workshop, name);
    if (!one) {
      problems.insert(problems.end(), one.error().begin(), one.error().end());
      continue;
    }
    const bool twice = std::any_of(boards.begin(), boards.end(),
                                   [&](const auto& other) { return other.job == one->job; });
    if (twice) {
      problems.push_back({.code = "schedule.job_twice",
                          .message = "this job is named twice",
                          .key = "JOB",
                          .found = name,
                          .expected = "each job once"});
    }
    boards.push_back(std::move(*one));
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  for (const BoardToSchedule& one : boards) {
    if (one.files.shop.source.text == boards.front().files.shop.source.text) continue;
    return base::fail({.code = "schedule.shops_differ",
                       .message = boards.front().job + " and " + one.job +
                                  " were planned with different shop files",
                       .key = "JOB",
                       .found = one.job,
                       .expected = "boards of one shop, planned with the same shop file",
                       .hint = "plan them again: wetout plan FILE FILE"});
  }
  return boards;
}

}  // namespace wetout::work
