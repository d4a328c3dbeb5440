#include "parts.hpp"

#include <map>
#include <numeric>

#include "model.hpp"

namespace wetout::search {
namespace {

class Union {
 public:
  explicit Union(std::size_t size) : parent_(size) { std::iota(parent_.begin(), parent_.end(), 0); }
  int find(int i) {
    while (parent_[at(i)] != i) i = parent_[at(i)] = parent_[at(parent_[at(i)])];
    return i;
  }
  void join(int i, int j) { parent_[at(find(i))] = find(j); }

 private:
  std::vector<int> parent_;
};

}  // namespace

std::vector<std::vector<int>> parts_of(const Problem& problem) {
  const int ops = static_cast<int>(problem.ops.size());
  Union all(problem.ops.size() + problem.groups.size());
  const auto join = [&](int op, Option when) {
    for (const Option& option : closure(problem, when)) all.join(op, ops + option.group);
  };
  for (int op = 0; op < ops; ++op) join(op, problem.ops[at(op)].when);
  const auto tie = [&](int a, int b, Option when) {
    all.join(a, b);
    join(a, when);
  };
  for (const Lag& lag : problem.lags) tie(lag.from.op, lag.to.op, lag.when);
  for (const Relation& relation : problem.relations) tie(relation.a, relation.b, relation.when);
  for (const Hold& hold : problem.holds) tie(hold.from.op, hold.to.op, hold.when);
  for (const RoomMode& mode : problem.modes) tie(mode.from.op, mode.to.op, mode.when);
  std::map<int, std::size_t> index;
  std::vector<std::vector<int>> parts;
  for (int op = 0; op < ops; ++op) {
    const auto [entry, fresh] = index.try_emplace(all.find(op), parts.size());
    if (fresh) parts.emplace_back();
    parts[entry->second].push_back(op);
  }
  return parts;
}

}  // namespace wetout::search
