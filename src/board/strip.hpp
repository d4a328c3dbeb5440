// What one cross-section adds per unit of length: the inner integral of every area.
#pragma once

#include "form.hpp"
#include "quadrature.hpp"
#include "section.hpp"

namespace wetout::board {

/// Hull surface of one side of one face per unit of x, over `quarter` of this frame's rail.
Estimate face_strip(const Frame& frame, Face face, const Quarter& quarter);

/// Length over the surface of `quarter`.
Estimate girth_strip(const Frame& frame, Face face, const Quarter& quarter);

/// The place `length` over the surface away from the centre line; the apex when it is longer than
/// the quarter.
Place place_at_girth(const Frame& frame, Face face, double length);

}  // namespace wetout::board
