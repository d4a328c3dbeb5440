// A place or a direction in a plane.
#pragma once

#include <cmath>

namespace wetout::board {

struct Vec {
  double x = 0.0;
  double y = 0.0;
  friend Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend Vec operator*(double k, Vec v) { return {k * v.x, k * v.y}; }
  friend Vec operator*(Vec v, double k) { return k * v; }
};
inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }
/// Above 0 where b lies from a as y from x.
inline double cross(Vec a, Vec b) { return a.x * b.y - a.y * b.x; }
inline double length(Vec v) { return std::hypot(v.x, v.y); }

}  // namespace wetout::board
