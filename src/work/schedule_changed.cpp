// What moved since the schedule before, and why.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "scheduling.hpp"
#include "wetout/time/read.hpp"

namespace wetout::work {
namespace {

using schedule::PlacedStep;
using time::Instant;

std::optional<Instant> read(const std::string& text) {
  const auto at = time::read_instant(text, time::Zone());
  return at ? std::optional(*at) : std::nullopt;
}

}  // namespace

std::vector<report::ChangedStep> changed(const Scheduling& s,
                                         const report::ScheduleDocument& before, Instant now) {
  std::map<std::string, Instant> was;
  std::set<std::string> done;
  for (const report::TimelineStep& step : before.timeline) {
    if (const auto at = read(step.start)) was[step.id] = *at;
    if (step.state == report::StepState::done) done.insert(step.id);
  }
  std::vector<report::ChangedStep> changes;
  const Closing closing(s);
  std::map<std::string, bool> jobs;
  for (const schedule::BoardSetting& board : s.setting().boards) jobs[board.job] = true;
  // The first that moved takes along those that follow it.
  std::set<std::pair<int, int>> moved;
  for (const PlacedStep& placed : s.arrangement.steps) {
    const std::string id = s.id(placed.board, placed.step);
    const auto old = was.find(id);
    report::ChangedStep change;
    change.id = id;
    change.now = s.told(placed.start);
    if (old == was.end()) {
      change.why = placed.state == PlacedStep::State::done ? "done" : "new";
      // Of a board that was not in it, everything is new.
      const bool known = std::any_of(was.begin(), was.end(), [&](const auto& one) {
        return one.first.rfind(s.board(placed.board).job + "/", 0) == 0;
      });
      if (known) changes.push_back(std::move(change));
      continue;
    }
    const Instant then = old->second;
    was.erase(old);
    if (then == placed.start) continue;
    moved.insert({placed.board, placed.step});
    change.was = s.told(then);
    if (placed.state == PlacedStep::State::done) {
      if (done.contains(id)) continue;
      change.why = then < placed.start ? "done later than planned" : "done earlier than planned";
    } else if (placed.state == PlacedStep::State::fixed) {
      change.why = "fixed";
    } else if (then < s.asked.from || then < now) {
      change.why = "its time is over";
    } else {
      const schedule::Slot slot = s.setting().grid.not_before(then);
      const auto closed = slot < s.setting().grid.slots
                              ? closing.at(placed.board, placed.step, slot)
                              : std::optional(Closed{"weather", "beyond the horizon"});
      const bool follows =
          std::any_of(s.board(placed.board).steps.links.begin(),
                      s.board(placed.board).steps.links.end(), [&](const schedule::Link& link) {
                        return link.to == placed.step && moved.contains({placed.board, link.from});
                      });
      if (closed) {
        change.why = closed->reason;
      } else if (follows) {
        change.why = "follows a step that moved";
      } else {
        change.why = "fits better";
      }
    }
    changes.push_back(std::move(change));
  }
  for (const auto& [id, then] : was) {
    if (!jobs.contains(id.substr(0, id.find('/')))) continue;
    if (done.contains(id)) continue;
    changes.push_back({id, s.told(then), std::nullopt, "not needed any more"});
  }
  return changes;
}

}  // namespace wetout::work
