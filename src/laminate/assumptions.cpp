#include "assumptions.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "batching.hpp"
#include "install_heat.hpp"
#include "lookup.hpp"
#include "number_of.hpp"
#include "settings.hpp"

namespace wetout::laminate {
namespace {

base::Result<void> share_into_cups(const PlanRun& run, std::size_t i, const Defaults& settings,
                                   CoatState& state) {
  if (auto batched = batch(run.input, i, settings, run.times, state); !batched) return batched;
  return check_fill(run.input, run.input.coats[i], settings, run.times, state);
}

// With the margin of this coat alone, where it has one.
Defaults of_coat(const PlanRun& run, std::size_t i, Defaults settings) {
  const auto margin = run.input.margins.find(run.input.coats[i].id);
  if (margin != run.input.margins.end()) settings.margin.value = margin->second;
  return settings;
}

bool same(const CoatState& a, const CoatState& b) {
  return a.need == b.need && a.plies == b.plies && a.notices == b.notices;
}

class Mover {
 public:
  Mover(const PlanRun& run, const Defaults& values, const Outcome& outcome)
      : run_(run), outcome_(outcome), moved_(values), settings_(settle(run.input.shop, values)) {}

  std::vector<Assumption> run() {
    visit(moved_, [this](auto& value, const char* unit) { try_moving(value, unit); });
    visit(moved_.resin.cure, [this](auto& value, const char* unit) {
      if (value.name == moved_.resin.cure.dose_power.name) return try_moving(value, unit);
      list(value, unit, std::vector<bool>(outcome_.coats.size(), false));
    });
    return std::move(found_);
  }

 private:
  void try_moving(auto& value, const char* unit) {
    const auto original = value.value;
    const auto step = (value.high - value.low) * 0.01;
    std::vector<bool> used(outcome_.coats.size(), false);
    for (const double sign : {-1.0, 1.0}) {
      value.value = std::clamp(original + step * sign, value.low, value.high);
      if (value.value != original) mark_moved(used);
    }
    value.value = original;
    list(value, unit, used);
  }

  // A coat that fails when the value is moved hangs on it.
  void mark_moved(std::vector<bool>& used) {
    const Defaults settings = settle(run_.input.shop, moved_);
    Progress progress{.foam = Wetted(run_.geometry)};
    for (const std::size_t i : run_.order) {
      auto state = coat_need(run_.input, i, run_.geometry, settings, progress);
      if (used[i]) continue;
      const Defaults own = of_coat(run_, i, settings);
      const Defaults usual = of_coat(run_, i, settings_);
      used[i] = !state || !same(*state, outcome_.needs[i]) ||
                masses_move(run_.input, own, *state, outcome_.coats[i], usual) ||
                fill_moves(settings, outcome_.coats[i]) || !share_into_cups(run_, i, own, *state) ||
                !same(*state, outcome_.coats[i]);
    }
  }

  // What surrounds a fill always moves its peak: no need to follow it.
  bool fill_moves(const Defaults& settings, const CoatState& coat) const {
    return coat.need.fill_peak && fill_surroundings(settings) != fill_surroundings(settings_);
  }

  void list(const auto& value, const char* unit, const std::vector<bool>& moved) {
    const std::string name(value.name);
    Assumption assumption;
    for (std::size_t i = 0; i < outcome_.coats.size(); ++i) {
      if (moved[i] || outcome_.coats[i].assumed.count(name) > 0) {
        assumption.used_by.push_back(run_.input.coats[i].id);
      }
    }
    if (assumption.used_by.empty()) return;
    assumption.name = name;
    assumption.value = number_of(value.value, unit);
    assumption.unit = unit;
    assumption.standing = std::string(base::to_string(value.source.standing));
    assumption.source = std::string(value.source.locator);
    found_.push_back(std::move(assumption));
  }

  const PlanRun& run_;
  const Outcome& outcome_;
  Defaults moved_;
  Defaults settings_;
  std::vector<Assumption> found_;
};

}  // namespace

base::Result<Outcome> compute(const PlanRun& run, const Defaults& values) {
  const Defaults settings = settle(run.input.shop, values);
  Outcome outcome;
  outcome.needs.resize(run.input.coats.size());
  outcome.coats.resize(run.input.coats.size());
  Progress progress{.foam = Wetted(run.geometry)};
  base::Problems problems;
  for (const std::size_t i : run.order) {
    auto state = coat_need(run.input, i, run.geometry, settings, progress);
    base::Result<void> done;
    if (state) {
      outcome.needs[i] = *state;
      done = share_into_cups(run, i, of_coat(run, i, settings), *state);
      outcome.coats[i] = std::move(*state);
    } else {
      done = tl::unexpected(state.error());
    }
    if (!done) problems.insert(problems.end(), done.error().begin(), done.error().end());
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  return outcome;
}

std::vector<Assumption> assumptions_of(const PlanRun& run, const Defaults& values,
                                       const Outcome& outcome) {
  return Mover(run, values, outcome).run();
}

}  // namespace wetout::laminate
