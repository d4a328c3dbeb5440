// An outline as it was drawn: what Spec::drawn makes of a board.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "boards.hpp"
#include "geos.hpp"
#include "quadrature.hpp"

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

// By a round nose slopes are infinite: places of a panel there, however short it is, are never the
// tip itself, to which their sum would round.
TEST(DrawnOutline, IsNeverAskedForSlopesAtItsTips) {
  for (const double reach : {-1.0, -1e-3, -1e-5, -1e-9}) {
    for (const int power : {1, 4}) {
      const Panel panel{.origin = 1.9, .reach = reach, .power = power};
      for (const double u : {0.0, 1e-9, 1e-3, 0.02, 1.0}) EXPECT_LT(panel.inside(u), 1.9) << u;
      EXPECT_DOUBLE_EQ(panel.inside(1.0), panel.x(1.0));
    }
  }
  const Panel tail{.origin = 0.0, .reach = 1e-5, .power = 4};
  EXPECT_GT(tail.inside(0.0), 0.0);
}

}  // namespace
}  // namespace wetout::board
