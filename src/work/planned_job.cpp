#include "planned_job.hpp"

#include <filesystem>
#include <utility>

#include "learned_use.hpp"
#include "stored_plan.hpp"

namespace wetout::work {

namespace fs = std::filesystem;

base::Result<PlannedJob> planned_job(const Workshop& workshop, const std::string& job,
                                     const MixingChoices& choices) {
  if (is_file_argument(job)) {
    auto both = read_job_and_shop(workshop, job);
    if (!both) return tl::unexpected(both.error());
    auto planned = plan_as_learned(workshop, *both, choices, learned_by(workshop));
    if (!planned) return tl::unexpected(planned.error());
    PlannedJob source{std::move(*both), {}};
    source.document.job.id = source.files.job.board.id;
    source.document.plan = std::move(*planned);
    return source;
  }
  auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  const auto slug = job_named(*log, job);
  if (!slug) return tl::unexpected(slug.error());
  auto stored = stored_plan(*log, *slug, std::nullopt);
  if (!stored) return tl::unexpected(stored.error());
  auto both = files_of(*stored);
  if (!both) return tl::unexpected(both.error());
  // Only to say that it changed: a file that has gone is no trouble.
  if (const auto today = files::read_shop(stored->shop_name);
      today && today->source.text != stored->shop_text) {
    workshop.sink(base::Level::warn, shown(workshop, stored->shop_name).string() +
                                         " has changed since; used is that of revision " +
                                         std::to_string(stored->document.job.revision));
  }
  if (workshop.shop &&
      (workshop.here / *workshop.shop).lexically_normal() != fs::path(stored->shop_name)) {
    workshop.sink(base::Level::warn,
                  "--shop is not used: the job keeps the shop file of revision " +
                      std::to_string(stored->document.job.revision));
  }
  if (choices.air || choices.resin_temp || choices.cup) {
    MixingChoices today = choices_from(stored->options);
    if (choices.air) today.air = choices.air;
    if (choices.resin_temp) today.resin_temp = choices.resin_temp;
    if (choices.cup) today.cup = choices.cup;
    auto planned = plan_of(workshop, *both, today);
    if (!planned) return tl::unexpected(planned.error());
    stored->document.plan = std::move(*planned);
    stored->document.job.saved = false;
  }
  return PlannedJob{std::move(*both), std::move(stored->document)};
}

}  // namespace wetout::work
