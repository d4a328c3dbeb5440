// The two sides of a drawn outline, from tail to nose.
#pragma once

#include <optional>
#include <vector>

#include "cubic.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::board {

/// A line over the length: pieces with rising x, the first at 0.
class Side {
 public:
  explicit Side(std::vector<Cubic> pieces) : pieces_(std::move(pieces)) {}

  [[nodiscard]] const std::vector<Cubic>& pieces() const { return pieces_; }
  [[nodiscard]] double first() const { return pieces_.front().p[0].x; }
  [[nodiscard]] double last() const { return pieces_.back().p[3].x; }
  struct Value {
    double y = 0.0, slope = 0.0;
  };
  /// Just behind a place or just ahead of it: at a corner they differ.
  [[nodiscard]] Value at(double x, bool ahead) const;
  /// Radius of curvature at the end, where the line meets the axis square to it; else nothing.
  [[nodiscard]] std::optional<double> tip_radius(bool at_nose, double axis) const;

 private:
  std::vector<Cubic> pieces_;
};

/// Pieces cut where they turn back along x, so that each rises or falls.
std::vector<Cubic> cut_at_turns(const std::vector<Cubic>& pieces);

struct Sides {
  std::vector<Side> list;  ///< two, or one of half a board
  double axis = 0.0;       ///< y of the centre line
  double notch = 0.0;      ///< how far the line between the tips of the tail goes in
};

/// How far from the utmost place of the drawing an end still is that end: a cut that is drawn by
/// hand is not square to a hair, while a round tip ends in one place.
struct Ends {
  double tail = 0.0, nose = 0.0;
};

/// Of a chain whose x runs along the board, tail at 0, nose at `length`; `flat`: how straight a
/// centre line is. Problems "outline.doubles_back", "outline.open".
base::Result<Sides> sides_of(const Chain& chain, double length, const Ends& ends, double flat);

}  // namespace wetout::board
