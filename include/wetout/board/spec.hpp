// What a builder measures on a shaped board: plain data, not yet checked.
// Positions run from the tail (0) to the nose along the length.
#pragma once

#include <cstddef>
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

/// A place of a drawn outline: half of the width there, both sides' mean, and how fast it grows
/// toward the nose just behind the place and just ahead of it. The two differ at a corner; at a
/// round tip neither is used.
struct Knot {
  units::Length from_tail;
  units::Length half_width;
  double slope_behind = 0.0;
  double slope_ahead = 0.0;
};

/// An outline as it was drawn, from tail to nose: between two knots the half-width is the cubic
/// that meets both and their slopes. At a round tip, for the given number of intervals, the
/// *square* of the half-width is that cubic instead, because the half-width itself rises like a
/// root there.
struct DrawnOutline {
  std::vector<Knot> knots;  ///< the first at 0, the last at the length
  std::size_t tail_roots = 0, nose_roots = 0;
  units::Length tail_radius, nose_radius;  ///< of curvature, at a tip with roots
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
  /// The outline, exactly: then `width` holds the widths at its knots and adds nothing to the
  /// shape.
  std::optional<DrawnOutline> drawn;
};

}  // namespace wetout::board
