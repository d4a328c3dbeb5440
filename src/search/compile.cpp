#include <algorithm>
#include <map>
#include <numeric>

#include "compile_goal.hpp"
#include "model.hpp"
#include "occupancy.hpp"
#include "wetout/base/check.hpp"

namespace wetout::search {
namespace {

constexpr Slot largest = Slot{1} << 29;

Cond join(const Cond& a, const Cond& b) {
  Cond both = a;
  for (const Option& option : b) {
    if (std::find(both.begin(), both.end(), option) == both.end()) both.push_back(option);
  }
  return both;
}

Cond without(const Cond& cond, const Cond& known) {
  Cond rest;
  for (const Option& option : cond) {
    if (std::find(known.begin(), known.end(), option) == known.end()) rest.push_back(option);
  }
  return rest;
}

bool contradicts(const Cond& cond) {
  return std::any_of(cond.begin(), cond.end(), [&](const Option& a) {
    return std::any_of(cond.begin(), cond.end(),
                       [&](const Option& b) { return a.group == b.group && a.option != b.option; });
  });
}

class Compiler {
 public:
  Compiler(const Problem& problem, const std::vector<int>& subset, const std::vector<Taken>& taken)
      : problem_(problem), occupancy_(problem, taken), local_(problem.ops.size(), -1) {
    model_.problem = &problem;
    model_.horizon = problem.horizon;
    for (const int id : subset) {
      local_[at(id)] = static_cast<int>(model_.ops.size());
      model_.ops.emplace_back();
      model_.ops.back().id = id;
    }
  }

  Model run(const Objective& objective) {
    places();
    for (int i = 0; i < size(); ++i) operation(i);
    for (const Lag& lag : problem_.lags) add(lag);
    for (const Relation& relation : problem_.relations) add(relation);
    for (const Hold& hold : problem_.holds) {
      if (hold.amount > 0) use(hold.resource, hold.amount, hold.from, hold.to, 0, hold.when);
    }
    for (const RoomMode& mode : problem_.modes) {
      use(place_of_room(problem_, mode.room), mode.mode, mode.from, mode.to, mode.after, mode.when);
    }
    groups();
    compile_goal(problem_, objective, local_, model_);
    return std::move(model_);
  }

 private:
  int size() const { return static_cast<int>(model_.ops.size()); }
  bool here(EventRef a, EventRef b) const { return local_[at(a.op)] >= 0 && local_[at(b.op)] >= 0; }

  void places() {
    for (const Resource& resource : problem_.resources) {
      model_.places.push_back({false, resource.count});
    }
    for (const RoomMode& mode : problem_.modes) {
      const auto place = at(place_of_room(problem_, mode.room));
      if (model_.places.size() <= place) model_.places.resize(place + 1, {true, 0});
    }
  }

  void operation(int i) {
    Op& op = model_.ops[at(i)];
    const Operation& given = problem_.ops[at(op.id)];
    op.domain = given.allowed.size() == 0 ? Bits(problem_.horizon, true) : given.allowed;
    op.when = given.when;
    op.cond = closure(problem_, given.when);
    for (const Tightness& item : given.tightness) op.tightness.push_back(item.level.data());
    op.end = function({op.id, at_end}, 0);
    if (given.calendar < 0) return;
    const auto& spans = problem_.calendars[at(given.calendar)].spans;
    std::size_t span = 0;
    for (Slot s = op.domain.next(0); s >= 0; s = op.domain.next(s + 1)) {
      while (span < spans.size() && spans[span].second <= s) ++span;
      if (span == spans.size() || spans[span].first > s || model_.end(i, s) > spans[span].second) {
        op.domain.reset(s);
      }
    }
  }

  /// The value "time of the event + add", for starts that are allowed.
  int function(EventRef event, Slot add) {
    const Map& map = map_of(problem_, event);
    if (const auto* offset = std::get_if<Slot>(&map)) {
      const Slot all = *offset + add;
      return keep({nullptr, all, true, all, all});
    }
    return table(std::get<Table>(map).at, local_[at(event.op)], add);
  }

  int table(const std::vector<Slot>& values, int op, Slot add = 0) {
    Fn fn = shape(values.data(), op);
    fn.add = add;
    fn.least += add;
    fn.most += add;
    return keep(fn);
  }

  int own(std::vector<Slot> values, int op) {
    model_.own_tables.push_back(std::move(values));
    return table(model_.own_tables.back(), op);
  }

  int keep(const Fn& fn) {
    model_.fn.push_back(fn);
    return static_cast<int>(model_.fn.size()) - 1;
  }

  const Fn& shape(const Slot* table, int op) {
    const auto [entry, fresh] = shapes_.try_emplace(table);
    Fn& fn = entry->second;
    if (!fresh) return fn;
    fn.table = table;
    const Bits& domain = model_.ops[at(op)].domain;
    Slot last = -largest;
    fn.least = largest;
    fn.most = -largest;
    for (Slot s = domain.next(0); s >= 0; s = domain.next(s + 1)) {
      fn.rising = fn.rising && table[s] >= last;
      last = table[s];
      fn.least = std::min(fn.least, last - s);
      fn.most = std::max(fn.most, last - s);
    }
    return fn;
  }

  void arc(int i, int f, int j, int g, Slot scale, Option when) {
    Op& a = model_.ops[at(i)];
    Op& b = model_.ops[at(j)];
    Arc arc{i, f, j, g, scale, join(join(a.cond, b.cond), closure(problem_, when)), {}, {}};
    if (contradicts(arc.cond)) return;
    arc.without_i = without(arc.cond, a.cond);
    arc.without_j = without(arc.cond, b.cond);
    if (i == j && arc.without_i.empty() && scale == 0) {
      for (Slot s = a.domain.next(0); s >= 0; s = a.domain.next(s + 1)) {
        if (model_.time(f, s) > model_.time(g, s)) a.domain.reset(s);
      }
      return;
    }
    const int index = static_cast<int>(model_.arcs.size());
    a.arcs.push_back(index);
    if (i != j) b.arcs.push_back(index);
    model_.arcs.push_back(std::move(arc));
  }

  void add(const Lag& lag) {
    if (!here(lag.from, lag.to)) return;
    const int from = local_[at(lag.from.op)];
    const int to = local_[at(lag.to.op)];
    const auto bound = [&](const Map& map) {
      if (const auto* offset = std::get_if<Slot>(&map)) return function(lag.from, *offset);
      return table(std::get<Table>(map).at, from);
    };
    if (lag.min) arc(from, bound(*lag.min), to, function(lag.to, 0), 0, lag.when);
    if (lag.max) arc(to, function(lag.to, 0), from, bound(*lag.max), lag.scale, lag.when);
  }

  /// Starts of one operation that a condition forbids, as an arc from it to itself.
  void forbid(int op, const Bits& allowed, Option when) {
    std::vector<Slot> forbidden(at(problem_.horizon));
    for (Slot s = 0; s < problem_.horizon; ++s) forbidden[at(s)] = allowed.test(s) ? 0 : 1;
    const int f = own(std::move(forbidden), op);
    arc(op, f, op, own(std::vector<Slot>(at(problem_.horizon), 0), op), 0, when);
  }

  void add(const Relation& relation) {
    if (!here({relation.a}, {relation.b})) return;
    Pairs pairs;
    pairs.a = local_[at(relation.a)];
    pairs.b = local_[at(relation.b)];
    Op& a = model_.ops[at(pairs.a)];
    Op& b = model_.ops[at(pairs.b)];
    if (pairs.a == pairs.b) {
      Bits allowed(problem_.horizon);
      for (Slot s = a.domain.next(0); s >= 0; s = a.domain.next(s + 1)) {
        if (relation.allowed(s).test(s)) allowed.set(s);
      }
      return forbid(pairs.a, allowed, relation.when);
    }
    pairs.cond = join(join(a.cond, b.cond), closure(problem_, relation.when));
    if (contradicts(pairs.cond)) return;
    pairs.without_a = without(pairs.cond, a.cond);
    pairs.without_b = without(pairs.cond, b.cond);
    pairs.of_a.assign(at(problem_.horizon), Bits(problem_.horizon));
    pairs.of_b.assign(at(problem_.horizon), Bits(problem_.horizon));
    for (Slot s = a.domain.next(0); s >= 0; s = a.domain.next(s + 1)) {
      Bits& row = pairs.of_a[at(s)];
      row = relation.allowed(s);
      base::promise(row.size() == problem_.horizon, "search: size of a relation's answer");
      row &= b.domain;
      for (Slot t = row.next(0); t >= 0; t = row.next(t + 1)) pairs.of_b[at(t)].set(s);
    }
    const int index = static_cast<int>(model_.pairs.size());
    a.pairs.push_back(index);
    b.pairs.push_back(index);
    model_.pairs.push_back(std::move(pairs));
  }

  void use(int place, int what, EventRef from, EventRef to, Slot after, Option when) {
    if (!here(from, to)) return;
    Use use;
    use.place = place;
    use.what = what;
    use.a = local_[at(from.op)];
    use.b = local_[at(to.op)];
    Op& a = model_.ops[at(use.a)];
    Op& b = model_.ops[at(use.b)];
    use.cond = join(join(a.cond, b.cond), closure(problem_, when));
    if (contradicts(use.cond)) return;
    use.from = function(from, 0);
    use.to = function(to, after);
    const int index = static_cast<int>(model_.uses.size());
    a.uses.push_back(index);
    if (use.a != use.b) b.uses.push_back(index);
    if (occupancy_.limits(place, what)) leave_to_others(use, when);
    model_.uses.push_back(std::move(use));
  }

  /// Keeps the use out of what others have taken.
  void leave_to_others(const Use& use, Option when) {
    Op& a = model_.ops[at(use.a)];
    if (use.a == use.b && use.cond.size() == a.cond.size()) {
      occupancy_.take_out(a.domain, use.place, use.what, model_.fn[at(use.from)],
                          model_.fn[at(use.to)]);
      return;
    }
    std::vector<Slot> table(at(problem_.horizon), 0);
    for (Slot s = a.domain.next(0); s >= 0; s = a.domain.next(s + 1)) {
      table[at(s)] = occupancy_.free_until(use.place, use.what, model_.time(use.from, s));
    }
    arc(use.b, use.to, use.a, own(std::move(table), use.a), 0, when);
  }

  void groups() {
    model_.group_here.assign(problem_.groups.size(), false);
    for (const Group& group : problem_.groups) {
      model_.group_cond.push_back(closure(problem_, group.when));
    }
    const auto mark = [&](const Cond& cond) {
      for (const Option& option : cond) model_.group_here[at(option.group)] = true;
    };
    for (const Op& op : model_.ops) mark(op.cond);
    for (const Arc& arc : model_.arcs) mark(arc.cond);
    for (const Pairs& pairs : model_.pairs) mark(pairs.cond);
    for (const Use& use : model_.uses) mark(use.cond);
  }

  const Problem& problem_;
  Occupancy occupancy_;
  std::vector<int> local_;
  std::map<const Slot*, Fn> shapes_;
  Model model_;
};

}  // namespace

Cond closure(const Problem& problem, Option when) {
  Cond cond;
  while (when.group >= 0) {
    cond.push_back(when);
    when = problem.groups[at(when.group)].when;
  }
  return cond;
}

int place_of_room(const Problem& problem, int room) {
  return static_cast<int>(problem.resources.size()) + room;
}

Model compile(const Problem& problem, const Objective& objective, const std::vector<int>& subset,
              const std::vector<Taken>& taken) {
  return Compiler(problem, subset, taken).run(objective);
}

Model compile(const Problem& problem, const Objective& objective) {
  std::vector<int> all(problem.ops.size());
  std::iota(all.begin(), all.end(), 0);
  return compile(problem, objective, all, {});
}

}  // namespace wetout::search
