#include "schedule_facts.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <optional>

namespace wetout::work {
namespace {

using joblog::EventKind;
using time::Instant;

struct Seen {
  std::optional<Instant> started, mixed_first, mixed_last, done;
  std::vector<std::pair<resin::Milestone, Instant>> observed;
};

std::chrono::seconds attended(const schedule::BoardSteps& steps, const schedule::StepName& name) {
  for (const schedule::Step& step : steps.steps) {
    if (step.name == name) {
      return std::chrono::seconds(std::llround(units::in_seconds(step.attended)));
    }
  }
  return {};
}

std::optional<resin::Milestone> milestone(const std::string& word) {
  for (const resin::Milestone m : resin::milestones) {
    if (to_string(m) == word) return m;
  }
  return std::nullopt;
}

void see(const joblog::EventRow& event, Seen& seen) {
  switch (event.kind) {
    case EventKind::started:
      seen.started = event.at;
      return;
    case EventKind::done:
      seen.done = event.at;
      return;
    case EventKind::mixed:
      seen.mixed_first = std::min(seen.mixed_first.value_or(event.at), event.at);
      seen.mixed_last = std::max(seen.mixed_last.value_or(event.at), event.at);
      return;
    case EventKind::milestone:
      if (const auto m = milestone(event.facts.milestone)) seen.observed.push_back({*m, event.at});
      return;
    default:
      return;
  }
}

}  // namespace

RecordedWork recorded_work(const std::vector<joblog::EventRow>& events,
                           const schedule::BoardSteps& steps) {
  RecordedWork out;
  std::map<std::string, Seen> by_step;
  for (const joblog::EventRow& event : events) {
    if (event.undone_by || event.kind == EventKind::undo) continue;
    if (event.facts.air_millikelvin) {
      out.air.push_back({event.at, static_cast<double>(*event.facts.air_millikelvin) * 1e-3});
    }
    if (!event.step.empty()) see(event, by_step[event.step]);
  }
  std::stable_sort(out.air.begin(), out.air.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  for (auto& [text, seen] : by_step) {
    const auto name = schedule::read_step_name(text);
    if (!name || (!seen.started && !seen.mixed_first && !seen.done)) continue;
    const auto usual = attended(steps, *name);
    schedule::Fact fact;
    fact.name = *name;
    fact.start = seen.started       ? *seen.started
                 : seen.mixed_first ? *seen.mixed_first
                                    : *seen.done - usual;
    fact.end =
        seen.done ? *seen.done : std::max(fact.start + usual, seen.mixed_last.value_or(fact.start));
    // A start that was recorded after the end says nothing about it.
    if (fact.end < fact.start) fact.start = fact.end - usual;
    fact.observed = std::move(seen.observed);
    out.facts.push_back(std::move(fact));
  }
  return out;
}

}  // namespace wetout::work
