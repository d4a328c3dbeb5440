#include "label_space.hpp"

#include <algorithm>

namespace wetout::search {
namespace {

constexpr int dead_choice = -9;

template <class T>
int index_of(const std::vector<T>& list, const T& what) {
  const auto found = std::find(list.begin(), list.end(), what);
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

int index_of_arc(const std::vector<OpenArc>& list, int arc) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const OpenArc& open) { return open.arc == arc; });
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

}  // namespace

LabelSpace::LabelSpace(const Model& model, const ChainFrame& frame, ChoiceSets& sets,
                       const Domains& root)
    : model_(model), frame_(frame), sets_(sets), root_(root) {}

int LabelSpace::first_bucket(int set) { return find(sets_.absent(set), set); }

int LabelSpace::find(std::vector<bool> resolved, int set) {
  auto key = std::make_pair(resolved, live_choices(resolved, set));
  const auto [entry, fresh] = index_.try_emplace(key, static_cast<int>(buckets_.size()));
  if (!fresh) return entry->second;
  Bucket bucket;
  bucket.count_resolved = static_cast<int>(std::count(resolved.begin(), resolved.end(), true));
  bucket.layout = make_layout(resolved, set);
  for (const int op : bucket.layout.windows) {
    bucket.sure.push_back(sets_.domains(set).holds(model_.ops[at(op)].cond) == Truth::yes);
  }
  bucket.least_rest.assign(at(model_.goal.width), 0);
  for (std::size_t op = 0; op < resolved.size(); ++op) {
    if (resolved[op]) continue;
    const Domains& domains = sets_.domains(set);
    add_least_cost(model_, domains, static_cast<int>(op), frame_.least_cost[op], bucket.least_rest);
    bucket.ends_later = bucket.ends_later || (model_.ops[op].end_set >= 0 &&
                                              domains.holds(model_.ops[op].cond) == Truth::yes);
  }
  bucket.resolved = std::move(resolved);
  bucket.live = std::move(key.second);
  buckets_.push_back(std::move(bucket));
  return entry->second;
}

std::vector<int> LabelSpace::live_choices(const std::vector<bool>& resolved, int set) const {
  const Domains& domains = sets_.domains(set);
  std::vector<bool> live(domains.choice.size(), false);
  const auto mark = [&](const Cond& cond) {
    for (const Option& option : cond) live[at(option.group)] = true;
  };
  for (std::size_t op = 0; op < resolved.size(); ++op) {
    if (resolved[op]) continue;
    mark(model_.ops[op].cond);
    for (const int arc : model_.ops[op].arcs) mark(model_.arcs[at(arc)].cond);
    for (const int pairs : model_.ops[op].pairs) mark(model_.pairs[at(pairs)].cond);
    for (const int use : model_.ops[op].uses) mark(model_.uses[at(use)].cond);
  }
  std::vector<int> choices;
  for (std::size_t g = 0; g < live.size(); ++g) {
    choices.push_back(live[g] ? domains.choice[g] : dead_choice);
  }
  return choices;
}

Layout LabelSpace::make_layout(const std::vector<bool>& resolved, int set) const {
  const Domains& domains = sets_.domains(set);
  Layout layout;
  std::vector<bool> touched(model_.ops.size(), false);
  for (std::size_t a = 0; a < model_.arcs.size(); ++a) {
    const Arc& arc = model_.arcs[a];
    if (resolved[at(arc.i)] == resolved[at(arc.j)]) continue;
    if (domains.holds(arc.cond) != Truth::yes) continue;
    const bool i_placed = resolved[at(arc.i)];
    const bool rising = model_.fn[at(i_placed ? arc.g : arc.f)].rising;
    if (rising) touched[at(i_placed ? arc.j : arc.i)] = true;
    const bool counts = arc.scale > 0 && model_.goal.tight >= 0;
    if (!rising || counts) layout.arcs.push_back({static_cast<int>(a), i_placed});
  }
  for (std::size_t op = 0; op < touched.size(); ++op) {
    if (touched[op]) layout.windows.push_back(static_cast<int>(op));
  }
  std::vector<bool> needed(model_.places.size(), false);
  std::vector<bool> open(model_.places.size(), false);
  for (const Use& use : model_.uses) {
    if (resolved[at(use.a)] && resolved[at(use.b)]) continue;
    if (domains.holds(use.cond) == Truth::no) continue;
    needed[at(use.place)] = true;
    if (resolved[at(use.a)]) open[at(use.place)] = true;
  }
  for (std::size_t u = 0; u < model_.uses.size(); ++u) {
    const Use& use = model_.uses[u];
    if (!needed[at(use.place)] || !frame_.place_matters[at(use.place)]) continue;
    if (!resolved[at(use.a)] && !resolved[at(use.b)]) continue;
    layout.uses.push_back(static_cast<int>(u));
    layout.open_place.push_back(open[at(use.place)]);
  }
  for (std::size_t p = 0; p < model_.pairs.size(); ++p) {
    const Pairs& pairs = model_.pairs[p];
    if (resolved[at(pairs.a)] == resolved[at(pairs.b)]) continue;
    if (domains.holds(pairs.cond) == Truth::yes) layout.pairs.push_back(static_cast<int>(p));
  }
  layout.compared =
      static_cast<int>(1 + 2 * layout.windows.size() + layout.arcs.size() + 2 * layout.uses.size());
  layout.stride = layout.compared + static_cast<int>(layout.pairs.size());
  return layout;
}

std::optional<Step> LabelSpace::step(int source, int set, int op) {
  const Domains& domains = sets_.domains(set);
  std::vector<bool> resolved = buckets_[at(source)].resolved;
  for (std::size_t i = 0; i < resolved.size(); ++i) {
    if (sets_.absent(set)[i]) resolved[i] = true;
  }
  for (const Before& before : frame_.before[at(op)]) {
    if (resolved[at(before.first)]) continue;
    if (domains.holds(model_.arcs[at(before.arc)].cond) == Truth::yes) return std::nullopt;
  }
  resolved[at(op)] = true;
  Step step;
  step.op = op;
  step.set = set;
  step.target = find(resolved, set);
  step.latest_end = std::numeric_limits<Slot>::max();
  for (std::size_t i = 0; i < resolved.size(); ++i) {
    if (resolved[i] || domains.holds(model_.ops[i].cond) != Truth::yes) continue;
    step.latest_end = std::min(step.latest_end, domains.hi[i]);
  }
  connect(step, buckets_[at(source)], buckets_[at(step.target)]);
  return step;
}

void LabelSpace::connect(Step& step, const Bucket& source, const Bucket& target) const {
  const Domains& domains = sets_.domains(step.set);
  const Op& op = model_.ops[at(step.op)];
  const auto in_force = [&](const Arc& arc) { return domains.holds(arc.cond) == Truth::yes; };
  for (const int other : target.layout.windows) {
    step.window_from.push_back(index_of(source.layout.windows, other));
    std::vector<int> arcs;
    for (const int a : op.arcs) {
      const Arc& arc = model_.arcs[at(a)];
      if ((arc.i != other && arc.j != other) || !in_force(arc)) continue;
      if (model_.fn[at(arc.i == other ? arc.f : arc.g)].rising) arcs.push_back(a);
    }
    step.window_arcs.push_back(std::move(arcs));
  }
  for (const OpenArc& open : target.layout.arcs) {
    step.arc_from.push_back(index_of_arc(source.layout.arcs, open.arc));
  }
  connect_uses(step, source, target);
  for (const int pairs : target.layout.pairs) {
    step.pairs_from.push_back(index_of(source.layout.pairs, pairs));
  }
  for (std::size_t k = 0; k < source.layout.arcs.size(); ++k) {
    const Arc& arc = model_.arcs[at(source.layout.arcs[k].arc)];
    if (arc.i == step.op || arc.j == step.op) step.own_arcs.push_back(static_cast<int>(k));
  }
  for (std::size_t k = 0; k < source.layout.pairs.size(); ++k) {
    const Pairs& pairs = model_.pairs[at(source.layout.pairs[k])];
    if (pairs.a == step.op || pairs.b == step.op) step.own_pairs.push_back(static_cast<int>(k));
  }
  step.own_window = index_of(source.layout.windows, step.op);
  for (const int a : op.arcs) {
    const Arc& arc = model_.arcs[at(a)];
    if (arc.i == arc.j && arc.scale > 0 && in_force(arc)) step.self_arcs.push_back(a);
  }
}

void LabelSpace::connect_uses(Step& step, const Bucket& source, const Bucket& target) const {
  const Domains& domains = sets_.domains(step.set);
  // What is kept while this operation runs has to be looked at now: later it is past.
  std::vector<int> looked_at = source.layout.uses;
  for (const int use : model_.ops[at(step.op)].uses) {
    if (index_of(looked_at, use) < 0) looked_at.push_back(use);
  }
  std::vector<int> place_of(model_.uses.size(), -1);
  for (const int index : looked_at) {
    const Use& use = model_.uses[at(index)];
    if (!frame_.place_matters[at(use.place)] || domains.holds(use.cond) != Truth::yes) continue;
    UseStep one{.use = index, .begins = use.a == step.op, .ends = use.b == step.op};
    const int kept = index_of(source.layout.uses, index);
    if (kept >= 0) {
      one.column = source.layout.use_column(kept);
      one.was_open = source.layout.open_place[at(kept)];
    }
    one.was_begun = source.resolved[at(use.a)];
    one.was_ended = source.resolved[at(use.b)];
    one.begun = target.resolved[at(use.a)];
    one.ended = target.resolved[at(use.b)];
    place_of[at(index)] = static_cast<int>(step.uses.size());
    step.uses.push_back(one);
  }
  for (const int use : target.layout.uses) step.use_from.push_back(place_of[at(use)]);
}

}  // namespace wetout::search
