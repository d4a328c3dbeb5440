#include "attended_hours.hpp"

#include <algorithm>

namespace wetout::schedule {

AttendedHours::AttendedHours(const std::vector<PersonSpans>& people, const Grid& grid, Slot begin)
    : slots_(grid.slots) {
  Spans all;
  for (const PersonSpans& person : people) {
    Spans& spans = spans_.emplace_back();
    for (const WorkingSpan& span : person.spans) {
      const Slot from = std::max(begin, grid.not_before(span.from));
      const Slot until = std::min(grid.slots, grid.not_after(span.until));
      if (from < until) spans.emplace_back(from, until);
    }
    all.insert(all.end(), spans.begin(), spans.end());
    alike_ = alike_ && spans == spans_.front();
  }
  std::sort(all.begin(), all.end());
  for (const auto& span : all) {
    auto& joined = together_.spans;
    if (!joined.empty() && span.first <= joined.back().second) {
      joined.back().second = std::max(joined.back().second, span.second);
    } else {
      joined.push_back(span);
    }
  }
}

std::vector<search::Away> AttendedHours::away() const {
  if (alike_) return {};
  std::vector<int> change(static_cast<std::size_t>(slots_) + 1, 0);
  for (const Spans& spans : spans_) {
    for (const auto& [from, until] : spans) {
      ++change[static_cast<std::size_t>(from)];
      --change[static_cast<std::size_t>(until)];
    }
  }
  std::vector<search::Away> out;
  int there = 0;
  for (Slot slot = 0; slot < slots_; ++slot) {
    there += change[static_cast<std::size_t>(slot)];
    const int missing = static_cast<int>(spans_.size()) - there;
    if (missing == 0) continue;
    if (!out.empty() && out.back().until == slot && out.back().amount == missing) {
      out.back().until = slot + 1;
    } else {
      out.push_back({slot, slot + 1, missing});
    }
  }
  return out;
}

const search::Bits& AttendedHours::starts(Slot attended) {
  const auto [entry, fresh] = starts_.try_emplace(attended, slots_);
  if (fresh) {
    for (const Spans& spans : spans_) {
      for (const auto& [from, until] : spans) entry->second.set_range(from, until - attended + 1);
    }
  }
  return entry->second;
}

}  // namespace wetout::schedule
