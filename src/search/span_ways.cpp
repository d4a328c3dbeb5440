#include "span_ways.hpp"

#include <algorithm>
#include <limits>
#include <set>

#include "chain_frame.hpp"

namespace wetout::search {
namespace {

constexpr Slot cells_without_calendar = 64;

class WaysMaker {
 public:
  WaysMaker(const Model& model, const std::vector<Cell>& cells,
            const std::vector<bool>& short_places)
      : model_(model), cells_(cells), short_(short_places), propagator_(model) {}

  Ways run(const std::function<bool()>& stop) {
    if (!propagator_.init(root_) || !propagator_.probe(root_)) return {};
    order();
    choose_stages();
    for (std::size_t i = 0; i < ways_.stages.size(); ++i) {
      if (stop && stop()) return {};
      fill(i);
    }
    return std::move(ways_);
  }

 private:
  /// Which operation is before which in every schedule.
  void order() {
    const ChainFrame frame = make_frame(model_, root_);
    const std::size_t count = model_.ops.size();
    before_.assign(count, std::vector<bool>(count, false));
    for (std::size_t op = 0; op < count; ++op) {
      for (const Before& b : frame.before[op]) before_[at(b.first)][op] = true;
    }
    for (std::size_t k = 0; k < count; ++k) {
      for (std::size_t i = 0; i < count; ++i) {
        if (!before_[i][k]) continue;
        for (std::size_t j = 0; j < count; ++j) before_[i][j] = before_[i][j] || before_[k][j];
      }
    }
  }

  void choose_stages() {
    std::vector<int> ops;
    for (std::size_t i = 0; i < model_.ops.size(); ++i) {
      const Op& op = model_.ops[i];
      if (root_.holds(op.cond) != Truth::yes) continue;
      const bool holds = std::any_of(op.uses.begin(), op.uses.end(),
                                     [&](int use) { return relevant(model_.uses[at(use)]); });
      if (holds) ops.push_back(static_cast<int>(i));
    }
    std::stable_sort(ops.begin(), ops.end(),
                     [&](int a, int b) { return root_.lo[at(a)] < root_.lo[at(b)]; });
    for (const int op : ops) {
      if (!ways_.stages.empty() && !before_[at(ways_.stages.back().op)][at(op)]) continue;
      ways_.stages.emplace_back();
      ways_.stages.back().op = op;
    }
  }

  bool relevant(const Use& use) const {
    return use.a == use.b && short_[at(use.place)] && root_.holds(use.cond) == Truth::yes;
  }

  void fill(std::size_t index) {
    Stage& stage = ways_.stages[index];
    const bool last = index + 1 == ways_.stages.size();
    const int next = last ? -1 : ways_.stages[index + 1].op;
    const std::vector<int> groups = groups_between(stage.op, next);
    stage.open.assign(cells_.size(), false);
    stage.next.resize(cells_.size());
    stage.sure.resize(cells_.size());
    if (last) {
      ways_.last_end.assign(cells_.size(), std::numeric_limits<std::int64_t>::max());
    }
    for (std::size_t c = 0; c < cells_.size(); ++c) {
      Domains domains = root_;
      Bits& starts = domains.starts[at(stage.op)];
      starts.clear_before(cells_[c].first);
      starts.clear_from(cells_[c].end);
      if (starts.none() || !propagator_.run(domains, {stage.op})) continue;
      stage.sure[c] = sure(stage.op, domains);
      std::set<int> reached;
      std::int64_t end = std::numeric_limits<std::int64_t>::max();
      each_choice(domains, groups, 0, [&](const Domains& chosen) {
        stage.open[c] = true;
        if (last) {
          end = std::min(end, least_last_end(chosen));
        } else {
          reach(chosen.starts[at(next)], reached);
        }
      });
      stage.next[c].assign(reached.begin(), reached.end());
      if (last) ways_.last_end[c] = end;
    }
  }

  /// Groups with something in force from `from` to `to` (-1: to the end).
  std::vector<int> groups_between(int from, int to) const {
    const auto inside = [&](int op) {
      return op == from || op == to ||
             (before_[at(from)][at(op)] && (to < 0 || before_[at(op)][at(to)]));
    };
    std::set<int> groups;
    const auto add = [&](const Cond& cond) {
      for (const Option& option : cond) groups.insert(option.group);
    };
    for (std::size_t op = 0; op < model_.ops.size(); ++op) {
      if (inside(static_cast<int>(op))) add(model_.ops[op].cond);
    }
    for (const Arc& arc : model_.arcs) {
      if (inside(arc.i) && inside(arc.j)) add(arc.cond);
    }
    return {groups.begin(), groups.end()};
  }

  template <class Use>
  void each_choice(const Domains& domains, const std::vector<int>& groups, std::size_t next,
                   const Use& use) {
    for (; next < groups.size(); ++next) {
      const auto g = at(groups[next]);
      if (domains.choice[g] != open_choice) continue;
      if (domains.holds(model_.group_cond[g]) != Truth::yes) continue;
      for (int o = 0; o < model_.problem->groups[g].options; ++o) {
        if ((domains.options[g] >> static_cast<unsigned>(o) & 1U) == 0) continue;
        Domains chosen = domains;
        if (propagator_.choose(chosen, groups[next], o)) {
          each_choice(chosen, groups, next + 1, use);
        }
      }
      return;
    }
    use(domains);
  }

  void reach(const Bits& starts, std::set<int>& cells) const {
    for (std::size_t c = 0; c < cells_.size(); ++c) {
      const Slot s = starts.next(cells_[c].first);
      if (s >= 0 && s < cells_[c].end) cells.insert(static_cast<int>(c));
    }
  }

  std::int64_t least_last_end(const Domains& domains) const {
    std::int64_t last = 0;
    for (std::size_t i = 0; i < model_.ops.size(); ++i) {
      const Op& op = model_.ops[i];
      if (op.end_set < 0 || domains.holds(op.cond) != Truth::yes) continue;
      const int index = static_cast<int>(i);
      std::int64_t least = model_.key(index, domains.lo[i]);
      if (!model_.fn[at(op.end)].rising) {
        const Bits& starts = domains.starts[i];
        for (Slot s = starts.next(0); s >= 0; s = starts.next(s + 1)) {
          least = std::min(least, model_.key(index, s));
        }
      }
      last = std::max(last, least);
    }
    return last;
  }

  std::vector<Sure> sure(int op, const Domains& domains) const {
    std::vector<Sure> out;
    for (const int u : model_.ops[at(op)].uses) {
      const Use& use = model_.uses[at(u)];
      if (!relevant(use)) continue;
      const Slot from = propagator_.greatest(domains, op, use.from);
      const Slot to = propagator_.least(domains, op, use.to);
      if (from < to) out.push_back({use.place, use.what, from, to});
    }
    return out;
  }

  const Model& model_;
  const std::vector<Cell>& cells_;
  const std::vector<bool>& short_;
  Propagator propagator_;
  Domains root_;
  std::vector<std::vector<bool>> before_;
  Ways ways_;
};

}  // namespace

std::vector<Cell> make_cells(const Problem& problem) {
  std::vector<Cell> cells;
  const int calendar = problem.ops.empty() ? -1 : problem.ops.front().calendar;
  const bool shared =
      calendar >= 0 && std::all_of(problem.ops.begin(), problem.ops.end(),
                                   [&](const Operation& op) { return op.calendar == calendar; });
  if (shared) {
    for (const auto& [first, end] : problem.calendars[at(calendar)].spans) {
      // Whole spans: pieces of an hour gave the same bounds at four times the work.
      if (first < problem.horizon) cells.push_back({first, std::min(end, problem.horizon)});
    }
    return cells;
  }
  const Slot width = std::max(Slot{1}, problem.horizon / cells_without_calendar);
  for (Slot first = 0; first < problem.horizon; first += width) {
    cells.push_back({first, std::min(first + width, problem.horizon)});
  }
  return cells;
}

Ways make_ways(const Model& model, const std::vector<Cell>& cells,
               const std::vector<bool>& short_places, const std::function<bool()>& stop) {
  return WaysMaker(model, cells, short_places).run(stop);
}

}  // namespace wetout::search
