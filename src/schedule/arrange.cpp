#include "wetout/schedule/arrange.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace wetout::schedule {
namespace {

using Placed = PlacedStep::State;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

std::chrono::seconds whole(units::Duration span) {
  return std::chrono::seconds(std::llround(units::in_seconds(span)));
}

// Who does what: steps by start; whoever is free and stays longest needed is not asked first. With
// people of different hours a step may have to go to the one who has the time: all are tried.
class People {
 public:
  People(const Setting& setting, std::vector<PlacedStep>& steps) : people_(setting.people) {
    for (PlacedStep& step : steps) {
      if (step.state != Placed::done) steps_.push_back(&step);
    }
  }
  void assign() {
    tries_ = 100000;
    if (people_.size() > 1 && place(0)) return;
    // One person, or times outside anybody's hours that somebody fixed.
    for (PlacedStep* step : steps_) {
      step->person = -1;
      for (std::size_t p = 0; p < people_.size() && step->person < 0; ++p) {
        if (people_.size() == 1 || free(*step, static_cast<int>(p))) {
          step->person = static_cast<int>(p);
        }
      }
    }
  }

 private:
  [[nodiscard]] bool there(const PlacedStep& step, int person) const {
    if (step.state == Placed::fixed) return true;
    const auto& spans = people_[u(person)].spans;
    return std::any_of(spans.begin(), spans.end(), [&](const WorkingSpan& span) {
      return span.from <= step.start && step.attended_until <= span.until;
    });
  }
  [[nodiscard]] bool free(const PlacedStep& step, int person) const {
    return there(step, person) &&
           std::none_of(steps_.begin(), steps_.end(), [&](const PlacedStep* other) {
             return other != &step && other->person == person &&
                    other->start < step.attended_until && step.start < other->attended_until;
           });
  }
  bool place(std::size_t next) {
    if (next == steps_.size()) return true;
    PlacedStep& step = *steps_[next];
    for (int person = 0; person < static_cast<int>(people_.size()); ++person) {
      if (!free(step, person)) continue;
      step.person = person;
      if (place(next + 1)) return true;
      step.person = -1;
      if (--tries_ <= 0) return false;
    }
    return false;
  }

  const std::vector<PersonSpans>& people_;
  std::vector<PlacedStep*> steps_;
  int tries_ = 0;
};

}  // namespace

Arrangement arrange(const Setting& setting, const Arranging& arranging,
                    const search::Limits& limits) {
  Arrangement out;
  out.chosen = arranging.decided;
  if (arranging.problem.ops.empty()) {
    out.answer.state = search::State::proved;
  } else {
    out.answer = search::solve(arranging.problem, arranging.objective, limits);
  }
  const search::Schedule& found = out.answer.schedule;
  for (std::size_t b = 0; b < setting.boards.size(); ++b) {
    const BoardSetting& board = setting.boards[b];
    for (std::size_t i = 0; i < board.steps.steps.size(); ++i) {
      const int place_b = static_cast<int>(b), place_i = static_cast<int>(i);
      if (const auto& fact = board.facts[i]) {
        out.steps.push_back({place_b, place_i, fact->start, fact->end, Placed::done});
        continue;
      }
      const int op = arranging.op[b][i];
      if (op < 0 || found.start.empty() || !found.start[u(op)]) continue;
      const time::Instant start = setting.grid.at(*found.start[u(op)]);
      out.steps.push_back({place_b, place_i, start, start + whole(board.steps.steps[i].attended),
                           board.fixed[i] ? Placed::fixed : Placed::planned});
    }
    for (std::size_t g = 0; g < board.steps.groups.size(); ++g) {
      const int group = arranging.group[b][g];
      if (group >= 0 && !found.choice.empty()) out.chosen[b][g] = found.choice[u(group)];
    }
  }
  std::stable_sort(out.steps.begin(), out.steps.end(),
                   [](const PlacedStep& a, const PlacedStep& c) { return a.start < c.start; });
  People(setting, out.steps).assign();
  return out;
}

search::State fits(const Setting& setting, const search::Limits& limits) {
  Arranging quick = arranging(setting);
  if (quick.problem.ops.empty()) return search::State::proved;
  if (search::possible_starts(quick.problem).empty()) return search::State::infeasible;
  // The end of the last step alone: the search stops at the first span that works.
  quick.objective.terms.resize(1);
  return search::solve(quick.problem, quick.objective, limits).state;
}

}  // namespace wetout::schedule
