#include "random_problem.hpp"

#include <algorithm>
#include <string>

namespace wetout::search::test {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

class Maker {
 public:
  Maker(Random& random, const Shape& shape) : r_(random), shape_(shape) {}

  Problem make() {
    p_.horizon = shape_.horizon;
    groups();
    calendars();
    for (int i = 0; i < shape_.ops; ++i) operation(i);
    lags();
    if (!shape_.plain) relations();
    resources();
    modes();
    return std::move(p_);
  }

 private:
  void groups() {
    const int count = r_.between(0, 2);
    for (int g = 0; g < count; ++g) {
      Group group{"g" + std::to_string(g), r_.between(2, 3), {}};
      if (g > 0 && r_.chance(40)) group.when = {0, r_.between(0, p_.groups[0].options - 1)};
      p_.groups.push_back(group);
    }
  }

  Option sometimes(int percent) {
    if (p_.groups.empty() || !r_.chance(percent)) return {};
    const int g = r_.between(0, static_cast<int>(p_.groups.size()) - 1);
    return {g, r_.between(0, p_.groups[u(g)].options - 1)};
  }

  void calendars() {
    Calendar calendar;
    for (Slot s = r_.between(0, 2); s < shape_.horizon + 4;) {
      const Slot end = s + r_.between(3, 7);
      calendar.spans.emplace_back(s, end);
      s = end + r_.between(1, 3);
    }
    p_.calendars.push_back(calendar);
  }

  /// `base` after the start, or a table around it.
  Map map(int base, int spread, bool not_before) {
    if (r_.chance(40)) return Slot{base};
    Table table;
    for (Slot s = 0; s < shape_.horizon; ++s) {
      const Slot value = s + base + r_.between(-spread, spread);
      table.at.push_back(not_before ? std::max(value, s + std::min(base, 1)) : value);
    }
    return table;
  }

  void operation(int i) {
    Operation op;
    op.id = std::string(1, static_cast<char>('a' + (i * 7 + 3) % 11)) + std::to_string(i);
    op.attended = map(r_.between(1, 2), 1, true);
    if (!shape_.chain && r_.chance(15)) op.attended = Slot{0};
    op.when = sometimes(35);
    if (r_.chance(40)) op.calendar = 0;
    if (r_.chance(50)) {
      op.allowed = Bits(shape_.horizon);
      for (Slot s = 0; s < shape_.horizon; ++s) {
        if (r_.chance(75)) op.allowed.set(s);
      }
    }
    const int events = r_.between(0, 2);
    for (int e = 0; e < events; ++e) {
      op.events.push_back({"e" + std::to_string(e), map(r_.between(1, 5), 2, true)});
    }
    if (r_.chance(40)) {
      Tightness item;
      for (Slot s = 0; s < shape_.horizon; ++s) {
        item.level.push_back(static_cast<std::uint8_t>(r_.between(0, 7)));
      }
      op.tightness.push_back(item);
    }
    p_.ops.push_back(std::move(op));
  }

  EventRef event(int op) {
    const int count = static_cast<int>(p_.ops[u(op)].events.size());
    const int e = r_.between(-2, count - 1);
    return {op, e};
  }

  void lags() {
    const int count = r_.between(2, shape_.ops + 1);
    for (int k = 0; k < count; ++k) {
      int a = r_.between(0, shape_.ops - 1);
      int b = r_.between(0, shape_.ops - 1);
      if (a == b && r_.chance(90)) continue;
      if (r_.chance(80) && a > b) std::swap(a, b);
      Lag lag;
      lag.from = event(a);
      lag.to = event(b);
      if (r_.chance(65)) lag.min = map(r_.between(-1, 3), 1, false);
      if (!lag.min || r_.chance(45)) lag.max = map(r_.between(2, 8), 2, false);
      if (lag.max && r_.chance(50)) lag.scale = r_.between(2, 9);
      lag.when = sometimes(35);
      p_.lags.push_back(std::move(lag));
    }
  }

  void relations() {
    if (!r_.chance(35) || shape_.ops < 2) return;
    Relation relation;
    relation.a = r_.between(0, shape_.ops - 2);
    relation.b = relation.a + 1;
    const std::uint64_t seed = r_.next();
    const Slot horizon = shape_.horizon;
    relation.allowed = [seed, horizon](Slot s) {
      Random row(seed + static_cast<std::uint64_t>(s));
      Bits bits(horizon);
      for (Slot t = 0; t < horizon; ++t) {
        if (row.chance(70)) bits.set(t);
      }
      return bits;
    };
    relation.when = sometimes(30);
    p_.relations.push_back(relation);
  }

  void resources() {
    if (shape_.chain) {
      p_.resources.push_back({"person", 1, -1});
      for (int i = 0; i < shape_.ops; ++i) {
        p_.holds.push_back({0, 1, {i, at_start}, {i, at_end}, {}});
      }
    }
    const int first = static_cast<int>(p_.resources.size());
    const int count = r_.between(shape_.chain ? 0 : 1, 2);
    for (int k = 0; k < count; ++k) {
      p_.resources.push_back(
          {"r" + std::to_string(k), r_.between(1, 2), !shape_.plain && r_.chance(20) ? 0 : -1});
      const int holds = r_.between(2, 4);
      for (int h = 0; h < holds; ++h) {
        const int a = r_.between(0, shape_.ops - 1);
        const int b = shape_.plain || r_.chance(60) ? a : r_.between(0, shape_.ops - 1);
        p_.holds.push_back({first + k, r_.between(1, 2), event(a), event(b), sometimes(20)});
      }
    }
  }

  void modes() {
    if (!r_.chance(50)) return;
    const int count = r_.between(2, 4);
    for (int k = 0; k < count; ++k) {
      const int a = r_.between(0, shape_.ops - 1);
      const int b = shape_.plain || r_.chance(70) ? a : r_.between(0, shape_.ops - 1);
      p_.modes.push_back(
          {0, r_.between(0, 1), event(a), event(b), r_.between(0, 2), sometimes(20)});
    }
  }

  Random& r_;
  Shape shape_;
  Problem p_;
};

}  // namespace

Problem random_problem(Random& random, const Shape& shape) { return Maker(random, shape).make(); }

Problem random_pair(Random& random, const Shape& shape) {
  Problem all = random_problem(random, shape);
  Problem other = random_problem(random, shape);
  const int ops = static_cast<int>(all.ops.size());
  const int groups = static_cast<int>(all.groups.size());
  const int resources = static_cast<int>(all.resources.size());
  const auto move = [&](Option& when) {
    if (when.group >= 0) when.group += groups;
  };
  for (Operation& op : other.ops) {
    op.id += "'";
    move(op.when);
    if (op.calendar >= 0) op.calendar = 1;
    all.ops.push_back(std::move(op));
  }
  for (Group& group : other.groups) {
    move(group.when);
    all.groups.push_back(std::move(group));
  }
  for (Resource& resource : other.resources) {
    if (resource.calendar >= 0) resource.calendar = 1;
    all.resources.push_back(std::move(resource));
  }
  all.calendars.push_back(std::move(other.calendars[0]));
  const auto shift = [&](auto& item) {
    item.from.op += ops;
    item.to.op += ops;
    move(item.when);
  };
  for (Lag& lag : other.lags) {
    shift(lag);
    all.lags.push_back(std::move(lag));
  }
  for (Relation& relation : other.relations) {
    relation.a += ops;
    relation.b += ops;
    move(relation.when);
    all.relations.push_back(std::move(relation));
  }
  for (Hold& hold : other.holds) {
    shift(hold);
    hold.resource += resources;
    all.holds.push_back(std::move(hold));
  }
  for (RoomMode& mode : other.modes) {
    shift(mode);
    all.modes.push_back(std::move(mode));
  }
  all.resources.push_back({"shared", 1, -1});
  const int shared = static_cast<int>(all.resources.size()) - 1;
  for (const int op : {0, 1, ops, ops + 1}) {
    const int events = static_cast<int>(all.ops[u(op)].events.size());
    all.holds.push_back({shared, 1, {op, at_start}, {op, events > 0 ? 0 : at_end}, {}});
  }
  return all;
}

Objective random_objective(Random& random, const Problem& problem, bool complete) {
  std::vector<Term> terms;
  if (random.chance(80)) terms.emplace_back(LastEnd{{}, random.chance(50) ? 0 : -1});
  if (random.chance(60)) terms.emplace_back(TightCounts{random.between(2, 5), 10});
  if (random.chance(60)) terms.emplace_back(Visits{random.between(1, 3), {}});
  if (random.chance(60)) {
    Sum sum;
    if (random.chance(50)) {
      for (std::size_t i = 0; i < problem.ops.size(); ++i) {
        Table table;
        for (Slot s = 0; s < problem.horizon; ++s) table.at.push_back(random.between(-5, 20));
        sum.cost.emplace_back(std::move(table));
      }
    }
    terms.emplace_back(std::move(sum));
  }
  if (random.chance(50)) {
    for (std::size_t k = terms.size(); k > 1; --k) {
      std::swap(terms[k - 1], terms[u(random.between(0, static_cast<int>(k) - 1))]);
    }
  }
  if (complete) {
    terms.emplace_back(Starts{});
    terms.emplace_back(Choices{});
  }
  return {std::move(terms)};
}

}  // namespace wetout::search::test
