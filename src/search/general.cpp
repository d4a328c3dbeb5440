#include "general.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace wetout::search {

General::General(const Model& model, Budget budget)
    : model_(model), budget_(std::move(budget)), propagator_(model) {
  for (const Use& use : model.uses) {
    bool empty = use.a != use.b;
    const Bits& starts = model.ops[at(use.a)].domain;
    for (Slot s = starts.next(0); s >= 0 && !empty; s = starts.next(s + 1)) {
      empty = model.time(use.to, s) <= model.time(use.from, s);
    }
    may_be_empty_.push_back(empty);
  }
}

void General::start_from(Found incumbent) {
  best_value_ = incumbent.value;
  if (model_.goal.starts) {
    for (const int op : model_.order) best_value_.push_back(incumbent.start[at(op)]);
  }
  if (model_.goal.choices) {
    best_value_.insert(best_value_.end(), incumbent.choice.begin(), incumbent.choice.end());
  }
  best_ = std::move(incumbent);
}

State General::run() {
  Node root;
  if (propagator_.init(root.domains) && propagator_.probe(root.domains)) {
    const Value bound = node_bound(model_, propagator_, root.domains);
    if (!cut(bound)) explore(std::move(root), bound);
  }
  if (stopped_) return best_ ? State::feasible : State::stopped;
  return best_ ? State::proved : State::infeasible;
}

Value General::bound() const {
  Value bound = best_value_;
  if (open_bound_ && (!best_ || *open_bound_ < bound)) bound = *open_bound_;
  bound.resize(std::min(bound.size(), at(model_.goal.width)));
  return bound;
}

bool General::cut(const Value& bound) const { return best_ && bound >= best_value_; }

bool General::tighten(Node& node) {
  // What ends later than the best so far is of no use.
  if (!best_ || model_.goal.last_end != 0 || model_.goal.end_sets != 1) return true;
  return propagator_.limit_last(node.domains, best_->value[0]) &&
         propagator_.run(node.domains, {}, node.orders);
}

void General::explore(Node node, const Value& bound) {
  if (budget_.step && budget_.step()) stopped_ = true;
  if (stopped_) {
    if (!open_bound_ || bound < *open_bound_) open_bound_ = bound;
    return;
  }
  std::vector<Branch> list = branches(node, bound);
  for (Branch& branch : list) {
    Node child = node;
    ++*budget_.extensions;
    branch.possible = apply(branch, child);
    if (branch.possible)
      branch.bound = std::max(bound, node_bound(model_, propagator_, child.domains));
  }
  // An impossible branch goes first, for what its contrary says about the others.
  std::stable_sort(list.begin(), list.end(), [](const Branch& a, const Branch& b) {
    return a.possible != b.possible ? b.possible : a.bound < b.bound;
  });
  for (const Branch& branch : list) {
    if (branch.possible && !cut(branch.bound)) {
      Node child = node;
      if (stopped_ || (apply(branch, child) && tighten(child))) {
        explore(std::move(child), branch.bound);
      }
    }
    if (branch.order && !stopped_ && !exclude(*branch.order, node)) return;
  }
}

bool General::exclude(const Order& order, Node& node) {
  // Not (f + gap <= g), that is g + 1 - gap <= f.
  if (order.i == order.j) return true;
  node.orders.push_back({order.j, order.g, order.i, order.f, 1 - order.gap});
  return propagator_.run(node.domains, {order.i}, node.orders);
}

bool General::apply(const Branch& branch, Node& node) {
  Domains& domains = node.domains;
  if (branch.choose) {
    return propagator_.choose(domains, branch.choose->group, branch.choose->option, node.orders);
  }
  if (branch.order) {
    const Order& order = *branch.order;
    if (order.i != order.j) {
      node.orders.push_back(order);
      return propagator_.run(domains, {order.i}, node.orders);
    }
    Bits& starts = domains.starts[at(order.i)];
    for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
      if (model_.time(order.f, s) > model_.time(order.g, s)) starts.reset(s);
    }
    return propagator_.run(domains, {order.i}, node.orders);
  }
  Bits& starts = domains.starts[at(branch.op)];
  if (branch.early) {
    starts.clear_from(branch.split);
  } else {
    starts.clear_before(branch.split);
  }
  return propagator_.run(domains, {branch.op}, node.orders);
}

std::vector<General::Branch> General::branches(const Node& node, const Value& bound) {
  const Domains& domains = node.domains;
  for (std::size_t g = 0; g < model_.group_here.size(); ++g) {
    if (!model_.group_here[g] || domains.choice[g] != open_choice) continue;
    if (domains.holds(model_.group_cond[g]) != Truth::yes) continue;
    std::vector<Branch> out;
    for (int o = 0; o < model_.problem->groups[g].options; ++o) {
      if ((domains.options[g] >> static_cast<unsigned>(o) & 1U) == 0) continue;
      out.emplace_back();
      out.back().choose = Option{static_cast<int>(g), o};
    }
    return out;
  }
  std::vector<Branch> out;
  int op = broken_op(node);
  if (op < 0) out = conflict(node);
  if (!out.empty()) return out;
  if (op < 0) {
    const Value value = value_at_first(model_, domains);
    offer(domains, value);
    if (value == bound) return {};
    // Where the earliest starts are not the best, the smallest choice of starts is split.
    for (std::size_t i = 0; i < model_.ops.size(); ++i) {
      if (domains.holds(model_.ops[i].cond) != Truth::yes) continue;
      if (domains.lo[i] == domains.hi[i]) continue;
      if (op < 0 || domains.starts[i].count() < domains.starts[at(op)].count()) {
        op = static_cast<int>(i);
      }
    }
    if (op < 0) return {};
  }
  out.resize(2);
  for (Branch& branch : out) {
    branch.op = op;
    branch.split = domains.lo[at(op)] + (domains.hi[at(op)] - domains.lo[at(op)] + 1) / 2;
  }
  out[0].early = true;
  return out;
}

int General::broken_op(const Node& node) const {
  const Domains& domains = node.domains;
  const auto split = [&](int i, int j) { return domains.lo[at(i)] < domains.hi[at(i)] ? i : j; };
  for (const Order& order : node.orders) {
    if (model_.time(order.f, domains.lo[at(order.i)]) + order.gap >
        model_.time(order.g, domains.lo[at(order.j)])) {
      return split(order.i, order.j);
    }
  }
  for (const Arc& arc : model_.arcs) {
    if (arc.i == arc.j || domains.holds(arc.cond) != Truth::yes) continue;
    if (model_.time(arc.f, domains.lo[at(arc.i)]) <= model_.time(arc.g, domains.lo[at(arc.j)])) {
      continue;
    }
    return split(arc.i, arc.j);
  }
  for (const Pairs& pairs : model_.pairs) {
    if (domains.holds(pairs.cond) != Truth::yes) continue;
    if (pairs.of_a[at(domains.lo[at(pairs.a)])].test(domains.lo[at(pairs.b)])) continue;
    return split(pairs.a, pairs.b);
  }
  return -1;
}

std::vector<General::Branch> General::conflict(const Node& node) const {
  const Domains& domains = node.domains;
  struct Kept {
    int use;
    Slot from;
    Slot to;
  };
  std::vector<std::vector<Kept>> by_place(model_.places.size());
  for (std::size_t u = 0; u < model_.uses.size(); ++u) {
    const Use& use = model_.uses[u];
    if (domains.holds(use.cond) != Truth::yes) continue;
    const Slot from = model_.time(use.from, domains.lo[at(use.a)]);
    const Slot to = model_.time(use.to, domains.lo[at(use.b)]);
    if (to > from) by_place[at(use.place)].push_back({static_cast<int>(u), from, to});
  }
  Slot earliest = std::numeric_limits<Slot>::max();
  std::vector<int> set;
  for (std::size_t place = 0; place < by_place.size(); ++place) {
    for (const Kept& k : by_place[place]) {
      if (k.from >= earliest) continue;
      std::vector<int> together;
      int used = 0;
      for (const Kept& other : by_place[place]) {
        if (other.from > k.from || k.from >= other.to) continue;
        const int what = model_.uses[at(other.use)].what;
        if (model_.places[place].room) {
          if (other.use != k.use && what != model_.uses[at(k.use)].what) {
            together = {k.use, other.use};
            break;
          }
        } else {
          used += what;
          together.push_back(other.use);
        }
      }
      if (model_.places[place].room ? together.empty() : used <= model_.places[place].count)
        continue;
      if (!model_.places[place].room) {
        // As few as possible: those that use little go first as long as the rest is too much.
        std::sort(together.begin(), together.end(),
                  [&](int a, int b) { return model_.uses[at(a)].what < model_.uses[at(b)].what; });
        while (used - model_.uses[at(together.front())].what > model_.places[place].count) {
          used -= model_.uses[at(together.front())].what;
          together.erase(together.begin());
        }
      }
      earliest = k.from;
      set = together;
    }
  }
  std::vector<Branch> out;
  if (!set.empty()) order_branches(domains, set, out);
  return out;
}

void General::order_branches(const Domains& domains, const std::vector<int>& uses,
                             std::vector<Branch>& out) const {
  const auto add = [&](const Use& first, const Use& second) {
    const Order order{first.b, first.to, second.a, second.from};
    if (order.i != order.j && propagator_.least(domains, order.i, order.f) >
                                  propagator_.greatest(domains, order.j, order.g)) {
      return;
    }
    out.emplace_back();
    out.back().order = order;
  };
  for (const int a : uses) {
    const Use& use = model_.uses[at(a)];
    // Kept for no time at all is a way out, too.
    if (may_be_empty_[at(a)]) add(use, use);
    for (const int b : uses) {
      if (a != b) add(use, model_.uses[at(b)]);
    }
  }
  if (out.empty()) {
    // Nobody can give way: an order that cannot hold says so.
    const Use& use = model_.uses[at(uses.front())];
    out.emplace_back();
    out.back().order = Order{use.b, use.to, use.a, use.from};
  }
}

void General::offer(const Domains& domains, const Value& value) {
  if (cut(value)) return;
  Found schedule;
  for (std::size_t i = 0; i < model_.ops.size(); ++i) {
    const bool sure = domains.holds(model_.ops[i].cond) == Truth::yes;
    schedule.start.push_back(sure ? domains.lo[i] : -1);
  }
  schedule.choice = settled_choices(model_, domains);
  schedule.value.assign(value.begin(), value.begin() + model_.goal.width);
  best_value_ = value;
  best_ = std::move(schedule);
  if (found) found(*best_);
}

}  // namespace wetout::search
