// Integrals over the whole board or lengthwise parts of it.
#pragma once

#include <optional>

#include "form.hpp"
#include "quadrature.hpp"

namespace wetout::board {

struct Totals {
  Estimate planform, deck, bottom, perimeter, volume, deck_length, bottom_length;
};
Totals totals(const Form& form);

/// Both sides of a face between two places, walls of cut ends and notch included.
Estimate face_area(const Form& form, Face face, double from, double to);
/// Centred part of a face, `width` over the surface; without the walls of cut ends.
Estimate centred_area(const Form& form, Face face, double from, double to, double width);

double girth(const Form& form, Face face, double x);
double max_girth(const Form& form, Face face, double from, double to);
double centre_length(const Form& form, Face face, double from, double to);

}  // namespace wetout::board
