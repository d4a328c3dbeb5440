#include "wetout/schedule/arrange.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>
#include <utility>

#include "attended_hours.hpp"
#include "who.hpp"

namespace wetout::schedule {
namespace {

using Placed = PlacedStep::State;
using Only = std::vector<std::vector<int>>;  // of each step of each board: the person, or -1

// Of the time that is left: what the search may take where work may have to be shared out anew,
// and what each search after it may.
constexpr double first_share = 0.7, next_share = 0.5;
constexpr int most_searches = 100;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

std::chrono::seconds whole(units::Duration span) {
  return std::chrono::seconds(std::llround(units::in_seconds(span)));
}

Arrangement placed(const Setting& setting, const Arranging& arranging, search::Answer answer) {
  Arrangement out;
  out.answer = std::move(answer);
  out.chosen = arranging.decided;
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
  return out;
}

// People with hours of their own are counted, not named, in the search: now and then there are
// enough of them at every time, and yet nobody who could do one step from start to end. That step
// is then given to each of them in turn, and the search goes on with the best.
class SharingOut {
 public:
  SharingOut(const Setting& setting, const Arranging& arranging, const search::Limits& limits)
      : s_(setting), asked_(arranging), limits_(limits) {
    for (const BoardSetting& board : s_.boards) nobody_.emplace_back(board.steps.steps.size(), -1);
  }

  Arrangement run() {
    Arrangement first = solve(asked_, s_.boards.size() > 1 && differ() ? first_share : 1.0);
    if (!first.fits() || share_out(s_, nobody_, first.steps)) return first;
    auto found = shared_out(first, {asked_, nobody_, std::vector(s_.people.size(), -1)});
    // Else nothing better is known than a schedule in which nobody is named for a step.
    Arrangement& best = found ? *found : first;
    best.answer.state = search::State::feasible;
    best.answer.bound = first.answer.bound;
    best.answer.bound_leaves_out = first.answer.bound_leaves_out;
    if (!best.answer.bound_leaves_out.empty()) best.answer.bound_leaves_out += ", ";
    best.answer.bound_leaves_out += "who does what";
    return std::move(best);
  }

 private:
  /// The problem with steps given to people.
  struct Given {
    Arranging arranging;
    Only only;
    std::vector<int> resource;  // of each person
  };

  [[nodiscard]] bool differ() const {
    return std::any_of(s_.people.begin(), s_.people.end(), [&](const PersonSpans& person) {
      return person.spans != s_.people.front().spans;
    });
  }

  Arrangement solve(const Arranging& arranging, double share) {
    search::Limits limits = limits_;
    if (limits_.elapsed_s && limits_.time_limit_s > 0.0) {
      const double now = limits_.elapsed_s();
      limits.time_limit_s = now + share * std::max(0.0, limits_.time_limit_s - now);
    }
    return placed(s_, arranging, search::solve(arranging.problem, arranging.objective, limits));
  }

  // Everybody who could do the step that is in the way, the best first.
  std::optional<Arrangement> shared_out(const Arrangement& found, const Given& given) {
    const PlacedStep* step = in_the_way(found, given.only);
    if (step == nullptr) return std::nullopt;
    std::vector<std::pair<Arrangement, Given>> next;
    for (int person = 0; u(person) < s_.people.size() && searches_ < most_searches; ++person) {
      Given one = given;
      give(*step, person, one);
      ++searches_;
      Arrangement there =
          solve(one.arranging, next_share / static_cast<double>(s_.people.size() - u(person)));
      if (there.fits()) next.emplace_back(std::move(there), std::move(one));
    }
    std::stable_sort(next.begin(), next.end(), [](const auto& a, const auto& b) {
      return a.first.answer.value < b.first.answer.value;
    });
    for (auto& [there, one] : next) {
      if (share_out(s_, one.only, there.steps)) return std::move(there);
      if (auto all = shared_out(there, one)) return all;
    }
    return std::nullopt;
  }

  // The first that nobody does; if it has been given to somebody, what keeps them from it.
  static const PlacedStep* in_the_way(const Arrangement& found, const Only& only) {
    const auto given = [&](const PlacedStep& step) { return only[u(step.board)][u(step.step)]; };
    for (const PlacedStep& step : found.steps) {
      if (step.state != Placed::planned || step.person >= 0) continue;
      if (given(step) < 0) return &step;
      for (const PlacedStep& other : found.steps) {
        if (other.state != Placed::planned || other.person != given(step)) continue;
        const bool meanwhile =
            other.start < step.attended_until && step.start < other.attended_until;
        if (meanwhile && given(other) < 0) return &other;
      }
    }
    return nullptr;
  }

  void give(const PlacedStep& step, int person, Given& given) const {
    given.only[u(step.board)][u(step.step)] = person;
    auto& problem = given.arranging.problem;
    int& resource = given.resource[u(person)];
    if (resource < 0) {
      resource = static_cast<int>(problem.resources.size());
      problem.resources.push_back({s_.people[u(person)].id, 1, -1});
    }
    const int op = given.arranging.op[u(step.board)][u(step.step)];
    search::Operation& operation = problem.ops[u(op)];
    problem.holds.push_back(
        {resource, 1, {op, search::at_start}, {op, search::at_end}, operation.when});
    AttendedHours hours({s_.people[u(person)]}, s_.grid, s_.begin);
    operation.allowed &= hours.starts(std::get<search::Slot>(operation.attended));
  }

  const Setting& s_;
  const Arranging& asked_;
  const search::Limits& limits_;
  Only nobody_;
  int searches_ = 0;
};

}  // namespace

Arrangement arrange(const Setting& setting, const Arranging& arranging,
                    const search::Limits& limits) {
  if (arranging.problem.ops.empty()) {
    search::Answer nothing_to_do;
    nothing_to_do.state = search::State::proved;
    return placed(setting, arranging, std::move(nothing_to_do));
  }
  return SharingOut(setting, arranging, limits).run();
}

search::State fits(const Setting& setting, const search::Limits& limits) {
  Arranging quick = arranging(setting);
  if (quick.problem.ops.empty()) return search::State::proved;
  if (search::possible_starts(quick.problem).empty()) return search::State::infeasible;
  // The end of the last step alone: the search stops at the first span that works.
  quick.objective.terms.resize(1);
  return arrange(setting, quick, limits).answer.state;
}

}  // namespace wetout::schedule
