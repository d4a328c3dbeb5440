// Boards that the tests measure.
#pragma once

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

#include "wetout/board/hull.hpp"

namespace wetout::board {

/// Or a failed test that says what was wrong.
inline Hull hull_of(const Spec& spec) {
  base::Result<Hull> hull = Hull::make(spec);
  if (!hull) {
    std::string text;
    for (const base::Problem& p : hull.error())
      text += p.code + " " + p.key + ": " + p.message + " (" + p.found + ")\n";
    throw std::runtime_error(text);
  }
  return std::move(*hull);
}

/// Measures of a board in inches, by the trade's points: ends, 12 in from each end, the middle.
/// The numbers are those of the example job file.
struct MeasuringPoints {
  double length = 76.0;
  double tail = 6.0, tail12 = 15.0, wide = 20.75, wide_offset = 1.0, nose12 = 12.0;
  double thick_tail12 = 1.625, thick_centre = 2.625, thick_nose12 = 1.5;
  double rocker_tail = 2.0, rocker_tail12 = 0.875, rocker_nose12 = 2.125, rocker_nose = 5.0;
  EndShape tail_shape = EndShape::square, nose_shape = EndShape::round;
  double notch = 0.0;
  double apex_share = 0.4, exponent = 2.5;
};
Spec spec_of(const MeasuringPoints& points);

/// One board of each kind of end and several trades' shapes, invented.
struct Named {
  std::string name;
  MeasuringPoints points;
};
const std::vector<Named>& shapes();

/// x²/a² + y²/b² + z²/c² = 1 by uniform stations; `below` of the thickness under a level apex.
Spec ellipsoid(double a, double b, double c, int stations, double below = 0.5);

/// A rectangle or, with a notch, a rectangle less a triangle; square rails.
Spec slab(double length, double width, double thickness, double below, double notch = 0.0);

/// Of an outline by any stations, flat, square rails, the same thickness everywhere.
Spec flat(const Spec& outline, double thickness, double below);

/// All lengths multiplied.
Spec scaled(Spec spec, double by);

inline double area(const base::Result<Measured>& band) { return band.value().area.si(); }
inline double whole_band(const Hull& hull, Face face, double reach_m) {
  return area(hull.band_area(face, units::metres(reach_m), units::Length{}, hull.length()));
}

}  // namespace wetout::board
