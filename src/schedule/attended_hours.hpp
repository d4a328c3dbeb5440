// The hours of people on the grid: when something can be attended from its start to its end.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "wetout/schedule/grid.hpp"
#include "wetout/schedule/setting.hpp"
#include "wetout/search/bits.hpp"
#include "wetout/search/problem.hpp"

namespace wetout::schedule {

class AttendedHours {
 public:
  /// From slot `begin` on.
  AttendedHours(const std::vector<PersonSpans>& people, const Grid& grid, Slot begin);

  /// When anybody works: the objective counts by these spans.
  [[nodiscard]] const search::Calendar& together() const { return together_; }
  /// Everybody has the same hours.
  [[nodiscard]] bool alike() const { return alike_; }
  /// How many are not there, where they have different hours.
  [[nodiscard]] std::vector<search::Away> away() const;
  /// Starts at which one and the same person is there for so many slots.
  [[nodiscard]] const search::Bits& starts(Slot attended);

 private:
  using Spans = std::vector<std::pair<Slot, Slot>>;

  Slot slots_;
  std::vector<Spans> spans_;  ///< of each person
  search::Calendar together_;
  bool alike_ = true;
  std::map<Slot, search::Bits> starts_;
};

}  // namespace wetout::schedule
