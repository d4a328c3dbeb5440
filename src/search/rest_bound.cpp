#include "rest_bound.hpp"

#include <algorithm>

namespace wetout::search {

RestBound::RestBound(const Model& model, const ChainFrame& frame) : model_(model), frame_(frame) {
  if (model.goal.visits < 0 || model.ops.empty()) return;
  const int calendar = model.problem->ops[at(model.ops.front().id)].calendar;
  if (calendar < 0) return;
  for (const Op& op : model.ops) {
    if (model.problem->ops[at(op.id)].calendar != calendar) return;
  }
  block_.assign(at(model.horizon), 0);
  const auto& spans = model.problem->calendars[at(calendar)].spans;
  int block = 0;
  for (std::size_t k = 0; k < spans.size(); ++k) {
    if (k > 0 && spans[k].first - spans[k - 1].second >= model.goal.gap) ++block;
    const Slot until = k + 1 < spans.size() ? spans[k + 1].first : model.horizon;
    for (Slot s = std::max(Slot{0}, spans[k].first); s < std::min(until, model.horizon); ++s) {
      block_[at(s)] = block;
    }
  }
}

std::int64_t RestBound::visits(const Bucket& bucket, const Slot* columns) {
  if (block_.empty()) return 0;
  ranges_.clear();
  for (std::size_t k = 0; k < bucket.layout.windows.size(); ++k) {
    if (!bucket.sure[k]) continue;
    ranges_.emplace_back(block_[at(-columns[2 + 2 * k])], block_[at(columns[1 + 2 * k])]);
  }
  std::sort(ranges_.begin(), ranges_.end());
  int last = block_[at(std::min(columns[0], model_.horizon) - 1)];
  std::int64_t visits = 0;
  for (const auto& [latest, earliest] : ranges_) {
    if (earliest <= last) continue;
    last = latest;
    ++visits;
  }
  return visits;
}

std::int64_t RestBound::sum(const Bucket& bucket, const Slot* columns) const {
  std::int64_t sum = 0;
  for (std::size_t k = 0; k < bucket.layout.windows.size(); ++k) {
    if (!bucket.sure[k]) continue;
    const int op = bucket.layout.windows[k];
    const Fn& cost = model_.ops[at(op)].cost;
    if (!cost.rising) continue;
    sum += std::max<std::int64_t>(
        0, cost(columns[1 + 2 * k]) - frame_.least_cost[at(op)][at(model_.goal.sum)]);
  }
  return sum;
}

}  // namespace wetout::search
