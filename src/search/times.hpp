// When events of a started operation happen, read straight from the problem.
#pragma once

#include <algorithm>
#include <variant>

#include "wetout/search/objective.hpp"
#include "wetout/search/problem.hpp"

namespace wetout::search {

inline std::size_t at(int index) { return static_cast<std::size_t>(index); }

inline Slot value(const Map& map, Slot start) {
  if (const auto* offset = std::get_if<Slot>(&map)) return start + *offset;
  return std::get<Table>(map).at[at(start)];
}

inline const Map& map_of(const Problem& problem, EventRef ref) {
  static const Map start = Slot{0};
  const Operation& op = problem.ops[at(ref.op)];
  if (ref.event == at_start) return start;
  return ref.event == at_end ? op.attended : op.events[at(ref.event)].at;
}

inline Slot time_of(const Problem& problem, EventRef ref, Slot start) {
  return value(map_of(problem, ref), start);
}

inline bool chosen(const Schedule& schedule, Option when) {
  return when.group < 0 || schedule.choice[at(when.group)] == when.option;
}

/// The key of LastEnd for attended work [start, end).
inline Slot end_key(const Problem& problem, int calendar, Slot start, Slot end) {
  if (calendar < 0) return end;
  const auto& spans = problem.calendars[at(calendar)].spans;
  const Slot inside = std::max(start, end - 1);
  auto after = std::upper_bound(spans.begin(), spans.end(), inside,
                                [](Slot s, const auto& span) { return s < span.first; });
  return after == spans.begin() ? 0 : std::prev(after)->first;
}

/// Operations in the order of their ids.
std::vector<int> by_id(const Problem& problem);

inline int level_of(Slot left, Slot scale, int per_scale) {
  if (left <= 0) return 0;
  return static_cast<int>(std::int64_t{left} * per_scale / scale);
}

}  // namespace wetout::search
