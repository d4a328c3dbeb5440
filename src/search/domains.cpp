#include "domains.hpp"

#include <algorithm>
#include <bit>

namespace wetout::search {

Propagator::Propagator(const Model& model) : model_(model), is_dirty_(model.ops.size(), false) {}

bool Propagator::init(Domains& domains) {
  forget();
  domains = {};
  for (const Op& op : model_.ops) {
    domains.starts.push_back(op.domain);
    domains.lo.push_back(0);
    domains.hi.push_back(model_.horizon - 1);
  }
  for (const Group& group : model_.problem->groups) {
    const auto count = static_cast<unsigned>(group.options);
    domains.options.push_back(count >= 32 ? ~0U : (1U << count) - 1);
    domains.choice.push_back(open_choice);
  }
  queue_all();
  for (std::size_t g = 0; g < domains.choice.size(); ++g) {
    if (!update_group(domains, static_cast<int>(g))) return false;
  }
  for (std::size_t op = 0; op < model_.ops.size(); ++op) {
    if (!shrunk(domains, static_cast<int>(op))) return false;
  }
  return settle(domains, {});
}

bool Propagator::run(Domains& domains, const std::vector<int>& changed,
                     const std::vector<Order>& orders) {
  forget();
  if (changed.empty()) queue_all();
  for (const int op : changed) {
    if (!shrunk(domains, op)) return false;
  }
  return settle(domains, orders);
}

bool Propagator::choose(Domains& domains, int group, int option, const std::vector<Order>& orders) {
  forget();
  for (int o = 0; o < model_.problem->groups[at(group)].options; ++o) {
    if (o != option && !drop_option(domains, group, o)) return false;
  }
  return settle(domains, orders);
}

bool Propagator::forbid(Domains& domains, int group, int option, const std::vector<Order>& orders) {
  forget();
  return drop_option(domains, group, option) && settle(domains, orders);
}

bool Propagator::limit_last(Domains& domains, std::int64_t key) {
  std::vector<int> changed;
  for (std::size_t i = 0; i < model_.ops.size(); ++i) {
    if (model_.ops[i].end_set < 0) continue;
    const int op = static_cast<int>(i);
    Bits& starts = domains.starts[i];
    bool any = false;
    for (Slot s = starts.previous(domains.hi[i]); s >= 0; s = starts.previous(s - 1)) {
      if (model_.key(op, s) > key) {
        starts.reset(s);
        any = true;
      } else if (model_.fn[at(model_.ops[i].end)].rising) {
        break;
      }
    }
    if (any) changed.push_back(op);
  }
  return changed.empty() || run(domains, changed);
}

bool Propagator::probe(Domains& domains) {
  for (bool again = true; again;) {
    again = false;
    for (std::size_t g = 0; g < domains.choice.size(); ++g) {
      const int group = static_cast<int>(g);
      if (!model_.group_here[g] || domains.choice[g] != open_choice) continue;
      if (domains.holds(model_.group_cond[g]) != Truth::yes) continue;
      std::vector<Bits> supported;
      for (int o = 0; o < model_.problem->groups[g].options; ++o) {
        if ((domains.options[g] >> static_cast<unsigned>(o) & 1U) == 0) continue;
        Domains trial = domains;
        if (!choose(trial, group, o)) {
          if (!forbid(domains, group, o)) return false;
          again = true;
          continue;
        }
        // An operation that this option leaves out says nothing about its starts.
        for (std::size_t i = 0; i < model_.ops.size(); ++i) {
          if (trial.holds(model_.ops[i].cond) == Truth::no) trial.starts[i] = Bits(model_.horizon);
        }
        if (supported.empty()) supported.assign(model_.ops.size(), Bits(model_.horizon));
        for (std::size_t i = 0; i < model_.ops.size(); ++i) supported[i] |= trial.starts[i];
      }
      std::vector<int> changed;
      for (std::size_t i = 0; i < model_.ops.size() && !supported.empty(); ++i) {
        if (supported[i].covers(domains.starts[i])) continue;
        domains.starts[i] &= supported[i];
        changed.push_back(static_cast<int>(i));
      }
      if (!changed.empty() && !run(domains, changed)) return false;
    }
  }
  return true;
}

bool Propagator::settle(Domains& domains, const std::vector<Order>& orders) {
  bool good = true;
  while (good && !dirty_.empty()) {
    const int op = dirty_.back();
    dirty_.pop_back();
    is_dirty_[at(op)] = false;
    const Op& o = model_.ops[at(op)];
    for (const int arc : o.arcs) good = good && revise(domains, model_.arcs[at(arc)]);
    for (const int pairs : o.pairs) good = good && revise(domains, model_.pairs[at(pairs)]);
    for (const Order& order : orders) {
      if (!good || (order.i != op && order.j != op)) continue;
      good = keep_at_most(domains, order.i, order.f,
                          greatest(domains, order.j, order.g) - order.gap) &&
             keep_at_least(domains, order.j, order.g, least(domains, order.i, order.f) + order.gap);
    }
  }
  return good;
}

void Propagator::forget() {
  for (const int op : dirty_) is_dirty_[at(op)] = false;
  dirty_.clear();
}

bool Propagator::revise(Domains& domains, const Arc& arc) {
  if (domains.holds(arc.cond) == Truth::no) return true;
  const bool prune_i = domains.holds(arc.without_i) == Truth::yes;
  if (arc.i == arc.j) {
    if (!prune_i) return true;
    Bits& starts = domains.starts[at(arc.i)];
    bool any = false;
    for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
      if (model_.time(arc.f, s) <= model_.time(arc.g, s)) continue;
      starts.reset(s);
      any = true;
    }
    return !any || shrunk(domains, arc.i);
  }
  if (domains.empty(arc.i) || domains.empty(arc.j)) return true;
  if (prune_i && !keep_at_most(domains, arc.i, arc.f, greatest(domains, arc.j, arc.g)))
    return false;
  if (domains.empty(arc.i)) return true;
  const bool prune_j = domains.holds(arc.without_j) == Truth::yes;
  return !prune_j || keep_at_least(domains, arc.j, arc.g, least(domains, arc.i, arc.f));
}

bool Propagator::revise(Domains& domains, const Pairs& pairs) {
  if (domains.holds(pairs.cond) == Truth::no) return true;
  if (domains.empty(pairs.a) || domains.empty(pairs.b)) return true;
  const auto filter = [&](int op, int other, const std::vector<Bits>& rows) {
    Bits& starts = domains.starts[at(op)];
    bool any = false;
    for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
      if (rows[at(s)].meets(domains.starts[at(other)])) continue;
      starts.reset(s);
      any = true;
    }
    return !any || shrunk(domains, op);
  };
  if (domains.holds(pairs.without_a) == Truth::yes && !filter(pairs.a, pairs.b, pairs.of_a)) {
    return false;
  }
  if (domains.empty(pairs.a)) return true;
  return domains.holds(pairs.without_b) != Truth::yes || filter(pairs.b, pairs.a, pairs.of_b);
}

bool Propagator::keep_at_most(Domains& domains, int op, int f, Slot most) {
  Bits& starts = domains.starts[at(op)];
  const Fn& fn = model_.fn[at(f)];
  if (domains.empty(op)) return true;
  if (fn.rising) {
    if (fn(domains.hi[at(op)]) <= most) return true;
    if (fn.table == nullptr) {
      starts.clear_from(most - fn.add + 1);
    } else {
      Slot s = domains.hi[at(op)];
      while (s >= 0 && fn(s) > most) s = starts.previous(s - 1);
      starts.clear_from(s + 1);
    }
    return shrunk(domains, op);
  }
  bool any = false;
  for (Slot s = domains.lo[at(op)]; s >= 0; s = starts.next(s + 1)) {
    if (fn(s) <= most) continue;
    starts.reset(s);
    any = true;
  }
  return !any || shrunk(domains, op);
}

bool Propagator::keep_at_least(Domains& domains, int op, int f, Slot least) {
  Bits& starts = domains.starts[at(op)];
  const Fn& fn = model_.fn[at(f)];
  if (domains.empty(op)) return true;
  if (fn.rising) {
    if (fn(domains.lo[at(op)]) >= least) return true;
    if (fn.table == nullptr) {
      starts.clear_before(least - fn.add);
    } else {
      Slot s = domains.lo[at(op)];
      while (s >= 0 && fn(s) < least) s = starts.next(s + 1);
      starts.clear_before(s < 0 ? model_.horizon : s);
    }
    return shrunk(domains, op);
  }
  bool any = false;
  for (Slot s = domains.lo[at(op)]; s >= 0; s = starts.next(s + 1)) {
    if (fn(s) >= least) continue;
    starts.reset(s);
    any = true;
  }
  return !any || shrunk(domains, op);
}

bool Propagator::shrunk(Domains& domains, int op) {
  const Bits& starts = domains.starts[at(op)];
  const Slot lo = starts.next(domains.lo[at(op)]);
  if (lo < 0) {
    const bool was_empty = domains.empty(op);
    domains.lo[at(op)] = model_.horizon;
    domains.hi[at(op)] = -1;
    const Op& o = model_.ops[at(op)];
    const Truth active = domains.holds(o.cond);
    if (active == Truth::yes) return false;
    return was_empty || active == Truth::no || wiped(domains, o.when);
  }
  domains.lo[at(op)] = lo;
  domains.hi[at(op)] = starts.previous(domains.hi[at(op)]);
  queue(op);
  return true;
}

bool Propagator::wiped(Domains& domains, Option when) {
  return when.group >= 0 && drop_option(domains, when.group, when.option);
}

bool Propagator::drop_option(Domains& domains, int group, int option) {
  const std::uint32_t bit = 1U << static_cast<unsigned>(option);
  if ((domains.options[at(group)] & bit) == 0) return true;
  if (domains.choice[at(group)] == option) return false;
  domains.options[at(group)] &= ~bit;
  return update_group(domains, group);
}

bool Propagator::update_group(Domains& domains, int group) {
  const std::size_t g = at(group);
  const Truth exists = domains.holds(model_.group_cond[g]);
  const int count = std::popcount(domains.options[g]);
  if (exists == Truth::no) {
    if (domains.choice[g] == absent_choice) return true;
    domains.choice[g] = absent_choice;
  } else if (count == 0) {
    return exists == Truth::maybe && wiped(domains, model_.problem->groups[g].when);
  } else if (exists == Truth::yes && count == 1 && domains.choice[g] == open_choice) {
    domains.choice[g] = std::countr_zero(domains.options[g]);
    for (std::size_t i = 0; i < model_.ops.size(); ++i) {
      const int op = static_cast<int>(i);
      if (domains.empty(op) && domains.holds(model_.ops[i].cond) == Truth::yes) return false;
    }
  }
  // Children follow their parent; one may exist only now.
  for (std::size_t child = g + 1; child < model_.group_cond.size(); ++child) {
    if (model_.problem->groups[child].when.group != group) continue;
    if (!update_group(domains, static_cast<int>(child))) return false;
  }
  queue_all();
  return true;
}

void Propagator::queue_all() {
  for (std::size_t op = 0; op < model_.ops.size(); ++op) queue(static_cast<int>(op));
}

void Propagator::queue(int op) {
  if (is_dirty_[at(op)]) return;
  is_dirty_[at(op)] = true;
  dirty_.push_back(op);
}

std::vector<int> settled_choices(const Model& model, const Domains& domains) {
  std::vector<int> choices;
  for (std::size_t g = 0; g < domains.choice.size(); ++g) {
    const Option when = model.problem->groups[g].when;
    int choice = domains.choice[g];
    if (when.group >= 0 && choices[at(when.group)] != when.option) choice = absent_choice;
    if (choice == open_choice) choice = std::countr_zero(domains.options[g]);
    choices.push_back(choice == absent_choice ? -1 : choice);
  }
  return choices;
}

Slot Propagator::least(const Domains& domains, int op, int f) const {
  const Fn& fn = model_.fn[at(f)];
  if (fn.rising) return fn(domains.lo[at(op)]);
  const Bits& starts = domains.starts[at(op)];
  Slot best = std::numeric_limits<Slot>::max();
  for (Slot s = domains.lo[at(op)]; s >= 0; s = starts.next(s + 1)) best = std::min(best, fn(s));
  return best;
}

Slot Propagator::greatest(const Domains& domains, int op, int f) const {
  const Fn& fn = model_.fn[at(f)];
  if (fn.rising) return fn(domains.hi[at(op)]);
  const Bits& starts = domains.starts[at(op)];
  Slot best = std::numeric_limits<Slot>::min();
  for (Slot s = domains.lo[at(op)]; s >= 0; s = starts.next(s + 1)) best = std::max(best, fn(s));
  return best;
}

}  // namespace wetout::search
