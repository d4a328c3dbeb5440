// What every engine shares: when to stop, the best so far, who is told.
#pragma once

#include <optional>

#include "wetout/search/solve.hpp"

namespace wetout::search {

class Run {
 public:
  Run(const Problem& problem, const Objective& objective, const Limits& limits)
      : problem_(problem), objective_(objective), limits_(limits) {}

  /// One more label, node or trial. True from the first time that a limit is reached.
  bool step();
  /// Looks at clock and interruption now.
  bool look();
  [[nodiscard]] bool stopped() const { return stopped_; }
  [[nodiscard]] double elapsed_s() const { return limits_.elapsed_s ? limits_.elapsed_s() : 0.0; }
  /// Seconds left, or a day without a limit.
  [[nodiscard]] double left_s() const;

  /// Keeps the schedule when it is the best so far.
  bool offer(Schedule schedule);
  /// Nothing is better than `bound`.
  void raise_bound(const Value& bound);

  [[nodiscard]] const std::optional<Schedule>& best() const { return best_; }
  [[nodiscard]] const Value& value() const { return value_; }
  [[nodiscard]] const Value& bound() const { return bound_; }
  [[nodiscard]] const Limits& limits() const { return limits_; }
  [[nodiscard]] const Problem& problem() const { return problem_; }
  [[nodiscard]] const Objective& objective() const { return objective_; }

  std::uint64_t extensions = 0;

  [[nodiscard]] std::uint64_t steps() const { return steps_; }

 private:
  void tell();

  const Problem& problem_;
  const Objective& objective_;
  const Limits& limits_;
  std::uint64_t steps_ = 0;
  bool stopped_ = false;
  std::optional<Schedule> best_;
  Value value_;
  Value bound_;
};

}  // namespace wetout::search
