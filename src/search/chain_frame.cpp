#include "chain_frame.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace wetout::search {
namespace {

constexpr Slot lowest = std::numeric_limits<Slot>::min();

/// Can `first` be over before `second` starts, with value f of i at most value g of j?
bool order_possible(const Model& model, const Domains& domains, const Arc& arc, int first,
                    int second) {
  const bool first_is_j = first == arc.j;
  const Fn& f = model.fn[at(arc.f)];
  const Fn& g = model.fn[at(arc.g)];
  if (domains.empty(first) || domains.empty(second)) return true;
  const Fn& end = model.fn[at(model.ops[at(first)].end)];
  const Slot lo = domains.lo[at(first)];
  const Slot hi = domains.hi[at(second)];
  // Short cuts; where they do not decide, every start is looked at.
  if (lo + end.least > hi) return false;
  if (first_is_j) {
    // The start of i is later than that of j by the attended part at least.
    if (f.least + end.least > g.most) return false;
    if (end(lo) <= hi && f(hi) <= g(lo)) return true;
  } else if (end(lo) <= hi && f(lo) <= g(hi)) {
    return true;
  }
  // The best value of `first` among its starts that are over by each slot.
  std::vector<Slot> best(at(hi - lo + 1), lowest);
  const Bits& starts = domains.starts[at(first)];
  for (Slot s = lo; s >= 0 && s <= hi; s = starts.next(s + 1)) {
    const Slot over = end(s);
    if (over > hi) continue;
    auto& value = best[at(over - lo)];
    value = std::max(value, first_is_j ? g(s) : -f(s));
  }
  const Bits& others = domains.starts[at(second)];
  Slot sofar = lowest;
  for (Slot s = lo; s <= hi; ++s) {
    sofar = std::max(sofar, best[at(s - lo)]);
    if (sofar == lowest || !others.test(s)) continue;
    if (first_is_j ? f(s) <= sofar : -g(s) <= sofar) return true;
  }
  return false;
}

/// Kept during the attended part of one operation only, as that of every other one.
bool attended_only(const Model& model, const Use& use) {
  const Fn& from = model.fn[at(use.from)];
  const Fn& to = model.fn[at(use.to)];
  const Fn& end = model.fn[at(model.ops[at(use.a)].end)];
  return use.a == use.b && from.table == nullptr && from.add >= 0 && to.table == end.table &&
         to.add <= end.add;
}

bool never_overlap(const Model& model, const Use& a, const Use& b) {
  if (a.a != b.a && attended_only(model, a) && attended_only(model, b)) return true;
  // a is over before b begins when an arc says so about the same two values.
  return std::any_of(model.arcs.begin(), model.arcs.end(), [&](const Arc& arc) {
    if (arc.i != a.b || arc.j != b.a || !arc.without_i.empty() || !arc.without_j.empty()) {
      return false;
    }
    const Fn& f = model.fn[at(arc.f)];
    const Fn& g = model.fn[at(arc.g)];
    const Fn& to = model.fn[at(a.to)];
    const Fn& from = model.fn[at(b.from)];
    return f.table == to.table && g.table == from.table && f.add - g.add >= to.add - from.add;
  });
}

bool matters(const Model& model, int place, int chain) {
  if (place == chain) return false;
  std::vector<const Use*> uses;
  for (const Use& use : model.uses) {
    if (use.place == place) uses.push_back(&use);
  }
  if (model.places[at(place)].room) {
    std::set<int> modes;
    for (const Use* use : uses) modes.insert(use->what);
    return modes.size() > 1;
  }
  int sum = 0;
  for (const Use* use : uses) sum += use->what;
  if (sum <= model.places[at(place)].count) return false;
  for (const Use* a : uses) {
    if (a->what > model.places[at(place)].count) return true;
    for (const Use* b : uses) {
      if (a < b && !never_overlap(model, *a, *b) && !never_overlap(model, *b, *a)) return true;
    }
  }
  return false;
}

}  // namespace

int chain_place(const Model& model) {
  for (std::size_t place = 0; place < model.places.size(); ++place) {
    if (model.places[place].room || model.places[place].count != 1) continue;
    std::vector<int> held(model.ops.size(), 0);
    bool others = false;
    for (const Use& use : model.uses) {
      if (use.place != static_cast<int>(place)) continue;
      const Fn& from = model.fn[at(use.from)];
      const Fn& to = model.fn[at(use.to)];
      const Fn& end = model.fn[at(model.ops[at(use.a)].end)];
      const bool whole = use.a == use.b && use.cond.size() == model.ops[at(use.a)].cond.size() &&
                         from.table == nullptr && from.add == 0 && to.table == end.table &&
                         to.add == end.add;
      others = others || !whole;
      ++held[at(use.a)];
    }
    const bool all = std::all_of(held.begin(), held.end(), [](int times) { return times == 1; });
    if (all && !others) return static_cast<int>(place);
  }
  return -1;
}

bool chain_fits(const Model& model) {
  if (model.ops.empty() || chain_place(model) < 0) return false;
  if (model.goal.end_sets > 1 || model.goal.visit_sets > 1) return false;
  return std::all_of(model.ops.begin(), model.ops.end(), [&](const Op& op) {
    if (model.goal.visits >= 0 && op.visit_set != 0) return false;
    // Without attended work nothing is held, so nothing keeps two operations apart.
    for (Slot s = op.domain.next(0); s >= 0; s = op.domain.next(s + 1)) {
      if (model.time(op.end, s) <= s) return false;
    }
    return true;
  });
}

ChainFrame make_frame(const Model& model, const Domains& domains) {
  ChainFrame frame;
  frame.before.resize(model.ops.size());
  for (std::size_t a = 0; a < model.arcs.size(); ++a) {
    const Arc& arc = model.arcs[a];
    if (arc.i == arc.j || domains.holds(arc.cond) == Truth::no) continue;
    const int index = static_cast<int>(a);
    if (!order_possible(model, domains, arc, arc.j, arc.i)) {
      frame.before[at(arc.j)].push_back({arc.i, index});
    }
    if (!order_possible(model, domains, arc, arc.i, arc.j)) {
      frame.before[at(arc.i)].push_back({arc.j, index});
    }
  }
  const int chain = chain_place(model);
  for (std::size_t place = 0; place < model.places.size(); ++place) {
    frame.place_matters.push_back(matters(model, static_cast<int>(place), chain));
  }
  for (std::size_t op = 0; op < model.ops.size(); ++op) {
    frame.least_cost.push_back(least_cost(model, domains, static_cast<int>(op)));
  }
  return frame;
}

Value least_cost(const Model& model, const Domains& domains, int op) {
  const Op& o = model.ops[at(op)];
  const Bits& starts = domains.starts[at(op)];
  Value cost(at(model.goal.width), 0);
  if (domains.empty(op)) return cost;
  if (model.goal.tight >= 0) {
    for (const auto* level : o.tightness) {
      int best = 0;
      for (Slot s = starts.next(0); s >= 0 && best < model.goal.levels; s = starts.next(s + 1)) {
        best = std::max(best, static_cast<int>(level[s]));
      }
      if (best < model.goal.levels) ++cost[at(model.goal.tight + best)];
    }
  }
  if (model.goal.sum >= 0) {
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
      best = std::min<std::int64_t>(best, o.cost(s));
      if (o.cost.rising) break;
    }
    cost[at(model.goal.sum)] = best;
  }
  return cost;
}

void add_least_cost(const Model& model, const Domains& domains, int op, const Value& least,
                    Value& bound) {
  const Truth takes_place = domains.holds(model.ops[at(op)].cond);
  if (takes_place == Truth::yes) {
    for (std::size_t k = 0; k < bound.size(); ++k) bound[k] += least[k];
  } else if (takes_place == Truth::maybe && model.goal.sum >= 0) {
    const auto sum = at(model.goal.sum);
    bound[sum] += std::min<std::int64_t>(0, least[sum]);
  }
}

}  // namespace wetout::search
