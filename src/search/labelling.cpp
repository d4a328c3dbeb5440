#include "labelling.hpp"

#include <algorithm>
#include <numeric>

namespace wetout::search {
namespace {

constexpr int last_beam = 16;

// a is nowhere larger than b. Blocks are compared as a whole: that needs no branch for each column.
bool nowhere_larger(const Slot* a, const Slot* b, int size) {
  constexpr int block = 8;
  int k = 0;
  for (; k + block <= size; k += block) {
    int larger = 0;
    for (int i = 0; i < block; ++i) larger |= static_cast<int>(a[k + i] > b[k + i]);
    if (larger != 0) return false;
  }
  for (; k < size; ++k) {
    if (a[k] > b[k]) return false;
  }
  return true;
}

}  // namespace

Labelling::Labelling(const Model& model, const Domains& root, const Budget& budget)
    : model_(model),
      root_(root),
      budget_(budget),
      frame_(make_frame(model, root)),
      sets_(model),
      space_(model, frame_, sets_, root),
      stepper_(model, sets_, root),
      rest_(model, frame_) {}

std::optional<Found> Labelling::run(int beam, const std::optional<Found>& incumbent) {
  best_ = incumbent;
  sets_.restart(root_);
  const int first = space_.first_bucket(0);
  Bucket& bucket = space_.bucket(first);
  bucket.rows.assign(at(bucket.layout.stride), 0);
  bucket.costs.assign(at(model_.goal.width), 0);
  bucket.records.push_back(0);
  bucket.sums.push_back(0);
  space_.records.push_back({});
  layers_[bucket.count_resolved].push_back(first);
  while (!layers_.empty()) {
    const auto layer = layers_.begin();
    if (stopped_) beam = last_beam;
    if (beam > 0) thin(layer->second, beam);
    // Once stopped, a narrow beam still runs to the end, so that there is a schedule to show.
    int left = last_beam;
    for (const int index : layer->second) {
      for (int row = 0; row < space_.bucket(index).size(); ++row) {
        if (stopped_ && left-- <= 0) break;
        expand(index, row);
      }
      Bucket& done = space_.bucket(index);
      bytes_ -= std::min(bytes_, done.rows.capacity() * sizeof(Slot) +
                                     done.costs.capacity() * sizeof(std::int64_t));
      done.rows = {};
      done.costs = {};
      done.records = {};
      done.sums = {};
    }
    layers_.erase(layer);
    steps_.clear();
  }
  if (stopped_) complete_ = false;
  return best_;
}

void Labelling::expand(int bucket, int row) {
  if (budget_.step && budget_.step()) stopped_ = true;
  finish(bucket, row);
  const int record = space_.bucket(bucket).records[at(row)];
  for (const Step& step : steps_from(bucket, space_.records[at(record)].set)) {
    const Bits& starts = sets_.domains(step.set).starts[at(step.op)];
    const auto [first, last] = stepper_.range(space_.bucket(bucket), row, step);
    for (Slot s = starts.next(first); s >= 0 && s <= last; s = starts.next(s + 1)) {
      ++*budget_.extensions;
      if (stepper_.make(space_.bucket(bucket), row, step, space_.bucket(step.target), s, columns_,
                        cost_)) {
        insert(step.target, step, s, record);
      }
    }
  }
}

const std::vector<Step>& Labelling::steps_from(int bucket, int set) {
  const auto [entry, fresh] = steps_.try_emplace({bucket, set});
  std::vector<Step>& steps = entry->second;
  if (!fresh) return steps;
  for (int op = 0; op < static_cast<int>(model_.ops.size()); ++op) {
    if (space_.bucket(bucket).resolved[at(op)]) continue;
    if (sets_.domains(set).holds(model_.ops[at(op)].cond) == Truth::no) continue;
    for (const int next : sets_.with(set, op)) {
      if (auto step = space_.step(bucket, next, op)) steps.push_back(std::move(*step));
    }
  }
  return steps;
}

Labelling::Rows Labelling::row(const Bucket& bucket, int index) const {
  return {bucket.rows.data() + at(index) * at(bucket.layout.stride),
          bucket.costs.data() + at(index) * at(model_.goal.width), bucket.records[at(index)]};
}

void Labelling::insert(int target, const Step& step, Slot start, int parent) {
  Bucket& bucket = space_.bucket(target);
  if (hopeless(bucket)) return;
  const int record = static_cast<int>(space_.records.size());
  space_.records.push_back({parent, step.op, start, step.set});
  if (bucket.count_resolved == static_cast<int>(model_.ops.size())) {
    offer(record, step.set, cost_);
    space_.records.pop_back();
    return;
  }
  const Rows mine{columns_.data(), cost_.data(), record};
  const auto sum =
      std::accumulate(columns_.begin(), columns_.begin() + bucket.layout.compared, std::int64_t{0});
  const auto is_beaten_by = [&](int k) {
    return bucket.sums[at(k)] <= sum && dominates(bucket, row(bucket, k), mine);
  };
  // What beat the last label often beats its neighbour too.
  bool is_beaten = bucket.last_to_beat < bucket.size() && is_beaten_by(bucket.last_to_beat);
  for (int k = bucket.size() - 1; k >= 0 && !is_beaten; --k) {
    is_beaten = is_beaten_by(k);
    if (is_beaten) bucket.last_to_beat = k;
  }
  if (is_beaten) {
    space_.records.pop_back();
    return;
  }
  for (int k = bucket.size() - 1; k >= 0; --k) {
    if (bucket.sums[at(k)] >= sum && dominates(bucket, mine, row(bucket, k))) remove(bucket, k);
  }
  const std::size_t size = columns_.size() * sizeof(Slot) + cost_.size() * sizeof(std::int64_t) +
                           sizeof(Record) + sizeof(int);
  if (bytes_ + size > budget_.memory_bytes) {
    complete_ = false;
    space_.records.pop_back();
    return;
  }
  bytes_ += size;
  if (bucket.size() == 0) {
    auto& layer = layers_[bucket.count_resolved];
    if (std::find(layer.begin(), layer.end(), target) == layer.end()) layer.push_back(target);
  }
  bucket.rows.insert(bucket.rows.end(), columns_.begin(), columns_.end());
  bucket.costs.insert(bucket.costs.end(), cost_.begin(), cost_.end());
  bucket.records.push_back(record);
  bucket.sums.push_back(sum);
}

void Labelling::remove(Bucket& bucket, int row) {
  const int last = bucket.size() - 1;
  const auto stride = static_cast<std::ptrdiff_t>(bucket.layout.stride);
  const auto width = static_cast<std::ptrdiff_t>(model_.goal.width);
  if (row != last) {
    std::copy_n(bucket.rows.begin() + last * stride, stride, bucket.rows.begin() + row * stride);
    std::copy_n(bucket.costs.begin() + last * width, width, bucket.costs.begin() + row * width);
    bucket.records[at(row)] = bucket.records[at(last)];
    bucket.sums[at(row)] = bucket.sums[at(last)];
  }
  bucket.sums.pop_back();
  bucket.rows.resize(bucket.rows.size() - at(bucket.layout.stride));
  bucket.costs.resize(bucket.costs.size() - at(model_.goal.width));
  bucket.records.pop_back();
}

bool Labelling::hopeless(const Bucket& target) {
  if (!best_) return false;
  const Goal& goal = model_.goal;
  for (std::size_t k = 0; k < cost_.size(); ++k) {
    // What ended last is a maximum, everything else adds up.
    const int term = static_cast<int>(k);
    std::int64_t least = cost_[k];
    if (term != goal.last_end) least += target.least_rest[k];
    if (term == goal.visits) least += rest_.visits(target, columns_.data());
    if (term == goal.sum) least += rest_.sum(target, columns_.data());
    if (least != best_->value[k]) return least > best_->value[k];
  }
  return !goal.starts && !goal.choices;
}

bool Labelling::dominates(const Bucket& bucket, const Rows& a, const Rows& b) const {
  const int compared = bucket.layout.compared;
  if (!nowhere_larger(a.columns, b.columns, compared)) return false;
  // Being ready earlier may make the next gap long enough for another visit.
  const bool may_visit = model_.goal.visits >= 0 && a.columns[0] < b.columns[0];
  // The last end so far does not add up: an earlier one is no gain once something ends later.
  const int last = model_.goal.last_end;
  if (last >= 0 && !bucket.ends_later && a.cost[last] > b.cost[last]) return false;
  int order = 0;
  for (int k = 0; k < model_.goal.width && order == 0; ++k) {
    if (k == last) continue;
    const std::int64_t mine = a.cost[k] + (may_visit && k == model_.goal.visits ? 1 : 0);
    if (mine != b.cost[k]) order = mine < b.cost[k] ? -1 : 1;
  }
  if (order > 0) return false;
  for (std::size_t k = 0; k < bucket.layout.pairs.size(); ++k) {
    const Pairs& pairs = model_.pairs[at(bucket.layout.pairs[k])];
    const Slot sa = a.columns[at(compared) + k];
    const Slot sb = b.columns[at(compared) + k];
    const auto& rows = bucket.resolved[at(pairs.a)] ? pairs.of_a : pairs.of_b;
    if (sa != sb && !rows[at(sa)].covers(rows[at(sb)], b.columns[0])) return false;
  }
  return order < 0 || compare_ties(a.record, b.record) <= 0;
}

std::vector<Slot> Labelling::starts_of(int record) const {
  std::vector<Slot> starts(model_.ops.size(), -1);
  for (; record >= 0; record = space_.records[at(record)].parent) {
    const Record& r = space_.records[at(record)];
    if (r.op >= 0) starts[at(r.op)] = r.start;
  }
  return starts;
}

std::vector<int> Labelling::choices_of(int set) const {
  return settled_choices(model_, sets_.domains(set));
}

int Labelling::compare_ties(int a, int b) const {
  if (model_.goal.starts) {
    const auto sa = starts_of(a);
    const auto sb = starts_of(b);
    for (const int op : model_.order) {
      if (sa[at(op)] != sb[at(op)]) return sa[at(op)] < sb[at(op)] ? -1 : 1;
    }
  }
  if (model_.goal.choices) {
    const auto ca = choices_of(space_.records[at(a)].set);
    const auto cb = choices_of(space_.records[at(b)].set);
    if (ca != cb) return ca < cb ? -1 : 1;
  }
  return 0;
}

void Labelling::finish(int bucket, int row) {
  const Bucket& from = space_.bucket(bucket);
  const int record = from.records[at(row)];
  const auto done = sets_.finished(space_.records[at(record)].set, from.resolved);
  if (!done) return;
  const auto width = at(model_.goal.width);
  const auto* cost = from.costs.data() + at(row) * width;
  offer(record, *done, Value(cost, cost + width));
}

void Labelling::offer(int record, int set, const Value& cost) {
  if (best_ && cost > best_->value) return;
  const auto done = sets_.finished(set, std::vector<bool>(model_.ops.size(), true));
  if (!done) return;
  Found found{starts_of(record), choices_of(*done), cost};
  if (!best_ || better(model_, found, *best_)) best_ = std::move(found);
}

void Labelling::thin(const std::vector<int>& layer, int beam) {
  struct At {
    int bucket;
    int row;
  };
  std::vector<At> all;
  for (const int b : layer) {
    for (int r = 0; r < space_.bucket(b).size(); ++r) all.push_back({b, r});
  }
  if (static_cast<int>(all.size()) <= beam) return;
  complete_ = false;
  const auto earlier = [&](const At& a, const At& b) {
    return row(space_.bucket(a.bucket), a.row).columns[0] <
           row(space_.bucket(b.bucket), b.row).columns[0];
  };
  const auto cheaper = [&](const At& a, const At& b) {
    const auto* x = row(space_.bucket(a.bucket), a.row).cost;
    const auto* y = row(space_.bucket(b.bucket), b.row).cost;
    return std::lexicographical_compare(x, x + model_.goal.width, y, y + model_.goal.width);
  };
  // Half of the beam is early, half is good.
  const auto half = static_cast<std::ptrdiff_t>(beam / 2);
  std::nth_element(all.begin(), all.begin() + half, all.end(), earlier);
  std::nth_element(all.begin() + half, all.begin() + beam, all.end(), cheaper);
  std::sort(all.begin() + beam, all.end(), [](const At& a, const At& b) {
    return a.bucket != b.bucket ? a.bucket < b.bucket : a.row > b.row;
  });
  for (auto p = all.begin() + beam; p != all.end(); ++p) remove(space_.bucket(p->bucket), p->row);
}

}  // namespace wetout::search
