// One more operation: from a label to the next.
#pragma once

#include <vector>

#include "kept_places.hpp"
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
  bool own_rules(const Slot* row, const Bucket& source, const Step& step, Slot start) const;
  void add_cost(const Slot* row, const Bucket& source, const Step& step, Slot start,
                Value& cost) const;
  bool windows(const Slot* row, const Step& step, const Bucket& target, Slot start,
               std::vector<Slot>& columns) const;
  void arcs(const Slot* row, const Bucket& source, const Step& step, const Bucket& target,
            Slot start, std::vector<Slot>& columns) const;

  const Model& model_;
  ChoiceSets& sets_;
  std::vector<Slot> least_g_;     ///< per arc, over the open starts
  std::vector<Slot> greatest_f_;  ///< per arc
  KeptPlaces places_;
};

/// A window without a start left.
inline constexpr Slot no_start = Slot{1} << 30;

}  // namespace wetout::search
