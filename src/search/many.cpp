#include "many.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "chain_frame.hpp"
#include "node_bound.hpp"
#include "occupancy.hpp"
#include "parts.hpp"
#include "random.hpp"
#include "span_bound.hpp"

namespace wetout::search {
namespace {

constexpr int beam_of_insertion = 20;
/// Without a time limit, so many times a few parts are taken out, per part.
constexpr int trials_per_part = 30;
/// Share of the time limit after which the last polish begins.
constexpr double share_for_trials = 0.9;
/// How much worse a trial may be at first, as a share of a part's mean last end; falls to nothing.
constexpr double heat_share = 0.02;
/// Shares of the working day that a room is given to what is short, and how many trials in a
/// hundred take one of them.
constexpr double least_plan = 0.25, most_plan = 0.70, plan_step = 0.05;
constexpr int percent_by_plan = 30;
/// Trials in a hundred in which the parts that go in first keep away from some spans, drawn at
/// random: the earliest place of a part is often in everybody's way. Spans in a hundred, at most.
constexpr int percent_shunning = 80;
constexpr int most_shunned_percent = 40;
constexpr std::int64_t any = std::numeric_limits<std::int64_t>::max() / 4;

/// Mostly up to four parts, seldom half of them or all.
int how_many(Random& random, int parts) {
  const int percent = random.between(1, 100);
  if (percent <= 35) return std::min(random.between(1, 2), parts);
  if (percent <= 80) return std::min(random.between(3, 4), parts);
  return random.between(std::min(5, parts), parts);
}

}  // namespace

bool many_fits(const Problem& problem, const Objective& objective) {
  const auto parts = parts_of(problem);
  if (parts.size() < 2) return false;
  return std::all_of(parts.begin(), parts.end(), [&](const auto& ops) {
    return chain_fits(compile(problem, objective, ops, {}));
  });
}

Many::Many(const Problem& problem, const Objective& objective, Run& run)
    : problem_(problem), objective_(objective), run_(run), rooms_(problem) {
  for (auto& ops : parts_of(problem)) {
    Part part;
    part.earliest.terms = {LastEnd{{ops}, -1}, Sum{}};
    part.ops = std::move(ops);
    parts_.push_back(std::move(part));
  }
  best_.resize(parts_.size());
  for (const Operation& op : problem.ops) {
    if (op.calendar < 0 || !spans_.empty()) continue;
    spans_ = problem.calendars[at(op.calendar)].spans;
  }
}

State Many::solve() {
  if (!alone()) return State::infeasible;
  const bool inserted = insert_all();
  raise_bound();
  if (!inserted) return State::stopped;
  polish();
  improve();
  polish();
  const bool proved = run_.best() && run_.bound() == run_.value();
  return proved ? State::proved : State::feasible;
}

bool Many::alone() {
  for (Part& part : parts_) {
    part.model = compile(problem_, part.earliest, part.ops, {});
    part.groups = part.model.group_here;
    for (const Op& op : part.model.ops) part.alone.push_back(op.domain);
    for (const Use& use : part.model.uses) {
      const bool own = use.a == use.b && use.cond.size() == part.model.ops[at(use.a)].cond.size();
      part.simple = part.simple && own;
    }
    const ChainResult result = solve_part(part.model, {});
    if (result.state == State::infeasible) return false;
    if (!result.bound.empty()) part.least = result.bound[0];
  }
  return true;
}

ChainResult Many::solve_part(const Model& model, const ChainOptions& options) {
  return solve_chain(model, options,
                     {[&] { return run_.step(); }, &run_.extensions, run_.limits().memory_bytes});
}

void Many::raise_bound() {
  const Model model = compile(problem_, objective_);
  Propagator propagator(model);
  Domains domains;
  if (!propagator.init(domains)) return;
  Value bound = node_bound(model, propagator, domains);
  if (model.goal.last_end == 0) {
    SpanBoundInput input;
    for (const Part& part : parts_) {
      input.parts.push_back(part.ops);
      input.least.push_back(model.goal.calendar < 0 ? part.least : 0);
    }
    if (run_.best()) input.known = run_.value()[0];
    const auto& term = std::get<LastEnd>(objective_.terms.front());
    const auto spans = span_bound(problem_, term, input, [&] { return run_.look(); });
    if (spans) bound[0] = std::max(bound[0], *spans);
  }
  run_.raise_bound(bound);
}

bool Many::insert_all() {
  std::vector<int> order(parts_.size());
  std::iota(order.begin(), order.end(), 0);
  std::vector<std::vector<int>> orders = {order};
  const auto shorter = [&](int a, int b) { return parts_[at(a)].least < parts_[at(b)].least; };
  std::stable_sort(order.begin(), order.end(), shorter);
  orders.push_back(order);
  std::reverse(order.begin(), order.end());
  orders.push_back(order);
  Random random(run_.limits().seed);
  for (std::size_t extra = 0; extra < parts_.size(); ++extra) {
    random.shuffle(order);
    orders.push_back(order);
  }
  for (std::size_t k = 0; k < orders.size(); ++k) {
    // More orders than the first three are only for when nothing fits.
    if (k >= 3 && run_.best()) break;
    if (k > 0 && run_.stopped() && run_.best()) break;
    Placed placed(parts_.size());
    if (put(orders[k], placed, any, {}) && run_.offer(schedule(placed))) best_ = placed;
  }
  insert_by_plans({orders.begin(), orders.begin() + 3});
  return run_.best().has_value();
}

void Many::insert_by_plans(const std::vector<std::vector<int>>& orders) {
  if (rooms_.empty()) return;
  for (double share = least_plan; share < most_plan; share += plan_step) {
    for (const auto& order : orders) {
      if (run_.stopped()) return;
      Placed placed(parts_.size());
      if (put(order, placed, any, rooms_.plan(share)) && run_.offer(schedule(placed))) {
        best_ = placed;
      }
    }
  }
}

void Many::improve() {
  Random random(run_.limits().seed);
  const bool timed = run_.limits().time_limit_s > 0.0 && run_.limits().elapsed_s;
  const double begun = run_.elapsed_s();
  const double time = share_for_trials * run_.left_s();
  const int parts = static_cast<int>(parts_.size());
  const int trials = trials_per_part * parts;
  Placed now = best_;
  double heat = 0.0;
  for (int p = 0; p < parts; ++p) {
    heat += heat_share * static_cast<double>(last_end(p, *now[at(p)])) / parts;
  }
  for (int trial = 0;; ++trial) {
    const double done =
        timed ? (run_.elapsed_s() - begun) / time : static_cast<double>(trial) / trials;
    if (done >= 1.0 || run_.look() || run_.value()[0] <= run_.bound()[0]) return;
    std::vector<int> order(parts_.size());
    std::iota(order.begin(), order.end(), 0);
    random.shuffle(order);
    order.resize(at(how_many(random, parts)));
    Placed next = now;
    // Simulated annealing by a threshold drawn beforehand, so that hopeless trials end early.
    auto most = static_cast<std::int64_t>(-heat * (1.0 - done) * std::log(random.unit()));
    for (const int part : order) {
      most += last_end(part, *next[at(part)]);
      next[at(part)].reset();
    }
    std::vector<Taken> plan;
    if (!rooms_.empty() && random.between(1, 100) <= percent_by_plan) {
      plan = rooms_.plan(least_plan + (most_plan - least_plan) * random.unit());
    }
    const bool shun = order.size() > 1 && random.between(1, 100) <= percent_shunning;
    if (!put(order, next, most, plan, shun ? &random : nullptr) || run_.stopped()) continue;
    now = next;
    if (run_.offer(schedule(next))) best_ = next;
  }
}

void Many::polish() {
  // Each part again, by the whole objective, where the others leave room.
  for (std::size_t p = 0; p < parts_.size() && !run_.stopped(); ++p) {
    const int part = static_cast<int>(p);
    const Model model = compile(problem_, objective_, parts_[p].ops, taken(best_, part));
    const ChainResult better = solve_part(model, {});
    if (!better.best || run_.stopped()) continue;
    Placed next = best_;
    next[p] = better.best;
    if (run_.offer(schedule(next))) best_ = next;
  }
}

std::vector<Taken> Many::shunned(int part, Random& random) const {
  const int place = chain_place(parts_[at(part)].model);
  const int percent = random.between(1, most_shunned_percent);
  std::vector<Taken> out;
  for (const auto& [from, until] : spans_) {
    if (random.between(1, 100) <= percent) out.push_back({place, 1, from, until});
  }
  return out;
}

bool Many::put(const std::vector<int>& order, Placed& placed, std::int64_t most,
               const std::vector<Taken>& plan, Random* shunning) {
  std::int64_t rest = 0;
  for (const int part : order) rest += parts_[at(part)].least;
  for (const int part : order) {
    rest -= parts_[at(part)].least;
    ChainOptions options;
    options.beam = beam_of_insertion;
    if (most < any) options.last_end = most - rest;
    std::vector<Taken> others = taken(placed, part);
    others.insert(others.end(), plan.begin(), plan.end());
    if (shunning != nullptr && part != order.back()) {
      const std::vector<Taken> away = shunned(part, *shunning);
      others.insert(others.end(), away.begin(), away.end());
    }
    auto found = put_one(part, others, options);
    if (!found) return false;
    if (most < any) most -= found->value[0];
    placed[at(part)] = std::move(found);
  }
  return true;
}

std::optional<Found> Many::put_one(int index, const std::vector<Taken>& others,
                                   const ChainOptions& options) {
  Part& part = parts_[at(index)];
  if (!part.simple) {
    return solve_part(compile(problem_, part.earliest, part.ops, others), options).best;
  }
  Occupancy occupancy(problem_, others);
  for (std::size_t i = 0; i < part.alone.size(); ++i) part.model.ops[i].domain = part.alone[i];
  for (const Use& use : part.model.uses) {
    occupancy.take_out(part.model.ops[at(use.a)].domain, use.place, use.what,
                       part.model.fn[at(use.from)], part.model.fn[at(use.to)]);
  }
  return solve_part(part.model, options).best;
}

std::vector<Taken> Many::taken(const Placed& placed, int except) const {
  const Schedule all = schedule(placed);
  std::vector<bool> mine(problem_.ops.size(), false);
  for (const int op : parts_[at(except)].ops) mine[at(op)] = true;
  std::vector<Taken> out;
  const auto add = [&](int place, int what, EventRef from, EventRef to, Slot after, Option when) {
    if (mine[at(from.op)] || !all.start[at(from.op)] || !all.start[at(to.op)]) return;
    if (!chosen(all, when)) return;
    out.push_back({place, what, time_of(problem_, from, *all.start[at(from.op)]),
                   time_of(problem_, to, *all.start[at(to.op)]) + after});
  };
  for (const Hold& hold : problem_.holds) {
    add(hold.resource, hold.amount, hold.from, hold.to, 0, hold.when);
  }
  for (const RoomMode& mode : problem_.modes) {
    add(place_of_room(problem_, mode.room), mode.mode, mode.from, mode.to, mode.after, mode.when);
  }
  return out;
}

Schedule Many::schedule(const Placed& placed) const {
  Schedule all;
  all.start.resize(problem_.ops.size());
  all.choice.assign(problem_.groups.size(), -1);
  std::vector<bool> decided(problem_.groups.size(), false);
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    if (!placed[p]) continue;
    for (std::size_t i = 0; i < parts_[p].ops.size(); ++i) {
      if (placed[p]->start[i] >= 0) all.start[at(parts_[p].ops[i])] = placed[p]->start[i];
    }
    for (std::size_t g = 0; g < decided.size(); ++g) {
      if (!parts_[p].groups[g]) continue;
      all.choice[g] = placed[p]->choice[g];
      decided[g] = true;
    }
  }
  for (std::size_t g = 0; g < decided.size(); ++g) {
    if (!decided[g] && chosen(all, problem_.groups[g].when)) all.choice[g] = 0;
  }
  return all;
}

std::int64_t Many::last_end(int part, const Found& found) const {
  std::int64_t last = 0;
  for (std::size_t i = 0; i < parts_[at(part)].ops.size(); ++i) {
    if (found.start[i] < 0) continue;
    const int op = parts_[at(part)].ops[i];
    last = std::max<std::int64_t>(last, time_of(problem_, {op, at_end}, found.start[i]));
  }
  return last;
}

}  // namespace wetout::search
