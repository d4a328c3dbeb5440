#include "choice_sets.hpp"

#include <algorithm>
#include <set>

namespace wetout::search {

ChoiceSets::ChoiceSets(const Model& model) : model_(model), propagator_(model) {
  for (const Op& op : model.ops) {
    std::set<int> groups;
    const auto add = [&](const Cond& cond) {
      for (const Option& option : cond) groups.insert(option.group);
    };
    add(op.cond);
    for (const int arc : op.arcs) add(model.arcs[at(arc)].cond);
    for (const int pairs : op.pairs) add(model.pairs[at(pairs)].cond);
    for (const int use : op.uses) add(model.uses[at(use)].cond);
    touching_.emplace_back(groups.begin(), groups.end());
  }
}

void ChoiceSets::restart(Domains root) {
  entries_.clear();
  by_choice_.clear();
  decided_.clear();
  add(std::move(root));
}

int ChoiceSets::add(Domains domains) {
  const auto [entry, fresh] =
      by_choice_.try_emplace(domains.choice, static_cast<int>(entries_.size()));
  if (!fresh) return entry->second;
  std::vector<bool> absent;
  for (const Op& op : model_.ops) absent.push_back(domains.holds(op.cond) == Truth::no);
  entries_.push_back({std::move(domains), std::move(absent), {}});
  return entry->second;
}

std::optional<int> ChoiceSets::decide(int set, int group, int option) {
  const auto [entry, fresh] = decided_.try_emplace({set, {group, option}}, -1);
  if (fresh) {
    Domains domains = entries_[at(set)].domains;
    if (propagator_.choose(domains, group, option)) entry->second = add(std::move(domains));
  }
  if (entry->second < 0) return std::nullopt;
  return entry->second;
}

void ChoiceSets::branch(int set, int op, std::size_t next, std::vector<int>& out) {
  const auto& groups = touching_[at(op)];
  for (; next < groups.size(); ++next) {
    const int group = groups[next];
    const Domains& now = domains(set);
    if (now.choice[at(group)] != open_choice) continue;
    if (now.holds(model_.group_cond[at(group)]) != Truth::yes) continue;
    for (int o = 0; o < model_.problem->groups[at(group)].options; ++o) {
      if ((domains(set).options[at(group)] >> static_cast<unsigned>(o) & 1U) == 0) continue;
      if (const auto chosen = decide(set, group, o)) branch(*chosen, op, next + 1, out);
    }
    return;
  }
  const Domains& now = domains(set);
  if (now.holds(model_.ops[at(op)].cond) == Truth::yes && !now.empty(op)) out.push_back(set);
}

const std::vector<int>& ChoiceSets::with(int set, int op) {
  const auto known = entries_[at(set)].with.find(op);
  if (known != entries_[at(set)].with.end()) return known->second;
  std::vector<int> out;
  branch(set, op, 0, out);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return entries_[at(set)].with[op] = std::move(out);
}

std::optional<int> ChoiceSets::finished(int set, const std::vector<bool>& resolved) {
  for (std::size_t op = 0; op < resolved.size(); ++op) {
    if (!resolved[op] && domains(set).holds(model_.ops[op].cond) == Truth::yes) return std::nullopt;
  }
  for (std::size_t g = 0; g < model_.group_here.size(); ++g) {
    const int group = static_cast<int>(g);
    if (!model_.group_here[g] || domains(set).choice[g] != open_choice) continue;
    if (domains(set).holds(model_.group_cond[g]) != Truth::yes) continue;
    for (int o = 0; o < model_.problem->groups[g].options; ++o) {
      if ((domains(set).options[g] >> static_cast<unsigned>(o) & 1U) == 0) continue;
      const auto chosen = decide(set, group, o);
      const auto done = chosen ? finished(*chosen, resolved) : std::nullopt;
      if (done) return done;
    }
    return std::nullopt;
  }
  for (std::size_t op = 0; op < resolved.size(); ++op) {
    if (!resolved[op] && !absent(set)[op]) return std::nullopt;
  }
  return set;
}

}  // namespace wetout::search
