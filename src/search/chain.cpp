#include "chain.hpp"

#include <algorithm>

#include "labelling.hpp"

namespace wetout::search {
namespace {

/// Labels per layer in the first pass; most boards need fewer, and it is the only one.
constexpr int first_beam = 2000;
/// Deadlines still tried, with a narrow beam, once time is up and nothing has been found.
constexpr int last_tries = 8;

/// Values of LastEnd worth asking for, from `least` on. Spans are few and tried one by one; single
/// slots are many and tried in growing strides. Either way the first success is the best, because
/// the labelling looks for the best within what it is asked for.
class Deadlines {
 public:
  Deadlines(const Model& model, const Domains& domains) {
    if (model.goal.calendar >= 0) {
      for (const auto& span : model.problem->calendars[at(model.goal.calendar)].spans) {
        keys_.push_back(span.first);
      }
    }
    for (std::size_t i = 0; i < model.ops.size(); ++i) {
      const Op& op = model.ops[i];
      const int index = static_cast<int>(i);
      if (op.end_set < 0 || domains.empty(index)) continue;
      const bool rising = model.fn[at(op.end)].rising;
      const Bits& starts = domains.starts[i];
      std::int64_t least = model.key(index, domains.lo[i]);
      greatest_ = std::max(greatest_, model.key(index, domains.hi[i]));
      for (Slot s = starts.next(0); s >= 0 && !rising; s = starts.next(s + 1)) {
        least = std::min(least, model.key(index, s));
        greatest_ = std::max(greatest_, model.key(index, s));
      }
      if (domains.holds(op.cond) == Truth::yes) least_ = std::max(least_, least);
    }
    by_slot_ = model.goal.calendar < 0;
  }

  [[nodiscard]] std::int64_t least() const { return least_; }
  [[nodiscard]] std::int64_t greatest() const { return greatest_; }

  /// The key to ask for when `refuted` and everything below it is impossible.
  std::int64_t after(std::int64_t refuted) {
    if (!by_slot_) return above(refuted);
    const std::int64_t key = std::min(refuted + stride_, greatest_);
    stride_ *= 2;
    return key;
  }
  /// The least key above `refuted`.
  [[nodiscard]] std::int64_t above(std::int64_t refuted) const {
    if (by_slot_) return refuted + 1;
    const auto key = std::upper_bound(keys_.begin(), keys_.end(), refuted);
    return key == keys_.end() ? greatest_ : *key;
  }

 private:
  std::vector<std::int64_t> keys_;
  std::int64_t least_ = 0;
  std::int64_t greatest_ = 0;
  bool by_slot_ = false;
  std::int64_t stride_ = 1;
};

class ChainSolver {
 public:
  ChainSolver(const Model& model, const ChainOptions& options, const Budget& budget)
      : model_(model), options_(options), budget_(budget), propagator_(model) {}

  ChainResult run() {
    Domains domains;
    if (!propagator_.init(domains) || !propagator_.probe(domains)) return infeasible();
    if (options_.last_end && model_.goal.last_end >= 0 &&
        !(propagator_.limit_last(domains, *options_.last_end) && propagator_.probe(domains))) {
      return infeasible();
    }
    if (model_.goal.last_end != 0) return label(domains) ? result_ : infeasible();
    Deadlines deadlines(model_, domains);
    std::int64_t key = least_key_ = deadlines.least();
    int tries = last_tries;
    while (true) {
      if (!stopped_) raise_bound(domains);
      Domains limited = domains;
      const std::int64_t asked = key;
      if (propagator_.limit_last(limited, asked) && propagator_.probe(limited)) {
        if (label(limited)) return result_;
        if (stopped_ && --tries == 0) return result_;
      }
      if (asked >= deadlines.greatest()) return stopped_ ? result_ : infeasible();
      key = deadlines.after(asked);
      if (!stopped_) least_key_ = deadlines.above(asked);
    }
  }

 private:
  ChainResult infeasible() {
    result_.state = options_.beam > 0 && thinned_ ? State::stopped : State::infeasible;
    return result_;
  }

  void raise_bound(const Domains& domains) {
    Value bound(at(model_.goal.width), 0);
    for (std::size_t i = 0; i < model_.ops.size(); ++i) {
      const int op = static_cast<int>(i);
      add_least_cost(model_, domains, op, least_cost(model_, domains, op), bound);
      const bool sure = domains.holds(model_.ops[i].cond) == Truth::yes;
      if (sure && model_.goal.visits >= 0) bound[at(model_.goal.visits)] = 1;
    }
    if (model_.goal.last_end == 0) bound[0] = least_key_;
    result_.bound = bound;
    if (options_.bound) options_.bound(bound);
  }

  /// True when there is nothing more to do.
  bool label(const Domains& domains) {
    Labelling quick(model_, domains, budget_);
    result_.best = quick.run(options_.beam > 0 ? options_.beam : first_beam, std::nullopt);
    if (result_.best && options_.found) options_.found(*result_.best);
    if (options_.beam > 0 || quick.complete() || quick.stopped()) return conclude(quick);
    Labelling exact(model_, domains, budget_);
    result_.best = exact.run(0, result_.best);
    if (result_.best && options_.found) options_.found(*result_.best);
    return conclude(exact);
  }

  bool conclude(const Labelling& labelling) {
    if (labelling.complete() && !stopped_) {
      if (!result_.best) return false;
      result_.state = State::proved;
      result_.bound = result_.best->value;
      return true;
    }
    thinned_ = true;
    // Out of memory is like out of time.
    stopped_ = stopped_ || labelling.stopped() || options_.beam == 0;
    result_.state = result_.best ? State::feasible : State::stopped;
    return result_.best.has_value();
  }

  const Model& model_;
  const ChainOptions& options_;
  Budget budget_;
  Propagator propagator_;
  ChainResult result_;
  std::int64_t least_key_ = 0;
  bool thinned_ = false;
  bool stopped_ = false;
};

}  // namespace

bool better(const Model& model, const Found& a, const Found& b) {
  if (a.value != b.value) return a.value < b.value;
  if (model.goal.starts) {
    for (const int op : model.order) {
      if (a.start[at(op)] != b.start[at(op)]) return a.start[at(op)] < b.start[at(op)];
    }
  }
  return model.goal.choices && a.choice < b.choice;
}

ChainResult solve_chain(const Model& model, const ChainOptions& options, const Budget& budget) {
  return ChainSolver(model, options, budget).run();
}

}  // namespace wetout::search
