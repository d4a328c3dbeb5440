// How far a ray square to the outline stays nearest to the place it started from.
#pragma once

#include <vector>

#include "form.hpp"
#include "vec.hpp"

namespace wetout::board {

/// Parts of the outline on the side y >= 0.
enum class Edge { rail, tail_cut, nose_cut, notch, notch_corner };

/// A ray ends where a circle about it, through its start, touches the outline a second time: there
/// the other part of the outline is as near, and what lies beyond belongs to that part's rays. So
/// no place is counted twice, at corners, in tips and around a notch.
class Medial {
 public:
  explicit Medial(const Form& form);

  struct End {
    double distance;  ///< in the plan, at most the limit asked for
    int partner;      ///< which part of the outline ended it; 0: none
  };
  /// From `start` on `edge` along the unit vector `inward`. The centre line is the caller's.
  [[nodiscard]] End end(Edge edge, Vec start, Vec inward, double limit) const;

 private:
  void rail_to_rail(Vec start, Vec inward, End& end) const;
  void rail_from_cut(Vec start, Vec inward, End& end) const;

  const Form& form_;
  std::vector<Vec> samples_;  // of the rail, by x
};

}  // namespace wetout::board
