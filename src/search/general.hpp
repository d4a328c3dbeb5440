// Branch and bound for any problem: choose options, then settle who goes first where places do not
// suffice for all, then split starts where the earliest are not the best.
#pragma once

#include <optional>
#include <vector>

#include "chain.hpp"
#include "node_bound.hpp"

namespace wetout::search {

class General {
 public:
  General(const Model& model, Budget budget);

  /// Called with each better schedule.
  std::function<void(const Found&)> found = {};
  /// A known schedule; only better ones are looked for.
  void start_from(Found incumbent);

  /// proved or infeasible, or stopped by the budget.
  State run();

  [[nodiscard]] const std::optional<Found>& best() const { return best_; }
  /// Additive part; of use when stopped.
  [[nodiscard]] Value bound() const;

 private:
  struct Node {
    Domains domains;
    std::vector<Order> orders;
  };
  /// One way to go on: an option, an order, or part of the starts of an operation.
  struct Branch {
    std::optional<Option> choose = {};
    std::optional<Order> order = {};
    int op = -1;  ///< its starts before `split`, or from there on
    Slot split = 0;
    bool early = false;
    bool possible = false;
    Value bound = {};
  };

  void explore(Node node, const Value& bound);
  bool apply(const Branch& branch, Node& node);
  /// The contrary of an order whose schedules are done with.
  bool exclude(const Order& order, Node& node);
  [[nodiscard]] bool cut(const Value& bound) const;
  [[nodiscard]] bool tighten(Node& node);
  std::vector<Branch> branches(const Node& node, const Value& bound);
  std::vector<Branch> conflict(const Node& node) const;
  void order_branches(const Domains& domains, const std::vector<int>& uses,
                      std::vector<Branch>& out) const;
  [[nodiscard]] int broken_op(const Node& node) const;
  void offer(const Domains& domains, const Value& value);

  const Model& model_;
  Budget budget_;
  Propagator propagator_;
  std::vector<bool> may_be_empty_;  ///< per use
  std::optional<Found> best_;
  Value best_value_;  ///< of best_, whole
  std::optional<Value> open_bound_;
  bool stopped_ = false;
};

}  // namespace wetout::search
