#include "stock_open_needs.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "stock_coat_facts.hpp"
#include "stock_needs.hpp"
#include "stored_plan.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {
namespace {

using CoatAndMaterial = std::pair<std::string, std::string>;

// When each coat is to be done, by the last schedule that holds the job; nothing without one.
std::optional<std::map<std::string, time::Instant>> times_of(const joblog::Log& log,
                                                             const std::string& slug) {
  const auto schedules = log.schedules(slug);
  if (schedules.empty()) return std::nullopt;
  std::map<std::string, time::Instant> times;
  for (const joblog::ScheduledStep& step : log.schedule_steps(schedules.back().number)) {
    const auto name = schedule::read_step_name(step.step);
    if (step.job != slug || !name || name->word != schedule::StepWord::wet) continue;
    times.emplace(name->coat, step.start);
  }
  return times;
}

std::map<CoatAndMaterial, std::int64_t> taken_from_stock(const joblog::Log& log,
                                                         const std::string& slug) {
  std::map<CoatAndMaterial, std::int64_t> taken;
  const auto cost = log.job_cost(slug);
  if (!cost) return taken;
  for (const joblog::JobGoods& goods : cost->goods) {
    const auto step = schedule::read_step_name(goods.step);
    if (step) taken[{step->coat, goods.material.slug}] += goods.quantity;
  }
  return taken;
}

}  // namespace

std::vector<OpenNeed> open_needs(const joblog::Log& log, base::Notices& notices) {
  std::vector<OpenNeed> needs;
  for (const joblog::JobRow& job : log.jobs()) {
    if (job.revisions == 0) continue;
    const auto times = times_of(log, job.slug);
    const auto events = log.events(job.slug);
    if (!times && !has_begun(events)) continue;
    const auto stored = stored_plan(log, job.slug, std::nullopt);
    const auto goods = stored
                           ? goods_of_plan(*stored)
                           : base::Result<std::vector<CoatGoods>>(tl::unexpected(stored.error()));
    if (!goods) {
      notices.push_back({.code = "stock.plan_unread",
                         .text = "its plan cannot be read any more, so what it needs is not known; "
                                 "plan it again",
                         .subject = job.slug});
      continue;
    }
    const auto facts = coat_facts(events, stored->document.plan);
    const auto taken = taken_from_stock(log, job.slug);
    for (const CoatGoods& need : *goods) {
      const auto fact = facts.find(need.coat);
      if (fact != facts.end() && fact->second.done) continue;
      std::int64_t used = 0;
      if (const auto found = taken.find({need.coat, need.material}); found != taken.end()) {
        used = found->second;
      }
      if (fact != facts.end()) {
        const auto mixed = fact->second.mixed.find(need.material);
        if (mixed != fact->second.mixed.end()) used = std::max(used, mixed->second);
      }
      if (need.quantity <= used) continue;
      OpenNeed open{.material = need.material,
                    .unit = need.unit,
                    .quantity = need.quantity - used,
                    .job = job.slug,
                    .coat = need.coat,
                    .when = std::nullopt};
      if (times) {
        if (const auto time = times->find(need.coat); time != times->end()) {
          open.when = time->second;
        }
      }
      needs.push_back(std::move(open));
    }
  }
  return needs;
}

}  // namespace wetout::work
