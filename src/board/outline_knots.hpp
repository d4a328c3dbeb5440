// Two sides of a drawn outline as one row of knots.
#pragma once

#include "outline_sides.hpp"
#include "wetout/board/spec.hpp"

namespace wetout::board {

struct Knots {
  DrawnOutline drawn;
  double uneven = 0.0;  ///< largest difference of the half-widths of the two sides
  double widest = 0.0;  ///< half
};

/// Which ends run out to nothing; the others keep the width they have.
struct Uncut {
  bool tail = true, nose = true;
};

/// Their mean, within 5e-7 m of it between knots. Problem "outline.doubles_back" where a side
/// crosses the centre line.
base::Result<Knots> knots_of(const Sides& sides, double length, const Uncut& ends);

}  // namespace wetout::board
