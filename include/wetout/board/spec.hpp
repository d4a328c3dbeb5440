// What a builder measures on a shaped board: plain data, not yet checked.
// Positions run from the tail (0) to the nose along the length.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/units/quantity.hpp"

namespace wetout::board {

enum class Foam { eps, xps, pu };

/// How an outline ends. `square` also serves a blank that is cut off at the nose.
enum class EndShape { round, point, square, swallow };

struct End {
  EndShape shape = EndShape::round;
  units::Length depth;  ///< of the swallow's notch; else zero
};

/// The rail as the trade names it: "60/40" has 60 % of the thickness above the apex.
struct Rail {
  double apex_share = 0.5;  ///< share of the thickness below the apex, in (0, 1); 60/40 is 0.4
  double exponent = 2.0;    ///< of the superellipse, >= 2; infinity is a square rail
};

/// A value at a place along the length.
struct At {
  units::Length from_tail;
  units::Length value;
};
struct RailAt {
  units::Length from_tail;
  Rail rail;
};

/// Every list is in order from tail to nose. `width` needs both ends (0 and the length);
/// `thickness` may leave the tips out: they are then extrapolated and that is reported.
struct Spec {
  std::string id;
  std::string name;
  units::Length length;
  Foam foam = Foam::eps;
  std::optional<units::Density> foam_density;
  std::optional<units::Mass> core_weight;  ///< stringer included
  std::optional<units::Mass> stringer_weight;
  End nose;
  End tail;
  std::vector<At> width;
  std::optional<units::Length> wide_point;  ///< from the tail, when the builder said where
  std::vector<At> thickness;
  std::vector<At> rocker;  ///< height of the bottom over a straight bar; may be empty: flat
  std::vector<RailAt> rail;
};

}  // namespace wetout::board
