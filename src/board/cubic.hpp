// Cubic Bezier pieces in a plane, and what moves them.
#pragma once

#include <array>
#include <cmath>
#include <vector>

#include "vec.hpp"

namespace wetout::board {

struct Cubic {
  std::array<Vec, 4> p;

  [[nodiscard]] Vec at(double t) const {
    const double s = 1.0 - t;
    return s * s * s * p[0] + 3.0 * s * s * t * p[1] + 3.0 * s * t * t * p[2] + t * t * t * p[3];
  }
  [[nodiscard]] Vec derivative(double t) const {
    const double s = 1.0 - t;
    return 3.0 * s * s * (p[1] - p[0]) + 6.0 * s * t * (p[2] - p[1]) + 3.0 * t * t * (p[3] - p[2]);
  }
  [[nodiscard]] Vec second_derivative(double t) const {
    return 6.0 * (1.0 - t) * (p[2] - 2.0 * p[1] + p[0]) + 6.0 * t * (p[3] - 2.0 * p[2] + p[1]);
  }
  /// From t = `from` to `to`.
  [[nodiscard]] Cubic part(double from, double to) const {
    const double third = (to - from) / 3.0;
    const Vec a = at(from), b = at(to);
    return {{a, a + third * derivative(from), b - third * derivative(to), b}};
  }
  [[nodiscard]] Cubic reversed() const { return {{p[3], p[2], p[1], p[0]}}; }
};

inline Cubic straight(Vec from, Vec to) {
  return {{from, from + 1.0 / 3.0 * (to - from), to - 1.0 / 3.0 * (to - from), to}};
}

/// x' = a x + c y + e, y' = b x + d y + f, as SVG writes it.
struct Affine {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  [[nodiscard]] Vec of(Vec v) const { return {a * v.x + c * v.y + e, b * v.x + d * v.y + f}; }
  [[nodiscard]] Cubic of(const Cubic& k) const {
    return {{of(k.p[0]), of(k.p[1]), of(k.p[2]), of(k.p[3])}};
  }
  /// First `inner`, then this.
  [[nodiscard]] Affine after(const Affine& inner) const {
    return {a * inner.a + c * inner.b,     b * inner.a + d * inner.b,
            a * inner.c + c * inner.d,     b * inner.c + d * inner.d,
            a * inner.e + c * inner.f + e, b * inner.e + d * inner.f + f};
  }
};

/// Part of the unit circle from an angle on, by `turn` counter-clockwise where y is up, placed;
/// within 4e-8 of its radius.
std::vector<Cubic> arc(const Affine& placed, double from, double turn);

/// Pieces that follow each other.
struct Chain {
  std::vector<Cubic> pieces;
  bool closed = false;
};

}  // namespace wetout::board
