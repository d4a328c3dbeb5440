#include "span_bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "model.hpp"
#include "span_ways.hpp"

namespace wetout::search {
namespace {

constexpr int most_rounds = 800;
/// Rounds without a better bound after which the prices move half as far.
constexpr int patience = 25;
constexpr double smallest_step = 1e-3;
constexpr double infinite = std::numeric_limits<double>::infinity();

/// Every set of the term within one part, one set per part at most.
bool follows_parts(const LastEnd& term, const std::vector<std::vector<int>>& parts) {
  std::map<int, std::size_t> part_of;
  for (std::size_t p = 0; p < parts.size(); ++p) {
    for (const int op : parts[p]) part_of[op] = p;
  }
  std::vector<bool> used(parts.size(), false);
  for (const auto& set : term.sets) {
    if (set.empty()) continue;
    const std::size_t part = part_of[set.front()];
    if (used[part]) return false;
    used[part] = true;
    for (const int op : set) {
      if (part_of[op] != part) return false;
    }
  }
  return !term.sets.empty();
}

/// Resources that all their holders together want more of than there is.
std::vector<bool> short_places(const Problem& problem) {
  std::vector<int> wanted(problem.resources.size(), 0);
  std::vector<bool> lasting(problem.resources.size(), false);
  for (const Hold& hold : problem.holds) {
    wanted[at(hold.resource)] += hold.amount;
    // What is kept while attended only is people: seldom short, and not seen by spans.
    if (hold.to.event != at_end) lasting[at(hold.resource)] = true;
  }
  std::vector<bool> out;
  for (std::size_t r = 0; r < wanted.size(); ++r) {
    out.push_back(lasting[r] && wanted[r] > problem.resources[r].count);
  }
  int rooms = 0;
  for (const RoomMode& mode : problem.modes) rooms = std::max(rooms, mode.room + 1);
  out.resize(out.size() + at(rooms), false);
  return out;
}

class Prices {
 public:
  Prices(const Problem& problem, std::vector<Ways> ways, const std::vector<Cell>& cells,
         const SpanBoundInput& input)
      : problem_(problem), ways_(std::move(ways)), input_(input) {
    for (const Cell& cell : cells) {
      ticks_.push_back(cell.first);
      ticks_.push_back(cell.end - 1);
    }
    price_.assign(problem.resources.size(), std::vector<double>(ticks_.size(), 0.0));
    for (const Ways& w : ways_) {
      std::vector<std::vector<std::vector<Range>>> stages;
      for (const Stage& stage : w.stages) {
        std::vector<std::vector<Range>> by_cell;
        for (const auto& sure : stage.sure) by_cell.push_back(ranges(sure));
        stages.push_back(std::move(by_cell));
      }
      ranges_.push_back(std::move(stages));
    }
  }

  std::int64_t best(const std::function<bool()>& stop) {
    double best = -infinite;
    double step = 1.0;
    int idle = 0;
    auto kept = price_;
    for (int round = 0; round < most_rounds && step > smallest_step; ++round) {
      if (stop && stop()) break;
      const double value = evaluate();
      if (value > best + 1e-6) {
        best = value;
        kept = price_;
        idle = 0;
      } else if (++idle >= patience) {
        step /= 2.0;
        idle = 0;
        price_ = kept;
        evaluate();
      }
      move(step, value);
    }
    return static_cast<std::int64_t>(std::ceil(best - 1e-6));
  }

 private:
  struct Range {
    int place;
    int amount;
    std::size_t first;  ///< ticks [first, end)
    std::size_t end;
  };

  std::vector<Range> ranges(const std::vector<Sure>& sure) const {
    std::vector<Range> out;
    for (const Sure& s : sure) {
      const auto first = std::lower_bound(ticks_.begin(), ticks_.end(), s.from);
      const auto end = std::lower_bound(ticks_.begin(), ticks_.end(), s.to);
      if (first < end) {
        out.push_back({s.place, s.amount, static_cast<std::size_t>(first - ticks_.begin()),
                       static_cast<std::size_t>(end - ticks_.begin())});
      }
    }
    return out;
  }

  /// The bound at the present prices; leaves what is wanted in wanted_.
  double evaluate() {
    sums_.assign(price_.size(), std::vector<double>(ticks_.size() + 1, 0.0));
    wanted_.assign(price_.size(), std::vector<double>(ticks_.size(), 0.0));
    double value = 0.0;
    for (std::size_t r = 0; r < price_.size(); ++r) {
      for (std::size_t t = 0; t < ticks_.size(); ++t) {
        sums_[r][t + 1] = sums_[r][t] + price_[r][t];
        value -= price_[r][t] * problem_.resources[r].count;
      }
    }
    for (std::size_t p = 0; p < ways_.size(); ++p) value += cheapest(p);
    return value;
  }

  double cost_of(const std::vector<Range>& ranges) const {
    double cost = 0.0;
    for (const Range& r : ranges) {
      cost += r.amount * (sums_[at(r.place)][r.end] - sums_[at(r.place)][r.first]);
    }
    return cost;
  }

  double cheapest(std::size_t p) {
    const Ways& w = ways_[p];
    const auto least = static_cast<double>(input_.least[p]);
    if (w.stages.empty()) return least;
    const std::size_t cells = w.stages.front().open.size();
    std::vector<std::vector<double>> cost(w.stages.size(), std::vector<double>(cells, infinite));
    std::vector<std::vector<int>> from(w.stages.size(), std::vector<int>(cells, -1));
    for (std::size_t i = 0; i < w.stages.size(); ++i) {
      const Stage& stage = w.stages[i];
      for (std::size_t c = 0; c < cells; ++c) {
        if (!stage.open[c] || (i > 0 && from[i][c] < 0)) continue;
        cost[i][c] = (i > 0 ? cost[i][c] : 0.0) + cost_of(ranges_[p][i][c]);
        if (i + 1 == w.stages.size()) continue;
        for (const int next : stage.next[c]) {
          if (cost[i][c] < cost[i + 1][at(next)]) {
            cost[i + 1][at(next)] = cost[i][c];
            from[i + 1][at(next)] = static_cast<int>(c);
          }
        }
      }
    }
    const std::size_t last = w.stages.size() - 1;
    int best = -1;
    double value = infinite;
    for (std::size_t c = 0; c < cells; ++c) {
      if (!w.stages[last].open[c] || (last > 0 && from[last][c] < 0)) continue;
      const double all = cost[last][c] + std::max(least, static_cast<double>(w.last_end[c]));
      if (all < value) {
        value = all;
        best = static_cast<int>(c);
      }
    }
    for (std::size_t i = last + 1; i-- > 0 && best >= 0;) {
      for (const Range& r : ranges_[p][i][at(best)]) {
        for (std::size_t t = r.first; t < r.end; ++t) wanted_[at(r.place)][t] += r.amount;
      }
      best = from[i][at(best)];
    }
    return value;
  }

  void move(double step, double value) {
    double length = 0.0;
    for (std::size_t r = 0; r < price_.size(); ++r) {
      for (std::size_t t = 0; t < ticks_.size(); ++t) {
        const double over = wanted_[r][t] - problem_.resources[r].count;
        if (over > 0.0 || price_[r][t] > 0.0) length += over * over;
      }
    }
    if (length <= 0.0) return;
    const double aim = std::max(static_cast<double>(input_.known), value * 1.02 + 1.0);
    const double by = step * (aim - value) / length;
    for (std::size_t r = 0; r < price_.size(); ++r) {
      for (std::size_t t = 0; t < ticks_.size(); ++t) {
        const double over = wanted_[r][t] - problem_.resources[r].count;
        price_[r][t] = std::max(0.0, price_[r][t] + by * over);
      }
    }
  }

  const Problem& problem_;
  std::vector<Ways> ways_;
  const SpanBoundInput& input_;
  std::vector<Slot> ticks_;
  std::vector<std::vector<std::vector<std::vector<Range>>>> ranges_;  ///< part, stage, cell
  std::vector<std::vector<double>> price_;                            ///< resource, tick
  std::vector<std::vector<double>> sums_;
  std::vector<std::vector<double>> wanted_;
};

}  // namespace

std::optional<std::int64_t> span_bound(const Problem& problem, const LastEnd& term,
                                       const SpanBoundInput& input,
                                       const std::function<bool()>& stop) {
  if (!follows_parts(term, input.parts)) return std::nullopt;
  const std::vector<bool> places = short_places(problem);
  const std::vector<Cell> cells = make_cells(problem);
  const Objective objective{{term}};
  std::vector<Ways> ways;
  for (const auto& part : input.parts) {
    ways.push_back(make_ways(compile(problem, objective, part, {}), cells, places, stop));
  }
  return Prices(problem, std::move(ways), cells, input).best(stop);
}

}  // namespace wetout::search
