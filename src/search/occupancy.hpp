// Places kept by others: until when is one free?
#pragma once

#include <utility>
#include <vector>

#include "model.hpp"

namespace wetout::search {

class Occupancy {
 public:
  Occupancy(const Problem& problem, const std::vector<Taken>& taken);

  /// The first slot at or after `from` at which `what` (amount or mode) is not to be had at
  /// `place`; at most the end of the span of the resource's calendar; `from` itself when it is not
  /// free at all. A large slot when it is free for ever.
  [[nodiscard]] Slot free_until(int place, int what, Slot from) const;

  /// False when `place` is always free for `what`.
  [[nodiscard]] bool limits(int place, int what) const;

 private:
  [[nodiscard]] Slot span_end(int resource, Slot from) const;

  const Problem& problem_;
  /// Per resource: from each slot on, how many are used.
  std::vector<std::vector<std::pair<Slot, int>>> used_;
  std::vector<std::vector<Taken>> rooms_;
};

}  // namespace wetout::search
