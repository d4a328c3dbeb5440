// The outline as curves that drawings are made of.
#pragma once

#include <vector>

#include "cubic.hpp"
#include "form.hpp"

namespace wetout::board {

/// The rail on the side of y above 0, from tail to nose, within 1e-7 m of the form's outline.
std::vector<Cubic> rail_cubics(const Form& form);

struct ArcStart {
  Vec at;
  double bulge = 0.0;  ///< tangent of a quarter of what the arc to the next one turns by, x to y
};
/// Two arcs with one tangent for each part of a cubic, within 1e-7 m of it; the last is an end.
std::vector<ArcStart> arcs_along(const std::vector<Cubic>& line);

}  // namespace wetout::board
