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

bool counts_as_done(const Scheduling& s, const std::string& id) {
  for (int b = 0; b < static_cast<int>(s.setting().boards.size()); ++b) {
    const auto& passed = s.board(b).passed;
    for (std::size_t i = 0; i < passed.size(); ++i) {
      if (passed[i] && s.id(b, static_cast<int>(i)) == id) return true;
    }
  }
  return false;
}

std::optional<Instant> read(const std::string& text) {
  const auto at = time::read_instant(text, time::Zone());
  return at ? std::optional(*at) : std::nullopt;
}

}  // namespace

std::vector<report::ChangedStep> changed(const Scheduling& s,
                                         const report::ScheduleDocument& before, Instant now) {
  std::map<std::string, Instant> was;
  std::set<std::string> done, jobs_before;
  for (const report::TimelineStep& step : before.timeline) {
    if (const auto at = read(step.start)) was[step.id] = *at;
    if (step.state == report::StepState::done) done.insert(step.id);
    jobs_before.insert(step.id.substr(0, step.id.find('/')));
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
      if (jobs_before.contains(s.board(placed.board).job)) changes.push_back(std::move(change));
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
    } else {
      const schedule::Slot slot = s.setting().grid.not_before(then);
      const bool over = then < s.asked.from || then < now;
      const auto closed = over || slot >= s.setting().grid.slots
                              ? std::nullopt
                              : closing.at(placed.board, placed.step, slot);
      const bool follows =
          std::any_of(s.board(placed.board).steps.links.begin(),
                      s.board(placed.board).steps.links.end(), [&](const schedule::Link& link) {
                        return link.to == placed.step && moved.contains({placed.board, link.from});
                      });
      if (closed && closed->limit != "order" && closed->limit != "later") {
        change.why = closed->reason;
      } else if (follows) {
        change.why = "follows a step that moved";
      } else if (over) {
        change.why = "its time is over";
      } else {
        change.why = closed ? closed->reason : "fits better";
      }
    }
    changes.push_back(std::move(change));
  }
  for (const auto& [id, then] : was) {
    if (!jobs.contains(id.substr(0, id.find('/')))) continue;
    if (done.contains(id)) continue;
    const bool passed = counts_as_done(s, id);
    changes.push_back(
        {id, s.told(then), std::nullopt,
         passed ? "counts as done, as what follows it has been done" : "not needed any more"});
  }
  return changes;
}

}  // namespace wetout::work
