// The outline as a polygon.
#pragma once

#include <vector>

#include "form.hpp"
#include "medial.hpp"

namespace wetout::board {

/// Counter-clockwise from the tail, not repeating the first point; no place of the outline is
/// farther than `tolerance` from it.
std::vector<Vec> outline_polygon(const Form& form, double tolerance);

}  // namespace wetout::board
