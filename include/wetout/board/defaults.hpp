// What words about a rail mean in numbers. Each value can be moved for a what-if, so they travel
// as data.
#pragma once

#include "wetout/base/cited.hpp"

namespace wetout::board {

/// "soft" is not in the list: a soft rail is an ellipse (exponent 2), and that is its definition.
/// Neither is "square", the limit of the superellipse.
struct Defaults {
  using S = base::Standing;
  base::Default<double> rail_medium{
      "rail.medium", 2.5, 2.2, 2.8, {"", "exponent of a medium rail, our choice", S::assumed}};
  base::Default<double> rail_full{
      "rail.full", 3.2, 2.8, 4.0, {"", "exponent of a full rail, our choice", S::assumed}};
  base::Default<double> rail_apex{
      "rail.default",
      0.40,
      0.30,
      0.50,
      {"", "share of the thickness below the apex, 60/40 where no rail is given", S::assumed}};
};

inline const Defaults& defaults() {
  static const Defaults values;
  return values;
}

/// Calls f(default, unit word) for each value.
template <class D, class F>
void visit(D& d, F&& f) requires requires {
  d.rail_medium;
}
{
  f(d.rail_medium, "");
  f(d.rail_full, "");
  f(d.rail_apex, "share");
}

}  // namespace wetout::board
