#include "wetout/work/names.hpp"

#include "job_and_shop.hpp"
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

std::vector<std::string> cup_names(const Workshop& workshop) {
  const auto shop = shop_here(workshop);
  return shop ? ids(shop->shop.cups) : std::vector<std::string>{};
}

std::vector<std::string> resin_names(const Workshop& workshop) {
  const auto shop = shop_here(workshop);
  return shop ? ids(shop->shop.resins) : std::vector<std::string>{};
}

}  // namespace wetout::work
