#include "wetout/schedule/hours.hpp"

#include <algorithm>
#include <chrono>

namespace wetout::schedule {
namespace {

using time::Instant;
using time::WallReading;

// A clock that is put forward over `wall` shows it never: the change itself is meant. It lies where
// the reading before the change is as late as the wall time is past it; found by halving, for zones
// tell offsets only.
Instant change_between(const time::Zone& zone, Instant before, Instant after) {
  const auto old = zone.offset_at(before);
  while (after - before > std::chrono::seconds(1)) {
    const Instant middle = before + (after - before) / 2;
    (zone.offset_at(middle) == old ? before : after) = middle;
  }
  return after;
}

Instant begins(time::WallTime wall, const time::Zone& zone) {
  const WallReading reading = zone.read(wall);
  if (reading.kind != WallReading::Kind::skipped) return reading.first;
  return change_between(zone, reading.second, reading.first);
}

Instant ends(time::WallTime wall, const time::Zone& zone) {
  const WallReading reading = zone.read(wall);
  if (reading.kind == WallReading::Kind::twice) return reading.second;
  if (reading.kind == WallReading::Kind::once) return reading.first;
  return change_between(zone, reading.second, reading.first);
}

bool is_off(const WeekHours& hours, time::Date day) {
  return std::any_of(hours.off.begin(), hours.off.end(), [&](const time::DateRange& range) {
    return range.first <= day && day <= range.last;
  });
}

}  // namespace

void add_span(std::vector<WorkingSpan>& spans, WorkingSpan more) {
  std::erase_if(spans, [&](const WorkingSpan& span) {
    const bool apart = span.until < more.from || more.until < span.from;
    if (!apart) more = {std::min(span.from, more.from), std::max(span.until, more.until)};
    return !apart;
  });
  const auto after = std::find_if(spans.begin(), spans.end(),
                                  [&](const WorkingSpan& span) { return span.from > more.from; });
  spans.insert(after, more);
}

std::vector<WorkingSpan> working_spans(const WeekHours& hours, const time::Zone& zone, Instant from,
                                       Instant until) {
  using namespace std::chrono;
  std::vector<WorkingSpan> spans;
  const auto last = floor<days>(zone.wall(until)) + days(1);
  for (auto day = floor<days>(zone.wall(from)) - days(1); day <= last; day += days(1)) {
    const auto single = hours.single.find(time::Date(day));
    if (single == hours.single.end() && is_off(hours, time::Date(day))) continue;
    const unsigned weekday = std::chrono::weekday(day).iso_encoding() - 1;
    for (const time::DaySpan& span :
         single != hours.single.end() ? single->second : hours.days[weekday]) {
      const Instant begin = std::max(from, begins(time::WallTime(day) + span.from, zone));
      const Instant end = std::min(until, ends(time::WallTime(day) + span.until, zone));
      if (begin < end) spans.push_back({begin, end});
    }
  }
  std::sort(spans.begin(), spans.end(),
            [](const WorkingSpan& a, const WorkingSpan& b) { return a.from < b.from; });
  std::vector<WorkingSpan> joined;
  for (const WorkingSpan& span : spans) {
    if (!joined.empty() && span.from <= joined.back().until) {
      joined.back().until = std::max(joined.back().until, span.until);
    } else {
      joined.push_back(span);
    }
  }
  return joined;
}

}  // namespace wetout::schedule
