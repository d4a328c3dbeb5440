#include "node_bound.hpp"

#include <algorithm>
#include <limits>

#include "chain_frame.hpp"

namespace wetout::search {
namespace {

void add_starts_and_choices(const Model& model, const Domains& domains, Value& value) {
  if (model.goal.starts) {
    for (const int op : model.order) {
      const bool sure = domains.holds(model.ops[at(op)].cond) == Truth::yes;
      value.push_back(sure ? domains.lo[at(op)] : -1);
    }
  }
  if (!model.goal.choices) return;
  const std::vector<int> settled = settled_choices(model, domains);
  for (std::size_t g = 0; g < settled.size(); ++g) {
    const bool open = model.group_here[g] && domains.choice[g] == open_choice;
    value.push_back(open ? -1 : settled[g]);
  }
}

std::int64_t least_key(const Model& model, const Domains& domains, int op) {
  const Bits& starts = domains.starts[at(op)];
  std::int64_t least = model.key(op, domains.lo[at(op)]);
  if (model.fn[at(model.ops[at(op)].end)].rising) return least;
  for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
    least = std::min(least, model.key(op, s));
  }
  return least;
}

}  // namespace

Value node_bound(const Model& model, const Propagator& propagator, const Domains& domains) {
  const Goal& goal = model.goal;
  Value value(at(goal.width), 0);
  std::vector<std::int64_t> last(at(goal.end_sets), 0);
  std::vector<bool> visited(at(goal.visit_sets), false);
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    const Op& op = model.ops[i];
    const int index = static_cast<int>(i);
    add_least_cost(model, domains, index, least_cost(model, domains, index), value);
    if (domains.holds(op.cond) != Truth::yes) continue;
    if (goal.last_end >= 0 && op.end_set >= 0) {
      auto& key = last[at(op.end_set)];
      key = std::max(key, least_key(model, domains, index));
    }
    if (goal.visits >= 0 && op.visit_set >= 0) visited[at(op.visit_set)] = true;
  }
  if (goal.last_end >= 0) {
    for (const auto key : last) value[at(goal.last_end)] += key;
  }
  if (goal.visits >= 0) {
    value[at(goal.visits)] = std::count(visited.begin(), visited.end(), true);
  }
  if (goal.tight >= 0) {
    for (const Arc& arc : model.arcs) {
      if (arc.scale <= 0 || domains.holds(arc.cond) != Truth::yes) continue;
      const Slot left =
          propagator.greatest(domains, arc.j, arc.g) - propagator.least(domains, arc.i, arc.f);
      const int level = level_of(left, arc.scale, goal.per_scale);
      if (level < goal.levels) ++value[at(goal.tight + level)];
    }
  }
  add_starts_and_choices(model, domains, value);
  return value;
}

Value value_at_first(const Model& model, const Domains& domains) {
  const Goal& goal = model.goal;
  Value value(at(goal.width), 0);
  std::vector<std::int64_t> last(at(goal.end_sets), 0);
  std::vector<std::vector<int>> visits(at(goal.visit_sets));
  const auto count = [&](int level) {
    if (level < goal.levels) ++value[at(goal.tight + level)];
  };
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    const Op& op = model.ops[i];
    if (domains.holds(op.cond) != Truth::yes) continue;
    const int index = static_cast<int>(i);
    const Slot start = domains.lo[i];
    if (goal.last_end >= 0 && op.end_set >= 0) {
      last[at(op.end_set)] = std::max(last[at(op.end_set)], model.key(index, start));
    }
    if (goal.tight >= 0) {
      for (const auto* level : op.tightness) count(level[start]);
    }
    if (goal.visits >= 0 && op.visit_set >= 0) visits[at(op.visit_set)].push_back(index);
    if (goal.sum >= 0) value[at(goal.sum)] += op.cost(start);
  }
  if (goal.last_end >= 0) {
    for (const auto key : last) value[at(goal.last_end)] += key;
  }
  if (goal.tight >= 0) {
    for (const Arc& arc : model.arcs) {
      if (arc.scale <= 0 || domains.holds(arc.cond) != Truth::yes) continue;
      count(level_of(
          model.time(arc.g, domains.lo[at(arc.j)]) - model.time(arc.f, domains.lo[at(arc.i)]),
          arc.scale, goal.per_scale));
    }
  }
  for (auto& set : visits) {
    if (set.empty()) continue;
    std::sort(set.begin(), set.end(),
              [&](int a, int b) { return domains.lo[at(a)] < domains.lo[at(b)]; });
    auto& sum = value[at(goal.visits)];
    ++sum;
    Slot until = domains.lo[at(set.front())];
    for (const int op : set) {
      if (domains.lo[at(op)] - until >= goal.gap) ++sum;
      until = std::max(until, model.end(op, domains.lo[at(op)]));
    }
  }
  add_starts_and_choices(model, domains, value);
  return value;
}

}  // namespace wetout::search
