#include "compile_goal.hpp"

#include <algorithm>
#include <utility>

namespace wetout::search {
namespace {

class GoalCompiler {
 public:
  GoalCompiler(const Problem& problem, Model& model, std::vector<int> local)
      : problem_(problem), model_(model), local_(std::move(local)) {}

  void add(const LastEnd& term) {
    goal().last_end = goal().width++;
    goal().calendar = term.calendar;
    goal().end_sets = sets(term.sets, &Op::end_set);
  }

  void add(const TightCounts& term) {
    goal().tight = goal().width;
    goal().width += term.levels;
    goal().levels = term.levels;
    goal().per_scale = term.per_scale;
  }

  void add(const Visits& term) {
    goal().visits = goal().width++;
    goal().gap = term.gap;
    goal().visit_sets = sets(term.sets, &Op::visit_set);
  }

  void add(const Sum& term) {
    goal().sum = goal().width++;
    for (std::size_t op = 0; op < term.cost.size(); ++op) {
      if (local_[op] < 0) continue;
      Fn& cost = model_.ops[at(local_[op])].cost;
      if (const auto* offset = std::get_if<Slot>(&term.cost[op])) {
        cost = {nullptr, *offset, true};
      } else {
        const auto& table = std::get<Table>(term.cost[op]).at;
        cost = {table.data(), 0, std::is_sorted(table.begin(), table.end())};
      }
    }
  }

  void add(const Starts& /*term*/) {
    goal().starts = true;
    for (const int op : by_id(problem_)) {
      if (local_[at(op)] >= 0) model_.order.push_back(local_[at(op)]);
    }
  }

  void add(const Choices& /*term*/) { goal().choices = true; }

 private:
  Goal& goal() { return model_.goal; }

  /// Numbers the sets that hold operations of this model; returns how many.
  int sets(const std::vector<std::vector<int>>& sets, int Op::*member) {
    if (sets.empty()) {
      for (Op& op : model_.ops) op.*member = 0;
      return model_.ops.empty() ? 0 : 1;
    }
    int count = 0;
    for (const auto& set : sets) {
      bool here = false;
      for (const int op : set) {
        if (local_[at(op)] < 0) continue;
        model_.ops[at(local_[at(op)])].*member = count;
        here = true;
      }
      if (here) ++count;
    }
    return count;
  }

  const Problem& problem_;
  Model& model_;
  std::vector<int> local_;  ///< index in the model of each operation of the problem, or -1
};

}  // namespace

void compile_goal(const Problem& problem, const Objective& objective, const std::vector<int>& local,
                  Model& model) {
  GoalCompiler compiler(problem, model, local);
  for (const Term& term : objective.terms) {
    std::visit([&](const auto& t) { compiler.add(t); }, term);
  }
}

}  // namespace wetout::search
