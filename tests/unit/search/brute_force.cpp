#include "brute_force.hpp"

#include <algorithm>
#include <set>

namespace wetout::search::test {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

class Enumerator {
 public:
  Enumerator(const Problem& p, const Objective& o) : p_(p), o_(o) {
    now_.start.resize(p.ops.size());
    now_.choice.assign(p.groups.size(), -1);
    length_ = 4 * p.horizon;
    used_.resize(p.resources.size() * u(length_));
    modes_.resize(u(length_));  // one room
  }

  std::optional<Best> run() {
    choose(0);
    return best_;
  }

 private:
  bool on(Option when) const { return when.group < 0 || now_.choice[u(when.group)] == when.option; }
  bool placed(int op) const { return now_.start[u(op)].has_value(); }
  static Slot look(const Map& map, Slot s) {
    return map.index() == 0 ? s + std::get<0>(map) : std::get<1>(map).at[u(s)];
  }
  Slot time(EventRef e) const {
    const Slot s = *now_.start[u(e.op)];
    if (e.event == at_start) return s;
    return look(
        e.event == at_end ? p_.ops[u(e.op)].attended : p_.ops[u(e.op)].events[u(e.event)].at, s);
  }

  void choose(std::size_t g) {
    if (g == p_.groups.size()) return place(0);
    if (!on(p_.groups[g].when)) {
      now_.choice[g] = -1;
      return choose(g + 1);
    }
    for (int o = 0; o < p_.groups[g].options; ++o) {
      now_.choice[g] = o;
      choose(g + 1);
    }
    now_.choice[g] = -1;
  }

  void place(std::size_t i) {
    if (i == p_.ops.size()) return leaf();
    if (!on(p_.ops[i].when)) {
      now_.start[i].reset();
      return place(i + 1);
    }
    for (Slot s = 0; s < p_.horizon; ++s) {
      now_.start[i] = s;
      if (alone(i) && together(static_cast<int>(i)) && places()) place(i + 1);
    }
    now_.start[i].reset();
  }

  bool alone(std::size_t i) const {
    const Operation& op = p_.ops[i];
    const Slot s = *now_.start[i];
    if (op.allowed.size() > 0 && !op.allowed.test(s)) return false;
    return op.calendar < 0 || working(op.calendar, s, std::max(s + 1, look(op.attended, s)));
  }

  bool working(int calendar, Slot from, Slot to) const {
    for (const auto& [a, b] : p_.calendars[u(calendar)].spans) {
      if (a <= from && to <= b) return true;
    }
    return false;
  }

  /// The rules between `op` and those placed before it.
  bool together(int op) const {
    for (const Lag& lag : p_.lags) {
      if (lag.from.op != op && lag.to.op != op) continue;
      if (!placed(lag.from.op) || !placed(lag.to.op) || !on(lag.when)) continue;
      const auto bound = [&](const Map& m) {
        return m.index() == 0 ? time(lag.from) + std::get<0>(m)
                              : std::get<1>(m).at[u(*now_.start[u(lag.from.op)])];
      };
      if (lag.min && time(lag.to) < bound(*lag.min)) return false;
      if (lag.max && time(lag.to) > bound(*lag.max)) return false;
    }
    for (const Relation& r : p_.relations) {
      if ((r.a == op || r.b == op) && placed(r.a) && placed(r.b) && on(r.when) &&
          !r.allowed(*now_.start[u(r.a)]).test(*now_.start[u(r.b)])) {
        return false;
      }
    }
    return true;
  }

  /// Slot by slot: how much of each resource is held, which modes each room is in.
  bool places() {
    std::fill(used_.begin(), used_.end(), 0);
    std::fill(modes_.begin(), modes_.end(), 0U);
    for (const Hold& h : p_.holds) {
      if (!placed(h.from.op) || !placed(h.to.op) || !on(h.when) || h.amount == 0) continue;
      const Slot from = time(h.from);
      const Slot to = time(h.to);
      if (to <= from) continue;
      const Resource& r = p_.resources[u(h.resource)];
      if (r.calendar >= 0 && !working(r.calendar, from, to)) return false;
      for (Slot s = from; s < to; ++s) {
        if ((used_[u(h.resource * length_ + s)] += h.amount) > r.count) return false;
      }
    }
    for (const RoomMode& m : p_.modes) {
      if (!placed(m.from.op) || !placed(m.to.op) || !on(m.when)) continue;
      for (Slot s = time(m.from); s < time(m.to) + m.after; ++s) {
        auto& seen = modes_[u(m.room * length_ + s)];
        seen |= 1U << static_cast<unsigned>(m.mode);
        if ((seen & (seen - 1)) != 0) return false;
      }
    }
    return true;
  }

  void leaf() {
    Value value;
    for (const Term& term : o_.terms) std::visit([&](const auto& t) { add(t, value); }, term);
    if (!best_ || value < best_->value) best_ = Best{now_, value};
  }

  std::vector<std::vector<int>> sets(std::vector<std::vector<int>> given) const {
    if (!given.empty()) return given;
    given.emplace_back();
    for (int i = 0; u(i) < p_.ops.size(); ++i) given.back().push_back(i);
    return given;
  }

  void add(const LastEnd& t, Value& value) const {
    std::int64_t sum = 0;
    for (const auto& set : sets(t.sets)) {
      Slot last = 0;
      for (const int op : set) {
        if (!placed(op)) continue;
        const Slot end = time({op, at_end});
        Slot key = end;
        if (t.calendar >= 0) {
          key = 0;
          for (const auto& [a, b] : p_.calendars[u(t.calendar)].spans) {
            if (a < end || a == *now_.start[u(op)]) key = a;
          }
        }
        last = std::max(last, key);
      }
      sum += last;
    }
    value.push_back(sum);
  }

  void add(const TightCounts& t, Value& value) const {
    Value counts(u(t.levels), 0);
    for (std::size_t i = 0; i < p_.ops.size(); ++i) {
      if (!now_.start[i]) continue;
      for (const auto& item : p_.ops[i].tightness) {
        if (item.level[u(*now_.start[i])] < t.levels) ++counts[item.level[u(*now_.start[i])]];
      }
    }
    for (const Lag& lag : p_.lags) {
      if (lag.scale == 0 || !lag.max || !on(lag.when)) continue;
      if (!placed(lag.from.op) || !placed(lag.to.op)) continue;
      const Slot until = lag.max->index() == 0
                             ? time(lag.from) + std::get<0>(*lag.max)
                             : std::get<1>(*lag.max).at[u(*now_.start[u(lag.from.op)])];
      const int level = (until - time(lag.to)) * t.per_scale / lag.scale;
      if (level < t.levels) ++counts[u(level)];
    }
    value.insert(value.end(), counts.begin(), counts.end());
  }

  void add(const Visits& t, Value& value) const {
    std::int64_t sum = 0;
    for (const auto& set : sets(t.sets)) {
      std::set<std::pair<Slot, Slot>> work;
      for (const int op : set) {
        if (placed(op)) work.insert({*now_.start[u(op)], time({op, at_end})});
      }
      if (work.empty()) continue;
      ++sum;
      Slot until = work.begin()->first;
      for (const auto& [from, to] : work) {
        if (from - until >= t.gap) ++sum;
        until = std::max(until, to);
      }
    }
    value.push_back(sum);
  }

  void add(const Sum& t, Value& value) const {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < p_.ops.size(); ++i) {
      if (!now_.start[i]) continue;
      sum += t.cost.empty() ? *now_.start[i] : look(t.cost[i], *now_.start[i]);
    }
    value.push_back(sum);
  }

  void add(const Starts& /*t*/, Value& value) const {
    std::set<std::pair<std::string, int>> ids;
    for (int i = 0; u(i) < p_.ops.size(); ++i) ids.insert({p_.ops[u(i)].id, i});
    for (const auto& [id, i] : ids) value.push_back(placed(i) ? *now_.start[u(i)] : -1);
  }

  void add(const Choices& /*t*/, Value& value) const {
    for (const int c : now_.choice) value.push_back(c);
  }

  const Problem& p_;
  const Objective& o_;
  Schedule now_;
  Slot length_ = 0;
  std::vector<int> used_;
  std::vector<unsigned> modes_;
  std::optional<Best> best_;
};

}  // namespace

std::optional<Best> brute_force(const Problem& problem, const Objective& objective) {
  return Enumerator(problem, objective).run();
}

}  // namespace wetout::search::test
