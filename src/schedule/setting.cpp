#include "wetout/schedule/setting.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "wetout/base/words.hpp"

namespace wetout::schedule {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

std::optional<std::size_t> find(const BoardSteps& steps, const StepName& name) {
  for (std::size_t i = 0; i < steps.steps.size(); ++i) {
    if (steps.steps[i].name == name) return i;
  }
  return std::nullopt;
}

base::Problem unknown(const BoardSetting& board, const StepName& name) {
  std::vector<std::string> known;
  for (const Step& step : board.steps.steps) known.push_back(to_string(step.name));
  const auto near = base::nearest(to_string(name), known);
  return {.code = "step.unknown",
          .message = board.job + " has no such step",
          .found = to_string(name),
          .expected = "a step such as \"" + known.front() + "\"",
          .hint = near ? "did you mean \"" + *near + "\"?" : ""};
}

// Nobody can look at a coat half an hour after it was poured when that is two hours ago.
void mark_missed(BoardSetting& board, time::Instant now) {
  for (const Link& link : board.steps.links) {
    const Step& step = board.steps.steps[u(link.to)];
    const auto& fact = board.facts[u(link.from)];
    if (!fact || !link.max || link.moment != Moment::end || step.name.word != StepWord::watch) {
      continue;
    }
    const auto late = std::chrono::seconds(std::llround(units::in_seconds(*link.max)));
    if (fact->end + late < now && !board.facts[u(link.to)]) board.passed[u(link.to)] = true;
  }
}

// Whatever a done step waited for is over too. Steps are in the order of the work.
void mark_passed(BoardSetting& board) {
  const auto& links = board.steps.links;
  std::vector<bool> over(board.steps.steps.size(), false);
  for (std::size_t i = 0; i < over.size(); ++i) over[i] = board.facts[i].has_value();
  for (std::size_t step = over.size(); step-- > 0;) {
    if (!over[step]) continue;
    for (const Link& link : links) {
      if (u(link.to) == step && link.min) over[u(link.from)] = true;
    }
  }
  for (std::size_t i = 0; i < over.size(); ++i) {
    board.passed[i] = !board.facts[i] && (over[i] || board.passed[i]);
  }
}

}  // namespace

base::Problems put_facts(BoardSetting& board, const std::vector<Fact>& facts,
                         const std::vector<FixedStart>& fixed, time::Instant now) {
  const std::size_t count = board.steps.steps.size();
  board.facts.assign(count, std::nullopt);
  board.passed.assign(count, false);
  board.fixed.assign(count, std::nullopt);
  base::Problems problems;
  // What was done beyond the steps that are planned hinders nobody.
  for (const Fact& fact : facts) {
    if (const auto step = find(board.steps, fact.name)) board.facts[*step] = fact;
  }
  mark_missed(board, now);
  mark_passed(board);
  for (std::size_t i = 0; i < count; ++i) {
    if (!board.passed[i] || !board.steps.steps[i].is_wet()) continue;
    const std::string name = board.steps.steps[i].name.coat;
    problems.push_back({.code = "schedule.wet_unknown",
                        .message = "something that follows " + name +
                                   " has been done, but not recorded is when " + name + " was",
                        .key = board.job + "/" + name,
                        .hint = "record it: wetout record " + board.job + " " + name +
                                " --start TIME --at TIME --done"});
  }
  for (const FixedStart& one : fixed) {
    const auto step = find(board.steps, one.name);
    if (!step) {
      problems.push_back(unknown(board, one.name));
    } else if (board.facts[*step] || board.passed[*step]) {
      problems.push_back({.code = "step.done",
                          .message = "it has been done already",
                          .found = to_string(one.name),
                          .expected = "a step that is still to be done"});
    } else {
      board.fixed[*step] = one.start;
    }
  }
  return problems;
}

Slot slots_of_films(const BoardSetting& board, const Grid& grid, const StepDefaults& defaults) {
  Slot films = 0;
  for (const int wet : board.steps.wets) films += board.facts[u(wet)] ? 1 : 0;
  if (films == 0) return 0;
  double longest_s = defaults.visit_gap.value * 60.0;
  for (const Link& link : board.steps.links) {
    if (link.max && link.moment == Moment::end) {
      longest_s = std::max(longest_s, units::in_seconds(*link.max) + grid.step_s());
    }
  }
  return films + static_cast<Slot>(std::ceil(longest_s / grid.step_s()));
}

FilmSpans film_of(const Setting& setting, const BoardSetting& board, int coat, time::Instant start,
                  time::Instant end, const Fact* fact) {
  const FilmSource& source = *setting.sources.at(board.resins[u(coat)]);
  const time::Instant begun[] = {start, end};
  const auto both = source.spans(*setting.air, begun);
  FilmSpans at;
  for (const resin::Milestone m : resin::milestones) {
    const bool from_start =
        m == resin::Milestone::trim_until || m == resin::Milestone::recoat_until;
    const double after = both[from_start ? 0 : 1][m];
    at[m] = after < never ? setting.grid.seconds(begun[from_start ? 0 : 1]) + after : never;
  }
  if (fact == nullptr) return at;
  for (const auto& [m, when] : fact->observed) at[m] = setting.grid.seconds(when);
  return at;
}

}  // namespace wetout::schedule
