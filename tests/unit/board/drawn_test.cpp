// An outline as it was drawn: what Spec::drawn makes of a board.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "boards.hpp"
#include "geos.hpp"

namespace wetout::board {
namespace {

using units::inches;
using units::Length;
using units::metres;

// Half-widths of an ellipse of these half axes at knots; its square is a parabola, so the roots
// meet it exactly.
Spec drawn_ellipse(double a, double b, int knots) {
  Spec spec = flat(ellipsoid(a, b, 0.05, 3), 0.05, 0.5);
  spec.width.clear();
  DrawnOutline drawn;
  for (int i = 0; i <= knots; ++i) {
    const double t = std::numbers::pi * i / knots;
    const double y = i == 0 || i == knots ? 0.0 : b * std::sin(t);
    const double slope = y > 0.0 ? b / a * std::cos(t) / std::sin(t) : 0.0;
    const Length x = metres(i == knots ? 2.0 * a : a - a * std::cos(t));
    drawn.knots.push_back({x, metres(y), slope, slope});
    spec.width.push_back({x, metres(2.0 * y)});
  }
  drawn.tail_roots = static_cast<std::size_t>(knots / 2);
  drawn.nose_roots = static_cast<std::size_t>(knots - knots / 2);
  drawn.tail_radius = drawn.nose_radius = metres(b * b / a);
  spec.drawn = drawn;
  return spec;
}

TEST(DrawnOutline, OfAnEllipseHasItsAreaAndPerimeter) {
  const double a = 0.95, b = 0.25;
  const Surfaces s = hull_of(drawn_ellipse(a, b, 8)).surfaces();
  EXPECT_NEAR(s.planform.area.si(), std::numbers::pi * a * b, 1e-9);
  // Circumference by Ramanujan's second formula (1914); at b/a = 0.26 it is good to 1e-8 here.
  const double h = (a - b) * (a - b) / ((a + b) * (a + b));
  const double ramanujan =
      std::numbers::pi * (a + b) * (1.0 + 3.0 * h / (10.0 + std::sqrt(4.0 - 3.0 * h)));
  EXPECT_NEAR(s.perimeter.si(), ramanujan, 5e-6);
}

// A lap of a flat board is what a buffer takes away inside, and its rail.
TEST(DrawnOutline, HasTheLapsOfTheSameBoardByStations) {
  const Hull drawn = hull_of(drawn_ellipse(0.95, 0.25, 8));
  Spec by_stations = drawn_ellipse(0.95, 0.25, 60);
  by_stations.drawn.reset();
  const Hull stations = hull_of(by_stations);
  for (const Face face : {Face::deck, Face::bottom}) {
    const double lap = drawn.band_area(face, inches(2), Length{}, drawn.length())->area.si();
    const double same = stations.band_area(face, inches(2), Length{}, drawn.length())->area.si();
    EXPECT_NEAR(lap, same, 2e-4 * same);
  }
}

// Two straight flanks meeting at a corner at the wide point, and a cut tail: a corner is a corner.
TEST(DrawnOutline, KeepsItsCorners) {
  Spec spec = flat(ellipsoid(0.9, 0.25, 0.05, 3), 0.05, 0.5);
  spec.length = metres(1.8);
  spec.tail.shape = EndShape::square;
  spec.nose.shape = EndShape::point;
  spec.drawn = DrawnOutline{{{metres(0), metres(0.15), 0.1, 0.1},
                             {metres(1), metres(0.25), 0.1, -0.3125},
                             {metres(1.8), metres(0), -0.3125, -0.3125}},
                            0,
                            0,
                            {},
                            {}};
  spec.width = {{metres(0), metres(0.3)}, {metres(1), metres(0.5)}, {metres(1.8), metres(0)}};
  const Hull hull = hull_of(spec);
  const Surfaces s = hull.surfaces();
  EXPECT_NEAR(s.planform.area.si(), 0.4 + 0.2, 1e-12);
  EXPECT_NEAR(s.perimeter.si(), 0.3 + 2.0 * (std::hypot(1.0, 0.1) + std::hypot(0.8, 0.25)), 1e-12);
  EXPECT_LE(hull.outline(units::millimetres(0.01)).size(), 9U);
}

TEST(DrawnOutline, ThatIsNoRowOfKnotsIsRefused) {
  const auto code = [](const Spec& spec) {
    const auto hull = Hull::make(spec);
    return hull ? std::string("none") : hull.error().front().code;
  };
  Spec spec = drawn_ellipse(0.95, 0.25, 8);
  EXPECT_EQ(code(spec), "none");
  std::swap(spec.drawn->knots[2], spec.drawn->knots[3]);
  EXPECT_EQ(code(spec), "board.drawn");
  spec = drawn_ellipse(0.95, 0.25, 8);
  spec.drawn->knots[3].slope_ahead = std::nan("");
  EXPECT_EQ(code(spec), "board.drawn");
  spec.drawn->knots.resize(1);
  EXPECT_EQ(code(spec), "board.drawn");
}

// Knots that come ever closer to a round nose: the last panel is so short that its places would
// round to the tip itself, where the slope is infinite.
TEST(DrawnOutline, IsMeasuredWithKnotsCloseToItsTips) {
  constexpr double a = 0.95, b = 0.25;
  Spec spec = drawn_ellipse(a, b, 8);
  const double whole = hull_of(spec).surfaces().planform.area.si();
  const double lap = whole_band(hull_of(spec), Face::deck, 0.05);
  DrawnOutline& drawn = *spec.drawn;
  std::vector<At> width;
  for (int side = 0; side < 2; ++side) {
    for (double away = 0.05; away > 2e-6; away *= 0.5) {
      const double x = side == 0 ? away : 2.0 * a - away;
      const double y = b / a * std::sqrt(x * (2.0 * a - x));
      const double slope = b * b / (a * a) * (a - x) / y;
      drawn.knots.push_back({metres(x), metres(y), slope, slope});
    }
  }
  std::sort(drawn.knots.begin(), drawn.knots.end(),
            [](const Knot& p, const Knot& q) { return p.from_tail < q.from_tail; });
  for (const Knot& knot : drawn.knots) width.push_back({knot.from_tail, 2.0 * knot.half_width});
  drawn.tail_roots = drawn.nose_roots = (drawn.knots.size() - 1) / 2;
  spec.width = width;
  const Hull hull = hull_of(spec);
  EXPECT_NEAR(hull.surfaces().planform.area.si(), whole, 1e-8);
  EXPECT_NEAR(whole_band(hull, Face::deck, 0.05) / lap, 1.0, 1e-4);
  EXPECT_NEAR(hull.strip_area(metres(0.05), {}, hull.length()).si(),
              hull_of(drawn_ellipse(a, b, 8)).strip_area(metres(0.05), {}, hull.length()).si(),
              1e-6);
}

}  // namespace
}  // namespace wetout::board
