#include "wetout/work/names.hpp"

#include <algorithm>

#include "job_and_shop.hpp"
#include "stored_plan.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/work/jobs.hpp"

namespace wetout::work {
namespace {

base::Result<files::ShopFile> shop_here(const Workshop& workshop) {
  const auto path = find_shop(workshop, workshop.here / "job.toml");
  if (!path) return tl::unexpected(path.error());
  return files::read_shop(*path);
}

template <class Thing>
std::vector<std::string> ids(const std::vector<Thing>& things) {
  std::vector<std::string> names;
  for (const Thing& thing : things) names.push_back(thing.id);
  return names;
}

}  // namespace

std::vector<std::string> job_names(const Workshop& workshop) {
  std::vector<std::string> names;
  const auto document = jobs(workshop);
  if (!document) return names;
  for (const report::JobLine& job : document->jobs) {
    if (!job.archived) names.push_back(job.id);
  }
  return names;
}

std::vector<std::string> coat_names(const Workshop& workshop, std::string_view job) {
  const auto shown = show_job(workshop, job, std::nullopt);
  return shown ? ids(shown->document.plan.coats) : std::vector<std::string>{};
}

std::vector<std::string> step_names(const Workshop& workshop, std::string_view job) {
  std::vector<std::string> names = coat_names(workshop, job);
  const auto add = [&](const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  auto log = open_log(workshop);
  if (!log) return names;
  const auto slug = job_named(*log, job);
  if (!slug) return names;
  if (const auto last = log->last_schedule(*slug)) {
    for (const joblog::ScheduledStep& step : log->schedule_steps(last->number)) {
      const auto name = schedule::read_step_name(step.step);
      // A coat alone is its wet.
      if (step.job == *slug && name && name->word != schedule::StepWord::wet) add(step.step);
    }
  }
  for (const schedule::StepWord word : schedule::step_words) {
    if (schedule::is_of_board(word)) add(std::string(schedule::to_string(word)));
  }
  return names;
}

std::vector<std::string> cup_names(const Workshop& workshop) {
  const auto shop = shop_here(workshop);
  return shop ? ids(shop->shop.cups) : std::vector<std::string>{};
}

std::vector<std::string> resin_names(const Workshop& workshop) {
  const auto shop = shop_here(workshop);
  return shop ? ids(shop->shop.resins) : std::vector<std::string>{};
}

std::vector<std::string> material_names(const Workshop& workshop) {
  const auto shop = shop_here(workshop);
  if (!shop) return {};
  std::vector<std::string> names = ids(shop->shop.materials);
  for (std::string& cloth : ids(shop->shop.cloths)) names.push_back(std::move(cloth));
  return names;
}

}  // namespace wetout::work
