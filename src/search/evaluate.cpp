#include <algorithm>
#include <numeric>

#include "times.hpp"
#include "wetout/search/objective.hpp"

namespace wetout::search {
namespace {

class Evaluator {
 public:
  Evaluator(const Problem& problem, const Schedule& schedule)
      : problem_(problem), schedule_(schedule) {}

  void add(const LastEnd& term, Value& value) const {
    std::int64_t sum = 0;
    for_sets(term.sets, [&](const std::vector<int>& set) {
      std::int64_t last = 0;
      for (const int op : set) {
        const Slot start = start_of(op);
        last = std::max<std::int64_t>(
            last, end_key(problem_, term.calendar, start, time_of(problem_, {op, at_end}, start)));
      }
      sum += last;
    });
    value.push_back(sum);
  }

  void add(const TightCounts& term, Value& value) const {
    Value counts(at(term.levels), 0);
    const auto count = [&](int level) {
      if (level < term.levels) ++counts[at(level)];
    };
    for (std::size_t op = 0; op < problem_.ops.size(); ++op) {
      if (!schedule_.start[op]) continue;
      for (const Tightness& item : problem_.ops[op].tightness) {
        count(item.level[at(*schedule_.start[op])]);
      }
    }
    for (const Lag& lag : problem_.lags) {
      if (lag.scale <= 0 || !lag.max || !taken(lag.from) || !taken(lag.to)) continue;
      if (!chosen(schedule_, lag.when)) continue;
      const Slot from = start_of(lag.from.op);
      const Slot until = std::holds_alternative<Slot>(*lag.max)
                             ? time_of(problem_, lag.from, from) + std::get<Slot>(*lag.max)
                             : search::value(*lag.max, from);
      const Slot left = until - time_of(problem_, lag.to, start_of(lag.to.op));
      count(level_of(left, lag.scale, term.per_scale));
    }
    value.insert(value.end(), counts.begin(), counts.end());
  }

  void add(const Visits& term, Value& value) const {
    std::int64_t sum = 0;
    for_sets(term.sets, [&](std::vector<int> set) {
      if (set.empty()) return;
      std::sort(set.begin(), set.end(), [&](int a, int b) { return start_of(a) < start_of(b); });
      Slot until = start_of(set.front());
      ++sum;
      for (const int op : set) {
        const Slot start = start_of(op);
        if (start - until >= term.gap) ++sum;
        until = std::max(until, time_of(problem_, {op, at_end}, start));
      }
    });
    value.push_back(sum);
  }

  void add(const Sum& term, Value& value) const {
    std::int64_t sum = 0;
    for (std::size_t op = 0; op < problem_.ops.size(); ++op) {
      if (!schedule_.start[op]) continue;
      const Slot start = *schedule_.start[op];
      sum += term.cost.empty() ? start : search::value(term.cost[op], start);
    }
    value.push_back(sum);
  }

  void add(const Starts& /*term*/, Value& value) const {
    for (const int op : by_id(problem_)) {
      value.push_back(schedule_.start[at(op)].value_or(-1));
    }
  }

  void add(const Choices& /*term*/, Value& value) const {
    value.insert(value.end(), schedule_.choice.begin(), schedule_.choice.end());
  }

 private:
  [[nodiscard]] Slot start_of(int op) const { return *schedule_.start[at(op)]; }
  [[nodiscard]] bool taken(EventRef ref) const { return schedule_.start[at(ref.op)].has_value(); }

  /// Calls `use` with the operations of each set that take place.
  template <class Use>
  void for_sets(const std::vector<std::vector<int>>& sets, Use use) const {
    const auto with = [&](const std::vector<int>& set) {
      std::vector<int> active;
      for (const int op : set) {
        if (schedule_.start[at(op)]) active.push_back(op);
      }
      use(active);
    };
    if (sets.empty()) {
      std::vector<int> all(problem_.ops.size());
      std::iota(all.begin(), all.end(), 0);
      with(all);
    }
    for (const auto& set : sets) with(set);
  }

  const Problem& problem_;
  const Schedule& schedule_;
};

}  // namespace

std::vector<int> by_id(const Problem& problem) {
  std::vector<int> order(problem.ops.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return problem.ops[at(a)].id < problem.ops[at(b)].id; });
  return order;
}

Value evaluate(const Problem& problem, const Objective& objective, const Schedule& schedule) {
  const Evaluator evaluator(problem, schedule);
  Value value;
  for (const Term& term : objective.terms) {
    std::visit([&](const auto& t) { evaluator.add(t, value); }, term);
  }
  return value;
}

}  // namespace wetout::search
