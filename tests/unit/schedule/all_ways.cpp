#include "all_ways.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace wetout::schedule::sample {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

class AllWays {
 public:
  explicit AllWays(const Setting& setting) : s_(setting), rules_(setting) {
    now_.start.assign(s_.boards[0].steps.steps.size(), -1);
    now_.chosen = rules_.decided(0);
    for (int i = 0; u(i) < now_.start.size(); ++i) {
      if (rules_.fact(0, i)) done_.push_back(i);
      std::vector<Slot>& starts = starts_.emplace_back();
      if (!rules_.is_to_come(0, i)) continue;
      for (Slot slot = 0; slot < s_.grid.slots; ++slot) {
        if (rules_.may_start(0, i, slot)) starts.push_back(slot);
      }
    }
  }

  std::optional<Way> run() {
    choose(0);
    return best_;
  }

 private:
  [[nodiscard]] bool on(When when) const {
    return when.group < 0 || now_.chosen[u(when.group)] == when.option;
  }
  [[nodiscard]] bool placed(int i) const { return now_.start[u(i)] >= 0; }

  void choose(std::size_t g) {
    if (g == now_.chosen.size()) return place(0);
    if (rules_.decided(0)[g] >= 0) return choose(g + 1);
    for (int option = 0; option < 2; ++option) {
      now_.chosen[g] = option;
      choose(g + 1);
    }
    now_.chosen[g] = -1;
  }

  void place(std::size_t k) {
    if (k == rules_.open(0).size()) return all_placed();
    const int i = rules_.open(0)[k];
    if (!on(rules_.step(0, i).when)) return place(k + 1);
    for (const Slot slot : starts_[u(i)]) {
      now_.start[u(i)] = slot;
      if (fits(i)) place(k + 1);
    }
    now_.start[u(i)] = -1;
  }

  // The rules between a step and what was placed or done before it.
  [[nodiscard]] bool fits(int i) const {
    const Slot start = now_.start[u(i)];
    for (const Link& link : s_.boards[0].steps.links) {
      const bool from_here = link.from == i && placed(link.to);
      const bool to_here = link.to == i && (placed(link.from) || rules_.fact(0, link.from));
      if ((!from_here && !to_here) || !on(link.when)) continue;
      if (!rules_.keeps(0, link, now_.start[u(link.from)], now_.start[u(link.to)])) return false;
    }
    const auto beside = [&](int other) {
      const Slot then = now_.start[u(other)];
      return !rules_.clean(0, i, start).meets(rules_.dusty(0, other, then)) &&
             !rules_.dusty(0, i, start).meets(rules_.clean(0, other, then));
    };
    for (int other = 0; u(other) < now_.start.size(); ++other) {
      if (other == i || !placed(other)) continue;
      const Stretch work = rules_.attended(0, i, start);
      if (work.meets(rules_.attended(0, other, now_.start[u(other)]))) return false;
      if (!beside(other)) return false;
    }
    return std::all_of(done_.begin(), done_.end(), beside);
  }

  void all_placed() {
    now_.value.clear();
    const std::int64_t finish = last_span();
    const std::vector<std::int64_t> tight = tight_counts();
    const std::int64_t visits = this->visits();
    auto& value = now_.value;
    if (s_.prefer == Prefer::visits) value.push_back(visits);
    if (s_.prefer == Prefer::slack) value.insert(value.end(), tight.begin(), tight.end());
    value.push_back(finish);
    if (s_.prefer != Prefer::slack) value.insert(value.end(), tight.begin(), tight.end());
    if (s_.prefer != Prefer::visits) value.push_back(visits);
    std::int64_t sum = 0;
    for (const Slot start : now_.start) sum += std::max(0, start);
    value.push_back(sum);
    const auto key = [](const Way& way) { return std::tie(way.value, way.start, way.chosen); };
    if (!best_ || key(now_) < key(*best_)) best_ = now_;
  }

  [[nodiscard]] std::int64_t last_span() const {
    Slot last = 0;
    for (int i = 0; u(i) < now_.start.size(); ++i) {
      if (placed(i)) last = std::max(last, rules_.span_of(0, i, now_.start[u(i)]));
    }
    return last;
  }

  [[nodiscard]] std::vector<std::int64_t> tight_counts() const {
    std::vector<std::int64_t> counts(5, 0);
    for (int i = 0; u(i) < now_.start.size(); ++i) {
      if (!placed(i)) continue;
      for (const int level : rules_.limit_levels(0, i, now_.start[u(i)])) ++counts[u(level)];
    }
    for (const Link& link : s_.boards[0].steps.links) {
      if (!link.tight || !on(link.when) || !placed(link.to)) continue;
      if (!placed(link.from) && !rules_.fact(0, link.from)) continue;
      const int level =
          rules_.window_level(0, link, now_.start[u(link.from)], now_.start[u(link.to)]);
      if (level < 5) ++counts[u(level)];
    }
    return counts;
  }

  [[nodiscard]] std::int64_t visits() const {
    std::vector<Stretch> work;
    for (int i = 0; u(i) < now_.start.size(); ++i) {
      if (placed(i)) work.push_back(rules_.attended(0, i, now_.start[u(i)]));
    }
    if (work.empty()) return 0;
    std::sort(work.begin(), work.end(),
              [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    const double step = s_.grid.step_s();
    const double gap = std::ceil(s_.defaults.visit_gap.value * 60.0 / step) * step;
    std::int64_t count = 1;
    for (std::size_t k = 1; k < work.size(); ++k) {
      if (work[k].from - work[k - 1].to >= gap) ++count;
    }
    return count;
  }

  const Setting& s_;
  Rules rules_;
  std::vector<std::vector<Slot>> starts_;  // of each step, as far as it alone says
  std::vector<int> done_;
  Way now_;
  std::optional<Way> best_;
};

}  // namespace

std::optional<Way> best_way(const Setting& setting) { return AllWays(setting).run(); }

}  // namespace wetout::schedule::sample
