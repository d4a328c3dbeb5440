#include "cubic.hpp"

#include <algorithm>
#include <numbers>

namespace wetout::board {
namespace {
// A cubic over a sixteenth of a turn leaves the circle by 4e-8 of its radius at most.
constexpr double most_turn = std::numbers::pi / 8.0;
}  // namespace

std::vector<Cubic> arc(const Affine& placed, double from, double turn) {
  std::vector<Cubic> pieces;
  const int parts = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / most_turn - 1e-9)));
  const double step = turn / parts;
  const double reach = 4.0 / 3.0 * std::tan(step / 4.0);
  for (int i = 0; i < parts; ++i) {
    const double u = from + i * step, v = from + (i + 1) * step;
    const Vec a{std::cos(u), std::sin(u)}, b{std::cos(v), std::sin(v)};
    pieces.push_back(
        placed.of(Cubic{{a, a + reach * Vec{-a.y, a.x}, b - reach * Vec{-b.y, b.x}, b}}));
  }
  return pieces;
}

}  // namespace wetout::board
