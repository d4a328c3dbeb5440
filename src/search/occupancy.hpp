// Places kept by others: until when is one free?
#pragma once

#include <map>
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
  [[nodiscard]] Slot free_until(int place, int what, Slot from);

  /// False when `place` is always free for `what`.
  [[nodiscard]] bool limits(int place, int what);

  /// Takes out of `domain` the starts of one operation for which `place` is not to be had from
  /// value `from` to value `to`.
  void take_out(Bits& domain, int place, int what, const Fn& from, const Fn& to);

 private:
  using Intervals = std::vector<std::pair<Slot, Slot>>;

  /// When `what` is not to be had, in order.
  const Intervals& blocked(int place, int what);
  [[nodiscard]] Intervals blocked_resource(int resource, int amount) const;
  [[nodiscard]] Intervals blocked_room(int place, int mode) const;

  const Problem& problem_;
  std::vector<Taken> taken_;
  std::map<std::pair<int, int>, Intervals> blocked_;
};

}  // namespace wetout::search
