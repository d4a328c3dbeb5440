// Lap bands: what of a face lies within reach of the apex, over the surface.
#pragma once

#include "form.hpp"
#include "quadrature.hpp"

namespace wetout::board {

Estimate band_area(const Form& form, Face face, double reach, double from, double to);

/// Length of the outline in the plan, cut ends and notch included where they lie within.
double edge_length(const Form& form, double from, double to);
/// The same following the apex over the rocker.
double apex_length(const Form& form, double from, double to);
/// How far the outline turns between two places, both sides and the ends' corners together; the
/// whole outline turns by 2 pi, a notch's inner corner counting backwards.
double turning(const Form& form, double from, double to);

}  // namespace wetout::board
