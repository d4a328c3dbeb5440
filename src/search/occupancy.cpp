#include "occupancy.hpp"

#include <algorithm>

namespace wetout::search {
namespace {

constexpr Slot for_ever = Slot{1} << 29;

/// Sorted, not touching.
std::vector<std::pair<Slot, Slot>> merged(std::vector<std::pair<Slot, Slot>> intervals) {
  std::sort(intervals.begin(), intervals.end());
  std::vector<std::pair<Slot, Slot>> out;
  for (const auto& [from, to] : intervals) {
    if (to <= from) continue;
    if (!out.empty() && from <= out.back().second) {
      out.back().second = std::max(out.back().second, to);
    } else {
      out.emplace_back(from, to);
    }
  }
  return out;
}

}  // namespace

Occupancy::Occupancy(const Problem& problem, const std::vector<Taken>& taken)
    : problem_(problem), taken_(taken) {
  for (std::size_t r = 0; r < problem.resources.size(); ++r) {
    for (const Away& away : problem.resources[r].away) {
      taken_.push_back({static_cast<int>(r), away.amount, away.from, away.until});
    }
  }
}

Occupancy::Intervals Occupancy::blocked_resource(int resource, int amount) const {
  const Resource& r = problem_.resources[at(resource)];
  const int spare = r.count - amount;
  if (spare < 0) return {{-for_ever, for_ever}};
  Intervals out;
  std::map<Slot, int> change;
  for (const Taken& t : taken_) {
    if (t.place != resource || t.to <= t.from) continue;
    change[t.from] += t.what;
    change[t.to] -= t.what;
  }
  int used = 0;
  Slot since = 0;
  for (const auto& [slot, by] : change) {
    if (used > spare) out.emplace_back(since, slot);
    used += by;
    since = slot;
  }
  if (r.calendar >= 0) {
    Slot closed = -for_ever;
    for (const auto& [first, end] : problem_.calendars[at(r.calendar)].spans) {
      out.emplace_back(closed, first);
      closed = end;
    }
    out.emplace_back(closed, for_ever);
  }
  return merged(std::move(out));
}

Occupancy::Intervals Occupancy::blocked_room(int place, int mode) const {
  Intervals out;
  for (const Taken& t : taken_) {
    if (t.place == place && t.what != mode) out.emplace_back(t.from, t.to);
  }
  return merged(std::move(out));
}

const Occupancy::Intervals& Occupancy::blocked(int place, int what) {
  const auto [entry, fresh] = blocked_.try_emplace({place, what});
  if (fresh) {
    const bool room = at(place) >= problem_.resources.size();
    entry->second = room ? blocked_room(place, what) : blocked_resource(place, what);
  }
  return entry->second;
}

Slot Occupancy::free_until(int place, int what, Slot from) {
  const Intervals& intervals = blocked(place, what);
  const auto next = std::upper_bound(intervals.begin(), intervals.end(), from,
                                     [](Slot s, const auto& i) { return s < i.second; });
  return next == intervals.end() ? for_ever : std::max(from, next->first);
}

void Occupancy::take_out(Bits& domain, int place, int what, const Fn& from, const Fn& to) {
  for (const auto& [first, end] : blocked(place, what)) {
    if (from.table == nullptr && to.table == nullptr) {
      if (to.add > from.add) domain.clear_range(first - to.add + 1, end - from.add);
      continue;
    }
    // Starts that begin before the end, from the last one back; no further than `to` needs.
    Slot s = domain.previous(from.table == nullptr ? end - from.add - 1 : domain.size() - 1);
    for (; s >= 0; s = domain.previous(s - 1)) {
      const Slot begins = from(s);
      const Slot ends = to(s);
      if (begins < end && ends > first && ends > begins) domain.reset(s);
      if (to.rising && ends <= first) break;
    }
  }
}

bool Occupancy::limits(int place, int what) { return !blocked(place, what).empty(); }

}  // namespace wetout::search
