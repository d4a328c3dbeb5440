// What else would do: the best schedules that put one coat into another working span.
#include <algorithm>
#include <set>
#include <utility>

#include "scheduling.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using schedule::PlacedStep;
using time::Instant;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

// "Sat 13 Jun" of "Sat 13 Jun 2026 14:30".
std::string day(Instant at, const time::Zone& zone) {
  const std::string wall = time::print_wall(at, zone);
  return wall.substr(0, wall.size() - sizeof(" 2026 14:30") + 1);
}

struct Found {
  report::Alternative told;
  search::Value value;
};

}  // namespace

std::vector<report::Alternative> alternatives(const Scheduling& s, int count,
                                              const search::Limits& limits) {
  std::vector<Found> found;
  std::set<std::vector<std::optional<schedule::Slot>>> seen{s.arrangement.answer.schedule.start};
  for (const PlacedStep& placed : s.arrangement.steps) {
    if (placed.state != PlacedStep::State::planned) continue;
    const schedule::Step& step = s.step(placed.board, placed.step);
    if (!step.is_wet()) continue;
    schedule::Arranging other = s.arranging;
    search::Operation& op = other.problem.ops[u(other.op[u(placed.board)][u(placed.step)])];
    const schedule::Grid& grid = s.setting().grid;
    for (const auto& [from, until] : other.problem.calendars.front().spans) {
      if (grid.at(from) <= placed.start && placed.start < grid.at(until)) {
        op.allowed.clear_range(from, until);
      }
    }
    const schedule::Arrangement arrangement = schedule::arrange(s.setting(), other, limits);
    if (!arrangement.fits() || !seen.insert(arrangement.answer.schedule.start).second) continue;
    Found one;
    one.value = arrangement.answer.value;
    Instant last = s.asked.from, now = placed.start;
    for (const PlacedStep& there : arrangement.steps) {
      if (there.state == PlacedStep::State::done) continue;
      last = std::max(last, there.attended_until);
      if (there.board == placed.board && there.step == placed.step) now = there.start;
      one.told.starts.push_back({s.id(there.board, there.step), s.told(there.start)});
    }
    one.told.what = step.title + " on " + day(now, s.asked.zone) + " instead of " +
                    day(placed.start, s.asked.zone);
    one.told.finish = s.told(last);
    one.told.objective = objective_of(s, arrangement);
    found.push_back(std::move(one));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Found& a, const Found& b) { return a.value < b.value; });
  std::vector<report::Alternative> best;
  for (Found& one : found) {
    if (static_cast<int>(best.size()) == count) break;
    best.push_back(std::move(one.told));
  }
  return best;
}

}  // namespace wetout::work
