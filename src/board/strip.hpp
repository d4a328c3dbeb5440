// What one cross-section adds per unit of length: the inner integral of every area.
#pragma once

#include "form.hpp"
#include "quadrature.hpp"
#include "section.hpp"

namespace wetout::board {

/// A place on a quarter section: c on its flat half, s on its rail half.
struct Place {
  bool rail = false;
  double near = 0.0;
};
Place place_at(double e, double c);

/// Hull surface of one side of one face per unit of x, centre line to apex. `half` is the rail's.
Estimate face_strip(const Frame& frame, Face face, const HalfQuarter& half);
/// The same from `inner` to the apex.
Estimate face_strip_outside(const Frame& frame, Face face, Place inner);

/// Length over the surface from the centre line to the apex.
Estimate girth_quarter(const Frame& frame, Face face, const HalfQuarter& half);
/// The place `length` over the surface away from the centre line; the apex when it is longer than
/// the quarter.
Place place_at_girth(const Frame& frame, Face face, double length);

/// Area of a quarter with unit half-axes between c = `inner` and the apex.
Estimate quarter_outside(double e, double inner);

}  // namespace wetout::board
