#include "stock_coat_facts.hpp"

#include <algorithm>
#include <utility>

#include "wetout/joblog/ledger.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using units::Milligrams;

struct Planned {
  std::string part_a, part_b;
  std::int64_t a = 0, b = 0;
  std::vector<std::pair<std::string, std::int64_t>> additives;
};

Planned planned(const laminate::CoatNeed& coat) {
  Planned out;
  for (const laminate::Batch& batch : coat.batches) {
    if (batch.pours.empty()) continue;
    out.part_a = batch.pours.front().what;
    out.part_b = batch.pours.back().what;
    out.a += batch.part_a.count();
    out.b += batch.part_b.count();
    for (const laminate::AdditiveAmount& additive : batch.additives) {
      const auto found = std::find_if(out.additives.begin(), out.additives.end(),
                                      [&](auto& one) { return one.first == additive.material; });
      if (found == out.additives.end()) {
        out.additives.emplace_back(additive.material, additive.mass.count());
      } else {
        found->second += additive.mass.count();
      }
    }
  }
  return out;
}

// Shares a mass by weights, to the milligram; nothing where nothing weighs.
void share(std::int64_t mass, const std::vector<std::pair<std::string, std::int64_t>>& by,
           std::map<std::string, std::int64_t>& out) {
  std::vector<std::int64_t> weights;
  std::int64_t sum = 0;
  for (const auto& [material, weight] : by) {
    weights.push_back(weight);
    sum += weight;
  }
  if (sum == 0 || mass == 0) return;
  const std::vector<std::int64_t> shares = joblog::split_price(mass, weights);
  for (std::size_t i = 0; i < by.size(); ++i) out[by[i].first] += shares[i];
}

void mix(CoatFacts& facts, const joblog::Facts& event, const Planned& plan) {
  facts.mixed_in_all += *event.mass;
  if (plan.part_a.empty()) return;
  if (event.part_a && event.part_b) {
    facts.mixed[plan.part_a] += event.part_a->count();
    facts.mixed[plan.part_b] += event.part_b->count();
    share((*event.mass - *event.part_a - *event.part_b).count(), plan.additives, facts.mixed);
    return;
  }
  auto all = plan.additives;
  all.emplace_back(plan.part_a, plan.a);
  all.emplace_back(plan.part_b, plan.b);
  share(event.mass->count(), all, facts.mixed);
}

// Nobody trims or sands a coat that is not there, or sees it gel.
bool follows_the_coat(const joblog::EventRow& event, schedule::StepWord word) {
  using schedule::StepWord;
  switch (word) {
    case StepWord::wet:
      return event.kind == EventKind::done || event.kind == EventKind::milestone;
    case StepWord::watch:
    case StepWord::trim:
    case StepWord::peel:
    case StepWord::feather:
    case StepWord::wash:
    case StepWord::scuff:
    case StepWord::open:
    case StepWord::sand:
    case StepWord::polish:
      return event.kind == EventKind::started || event.kind == EventKind::done;
    default:
      return false;
  }
}

}  // namespace

std::map<std::string, CoatFacts> coat_facts(const std::vector<joblog::EventRow>& events,
                                            const laminate::Plan& plan) {
  std::map<std::string, Planned> plans;
  for (const laminate::CoatNeed& coat : plan.coats) plans[coat.id] = planned(coat);
  std::map<std::string, CoatFacts> all;
  for (const joblog::EventRow& event : events) {
    const auto step = schedule::read_step_name(event.step);
    if (event.undone_by || !step || step->coat.empty()) continue;
    CoatFacts& facts = all[step->coat];
    facts.done = facts.done || follows_the_coat(event, step->word);
    if (step->word != schedule::StepWord::wet) continue;
    if (event.kind == EventKind::mixed) mix(facts, event.facts, plans[step->coat]);
    if (event.kind == EventKind::left) facts.left += *event.facts.mass;
    if (event.kind == EventKind::spilled) facts.spilled += *event.facts.mass;
  }
  return all;
}

bool has_begun(const std::vector<joblog::EventRow>& events) {
  return std::any_of(events.begin(), events.end(), [](const joblog::EventRow& event) {
    return !event.undone_by && (event.kind == EventKind::mixed ||
                                event.kind == EventKind::started || event.kind == EventKind::done);
  });
}

}  // namespace wetout::work
