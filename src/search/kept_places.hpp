// Places kept by what a label has started: what of it still matters.
//
// A place is either settled (everything begun has a known end) or has something open, kept by an
// operation that is done until one that is not. On a settled place only what reaches beyond the
// label's time matters. Where something is open it goes on meanwhile, so that what is kept beside
// it is remembered as it is, not cut at the label's time; otherwise a label could stand in for
// another one that has more of the open time behind it.
#pragma once

#include <vector>

#include "label_space.hpp"

namespace wetout::search {

class KeptPlaces {
 public:
  explicit KeptPlaces(const Model& model) : model_(model) {}

  /// True when the places suffice while the operation of `step`, started at `start`, runs, and for
  /// everything that it keeps.
  bool step(const Slot* row, const Step& step, Slot start);

  /// Fills the columns of uses for the label that the last step() made, which ends at columns[0].
  void columns(const Step& step, const Layout& target, std::vector<Slot>& columns) const;

 private:
  /// What one use keeps, as far as it is known.
  struct Kept {
    bool none = true;
    bool begun = false;  ///< `from` is known
    bool ended = false;  ///< `to` is known
    Slot from = 0;
    Slot to = 0;
  };
  struct Interval {
    int place;
    int what;
    Slot from;
    Slot to;
  };

  [[nodiscard]] static Kept decode(const Slot* row, const UseStep& use);
  [[nodiscard]] Kept after(const Slot* row, const UseStep& use, Slot start) const;
  static void encode(const Kept& kept, bool open_place, Slot time, Slot* columns);
  [[nodiscard]] bool fits() const;

  const Model& model_;
  std::vector<Kept> kept_;  ///< of the last step, per use of it
  std::vector<Interval> intervals_;
};

}  // namespace wetout::search
