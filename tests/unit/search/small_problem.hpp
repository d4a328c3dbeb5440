// Two steps of one person, small enough to work out by hand.
#pragma once

#include "wetout/search/objective.hpp"

namespace wetout::search::test {

/// Twenty slots; work 0-6 and 10-16. "wet" takes 2 and is tack-free 5 after its start, or 9 when it
/// starts from 4 on. "next" takes 3, not before tack-free and at most 8 after the end of "wet", or,
/// choosing the other option of "way", after "scuff", which takes 1.
inline Problem small_problem() {
  Problem p;
  p.horizon = 20;
  p.calendars.push_back({{{0, 6}, {10, 16}}});
  p.groups.push_back({"way", 2, {}});
  p.resources.push_back({"person", 1, -1});
  Table tack;
  for (Slot s = 0; s < p.horizon; ++s) tack.at.push_back(s < 4 ? s + 5 : s + 9);
  const auto add = [&](const char* id, Slot attended, Option when) {
    Operation& op = p.ops.emplace_back();
    op.id = id;
    op.attended = attended;
    op.calendar = 0;
    op.when = when;
    const int index = static_cast<int>(p.ops.size()) - 1;
    p.holds.push_back({0, 1, {index, at_start}, {index, at_end}, {}});
  };
  add("wet", 2, {});
  add("next", 3, {});
  add("scuff", 1, {0, 1});
  p.ops[0].events.push_back({"tack-free", tack});
  const auto lag = [&](EventRef from, EventRef to) -> Lag& {
    Lag& l = p.lags.emplace_back();
    l.from = from;
    l.to = to;
    return l;
  };
  lag({0, 0}, {1, at_start}).min = Slot{0};
  Lag& window = lag({0, at_end}, {1, at_start});
  window.max = Slot{8};
  window.scale = 10;
  window.when = {0, 0};
  lag({0, 0}, {2, at_start}).min = Slot{0};
  lag({2, at_end}, {1, at_start}).min = Slot{0};
  return p;
}

}  // namespace wetout::search::test
