// One more operation: from a label to the next.
#pragma once

#include <vector>

#include "label_space.hpp"

namespace wetout::search {

class Stepper {
 public:
  Stepper(const Model& model, ChoiceSets& sets, const Domains& root);

  /// Where the operation of `step` may start after label `row` of `source`: first and last slot;
  /// first > last when nowhere.
  [[nodiscard]] std::pair<Slot, Slot> range(const Bucket& source, int row, const Step& step) const;

  /// Fills `columns` and `cost` for a start; false when it breaks a rule or leaves an operation
  /// without a start.
  bool make(const Bucket& source, int row, const Step& step, const Bucket& target, Slot start,
            std::vector<Slot>& columns, Value& cost);

 private:
  struct Kept {
    int place;
    int what;
    Slot from;
    Slot to;
  };

  bool own_rules(const Slot* row, const Bucket& source, const Step& step, Slot start) const;
  bool places_free(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
                   Slot start);
  void add_cost(const Slot* row, const Bucket& source, const Step& step, Slot start,
                Value& cost) const;
  bool windows(const Slot* row, const Step& step, const Bucket& target, Slot start,
               std::vector<Slot>& columns) const;
  void arcs(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
            Slot start, std::vector<Slot>& columns) const;
  void uses(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
            Slot start, std::vector<Slot>& columns) const;

  const Model& model_;
  ChoiceSets& sets_;
  std::vector<Slot> least_g_;     ///< per arc, over the open starts
  std::vector<Slot> greatest_f_;  ///< per arc
  std::vector<Kept> kept_;
};

/// Columns of uses: minus the slot from which the place is kept, or `now` when it is kept already
/// or not at all; the slot until which it is kept (at least the label's time), or `still_open`.
inline constexpr Slot now = Slot{1} << 30;
inline constexpr Slot still_open = now;
/// A window without a start left.
inline constexpr Slot no_start = Slot{1} << 30;

}  // namespace wetout::search
