// The best order of the work: a setting as a search problem, and its answer as times.
#pragma once

#include <optional>
#include <vector>

#include "wetout/schedule/setting.hpp"
#include "wetout/search/objective.hpp"
#include "wetout/search/problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::schedule {

/// Which step of which board an operation is.
struct OperationOf {
  int board = -1;
  int step = -1;
  bool done = false;  ///< stands for the film of a step that has been done
};

/// A setting as a problem. What has been decided is no group any more.
struct Arranging {
  search::Problem problem;
  search::Objective objective;
  std::vector<OperationOf> of;                        ///< of each operation
  std::vector<std::vector<int>> op;                   ///< of each step of each board, -1: none
  std::vector<std::vector<int>> group;                ///< of each group of each board, -1: decided
  std::vector<std::vector<int>> decided;              ///< option of those, -1: open
  std::vector<std::vector<std::vector<Verdict>>> at;  ///< limits of each coat at each slot
};
Arranging arranging(const Setting& setting);

struct PlacedStep {
  int board = -1;
  int step = -1;
  time::Instant start, attended_until;
  enum class State { planned, fixed, done } state = State::planned;
  int person = -1;  ///< index in Setting::people; -1: not known
};

struct Arrangement {
  search::Answer answer;
  std::vector<PlacedStep> steps;         ///< by start; those done too
  std::vector<std::vector<int>> chosen;  ///< option of each group of each board, -1: open
  [[nodiscard]] bool fits() const { return !answer.schedule.start.empty(); }
};
Arrangement arrange(const Setting& setting, const Arranging& arranging,
                    const search::Limits& limits);

/// Nothing but whether there is a schedule at all.
search::State fits(const Setting& setting, const search::Limits& limits);

}  // namespace wetout::schedule
