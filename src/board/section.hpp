// A quarter of a cross-section: the superellipse c^n + s^n = 1, c from the centre line (0) to the
// apex (1), s from the apex (0) to the face at the centre line (1).
//
// Where c = s the quarter is split: the flat half is taken as s(c), the rail half as c(s), so that
// no slope is above one. The two halves are the same function, hence `near` and `far`.
// Exponents are handled as e = 2/n: 1 is an ellipse, 0 a square rail.
#pragma once

#include <array>

#include "quadrature.hpp"

namespace wetout::board {

struct SectionPoint {
  double near = 0.0;   ///< the running one of c and s
  double far = 1.0;    ///< the other: (1 - near^n)^(1/n)
  double slope = 0.0;  ///< d far / d near
  double by_e = 0.0;   ///< d far / d e at the same near
};

/// `near` in [0, 1); meant for near <= split, past it slopes grow.
SectionPoint section_point(double e, double near);

/// 2^(-1/n), where c = s.
double section_split(double e);

/// Area under a quarter with unit half-axes: Gamma(1 + 1/n)^2 / Gamma(1 + 2/n).
double section_area(double e);

/// A place on a quarter: c on its flat half, s on its rail half.
struct Place {
  bool rail = false;
  double near = 0.0;
};
Place place_at(double e, double c);

/// Part of one half of a quarter, `near` from `from` on, at the points of the quadrature rule.
struct HalfQuarter {
  double from = 0.0;
  double width = 0.0;
  std::array<double, rule_size> near{}, far{}, slope{}, by_e{};
};

/// A quarter, or what of it lies outside a place, at the points of the quadrature rule.
struct Quarter {
  HalfQuarter flat, rail;
  double rail_stop = 1.0;  ///< c where the rail half ends
  /// Of the area under it, with unit half-axes.
  [[nodiscard]] Estimate area() const;
};
Quarter whole_quarter(double e);
Quarter quarter_outside(double e, Place inner);

}  // namespace wetout::board
