// Areas, lengths and buffers of plan outlines by GEOS: a second route for everything that happens
// in the plan.
#pragma once

#include <memory>
#include <vector>

#include "wetout/board/hull.hpp"

namespace wetout::board {

class PlanPolygon {
 public:
  explicit PlanPolygon(const std::vector<Hull::Point>& points);
  ~PlanPolygon();
  PlanPolygon(const PlanPolygon&) = delete;
  PlanPolygon& operator=(const PlanPolygon&) = delete;

  [[nodiscard]] bool valid() const;
  [[nodiscard]] double area() const;
  [[nodiscard]] double length() const;
  /// Area of the polygon grown by `distance` (shrunk when negative), corners rounded.
  [[nodiscard]] double buffered(double distance) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace wetout::board
