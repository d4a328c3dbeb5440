#include "occupancy.hpp"

#include <algorithm>
#include <map>

namespace wetout::search {
namespace {

constexpr Slot for_ever = Slot{1} << 29;

}  // namespace

Occupancy::Occupancy(const Problem& problem, const std::vector<Taken>& taken)
    : problem_(problem), used_(problem.resources.size()) {
  std::vector<std::map<Slot, int>> change(problem.resources.size());
  for (const Taken& t : taken) {
    if (t.to <= t.from) continue;
    if (at(t.place) < problem.resources.size()) {
      change[at(t.place)][t.from] += t.what;
      change[at(t.place)][t.to] -= t.what;
    } else {
      const std::size_t room = at(t.place) - problem.resources.size();
      if (rooms_.size() <= room) rooms_.resize(room + 1);
      rooms_[room].push_back(t);
    }
  }
  for (std::size_t r = 0; r < change.size(); ++r) {
    int used = 0;
    for (const auto& [slot, by] : change[r]) used_[r].emplace_back(slot, used += by);
  }
}

Slot Occupancy::span_end(int resource, Slot from) const {
  const int calendar = problem_.resources[at(resource)].calendar;
  if (calendar < 0) return for_ever;
  for (const auto& [first, end] : problem_.calendars[at(calendar)].spans) {
    if (first <= from && from < end) return end;
  }
  return from;
}

Slot Occupancy::free_until(int place, int what, Slot from) const {
  if (at(place) >= used_.size()) {
    const std::size_t room = at(place) - used_.size();
    Slot until = for_ever;
    if (room >= rooms_.size()) return until;
    for (const Taken& t : rooms_[room]) {
      if (t.what != what && t.to > from) until = std::min(until, std::max(t.from, from));
    }
    return until;
  }
  const int spare = problem_.resources[at(place)].count - what;
  if (spare < 0) return from;
  const auto& steps = used_[at(place)];
  auto step = std::upper_bound(steps.begin(), steps.end(), from,
                               [](Slot s, const auto& entry) { return s < entry.first; });
  if (step != steps.begin() && std::prev(step)->second > spare) return from;
  step = std::find_if(step, steps.end(), [&](const auto& entry) { return entry.second > spare; });
  const Slot until = step == steps.end() ? for_ever : step->first;
  return std::min(until, span_end(place, from));
}

bool Occupancy::limits(int place, int what) const {
  if (at(place) >= used_.size()) {
    const std::size_t room = at(place) - used_.size();
    return room < rooms_.size() && std::any_of(rooms_[room].begin(), rooms_[room].end(),
                                               [&](const Taken& t) { return t.what != what; });
  }
  const Resource& resource = problem_.resources[at(place)];
  if (what > resource.count || resource.calendar >= 0) return true;
  const auto& steps = used_[at(place)];
  return std::any_of(steps.begin(), steps.end(),
                     [&](const auto& entry) { return entry.second + what > resource.count; });
}

}  // namespace wetout::search
