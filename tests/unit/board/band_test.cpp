// Lap bands: closed forms, GEOS, and what must hold for any board.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "boards.hpp"
#include "geos.hpp"

namespace wetout::board {
namespace {

using units::inches;
using units::Length;
using units::metres;
constexpr double pi = std::numbers::pi;

// A flat disc with square rails: up the wall h, then a ring: pi (r² - (r - l + h)²) + 2 pi r h.
TEST(Band, OfADiscIsAWallAndARing) {
  constexpr double r = 0.3;
  constexpr double t = 0.06;
  const Hull hull = hull_of(flat(ellipsoid(r, r, 1.0, 41), t, 0.4));
  for (const double reach : {0.01, 0.024, 0.03, 0.036, 0.05, 0.1, 0.2, 0.3}) {
    for (const Face face : {Face::deck, Face::bottom}) {
      const double h = face == Face::deck ? 0.6 * t : 0.4 * t;
      const double in = std::max(0.0, reach - h);
      const double exact = pi * (r * r - (r - in) * (r - in)) + 2.0 * pi * r * std::min(reach, h);
      EXPECT_NEAR(whole_band(hull, face, reach) / exact, 1.0, 1e-9) << reach;
    }
  }
}

// A hemisphere: within reach of the rim over the surface is the zone between the rim and the
// latitude reach / r, 2 pi r² sin(reach / r) (Archimedes); walks square to the rim are meridians.
TEST(Band, OfAHemisphereIsAZone) {
  constexpr double r = 0.5;
  const Hull hull = hull_of(ellipsoid(r, r, r, 81));
  for (const double reach : {0.01, 0.05, 0.2, 0.5, 0.7}) {
    const double exact = 2.0 * pi * r * r * std::sin(reach / r);
    EXPECT_NEAR(whole_band(hull, Face::deck, reach) / exact, 1.0, 2e-4) << reach;
    EXPECT_NEAR(whole_band(hull, Face::bottom, reach) / exact, 1.0, 2e-4) << reach;
  }
}

// The same shapes cut from a sheet, square rails: the wall, and what GEOS takes off the outline
// when it shrinks it; for every kind of end, the swallow's notch with its inner corner included.
TEST(Band, OfSheetsAgreesWithGeos) {
  constexpr double t = 0.04;
  constexpr double below = 0.4;
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(flat(spec_of(board.points), t, below));
    const PlanPolygon plan(hull.outline(metres(1e-6)));
    const double edge = hull.surfaces().perimeter.si();
    for (const double reach_in : {0.5, 1.0, 2.0, 4.0, 8.0}) {
      const double reach = 0.0254 * reach_in;
      for (const Face face : {Face::deck, Face::bottom}) {
        const double h = face == Face::deck ? (1.0 - below) * t : below * t;
        const double in = std::max(0.0, reach - h);
        const double exact = edge * std::min(reach, h) + plan.area() - plan.buffered(-in);
        const Measured band = hull.band_area(face, metres(reach), Length{}, hull.length()).value();
        EXPECT_NEAR(band.area.si() / exact, 1.0, 1e-4) << board.name << " " << reach_in << " in";
        // The estimate is honest; GEOS's rounded corners and the polygon are good for 1e-6.
        EXPECT_LT(std::abs(band.area.si() - exact), 2.0 * band.error.si() + 3e-6 * exact)
            << board.name << " " << reach_in << " in";
        EXPECT_LT(band.error.si() / exact, 1e-3) << board.name << " " << reach_in << " in";
      }
    }
  }
}

// A squash tail drawn by stations: nearly a corner, but round. What one side's walks reach must not
// be counted again from the other.
TEST(Band, CountsNothingTwiceInASharpBend) {
  Spec spec = spec_of(MeasuringPoints{});
  spec.tail.shape = EndShape::round;
  spec.width[0].value = Length{};
  spec.width.insert(spec.width.begin() + 1, {inches(0.6), inches(6.5)});
  const Hull hull = hull_of(flat(spec, 0.04, 0.5));
  const PlanPolygon plan(hull.outline(metres(1e-7)));
  for (const double reach : {0.03, 0.05, 0.1}) {
    const double exact =
        hull.surfaces().perimeter.si() * 0.02 + plan.area() - plan.buffered(0.02 - reach);
    EXPECT_NEAR(whole_band(hull, Face::deck, reach) / exact, 1.0, 3e-4) << reach;
  }
}

// Flat cloth around a flat outline: GEOS grows it, round at the corners.
TEST(Strip, AgreesWithGeosOnConvexOutlines) {
  for (const Named& board : shapes()) {
    if (board.points.tail_shape == EndShape::swallow) continue;
    const Hull hull = hull_of(flat(spec_of(board.points), 0.04, 0.4));
    const PlanPolygon plan(hull.outline(metres(1e-6)));
    for (const double reach : {0.02, 0.05, 0.1}) {
      const double grown = plan.buffered(reach) - plan.area();
      EXPECT_NEAR(hull.strip_area(metres(reach), Length{}, hull.length()).si() / grown, 1.0, 5e-5)
          << board.name;
    }
  }
}

// The inner corner of a notch turns back: the strips overlap there, and GEOS counts that once.
TEST(Strip, TurnsBackInANotch) {
  const Hull hull = hull_of(slab(2.0, 0.5, 0.04, 0.5, 0.2));
  const double reach = 0.03;
  const PlanPolygon plan(hull.outline(metres(1e-6)));
  const double grown = plan.buffered(reach) - plan.area();
  // Half-angle of the notch and what two strips share in it: a kite less the sector counted off.
  const double half = std::atan2(0.25, 0.2);
  const double turn = pi - 2.0 * half;
  const double kite = reach * reach / std::tan(half);
  EXPECT_NEAR(hull.strip_area(metres(reach), Length{}, metres(2.0)).si(),
              grown + kite - 0.5 * turn * reach * reach, 1e-6);
}

TEST(Band, IsNeverMoreThanTheStrip) {
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    for (const double reach_in : {0.5, 1.0, 2.0, 3.0, 5.0}) {
      for (const auto& [from, to] :
           {std::pair(0.0, 1.0), std::pair(0.0, 0.3), std::pair(0.3, 0.7), std::pair(0.6, 1.0)}) {
        const Length a = hull.length() * from;
        const Length b = hull.length() * to;
        const double strip = hull.strip_area(inches(reach_in), a, b).si();
        for (const Face face : {Face::deck, Face::bottom}) {
          const double band = area(hull.band_area(face, inches(reach_in), a, b));
          EXPECT_LE(band, strip * 1.0001) << board.name << " " << reach_in << " " << from;
          EXPECT_GT(band, 0.5 * strip) << board.name << " " << reach_in << " " << from;
        }
      }
    }
  }
}

TEST(Band, AddsUpAlongTheBoard) {
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    const Length cut = hull.length() * 0.37;
    const double whole = whole_band(hull, Face::bottom, 0.05);
    const double tail = area(hull.band_area(Face::bottom, metres(0.05), Length{}, cut));
    const double nose = area(hull.band_area(Face::bottom, metres(0.05), cut, hull.length()));
    EXPECT_NEAR((tail + nose) / whole, 1.0, 2e-5) << board.name;
  }
}

TEST(Band, OfAWideLapIsTheFace) {
  // The lap that just does not meet itself at the wide point covers nearly everything.
  const Hull hull = hull_of(spec_of(shapes()[0].points));
  const double half = 0.5 * hull.girth(Face::deck, hull.wide_point()).si();
  const double face = hull.surfaces().deck.area.si();
  const double band = whole_band(hull, Face::deck, half * 0.999);
  EXPECT_LT(band, face * 1.0001);
  EXPECT_GT(band, face * 0.98);
}

TEST(Band, WiderThanTheOtherFaceIsRefused) {
  const Hull hull = hull_of(spec_of(MeasuringPoints{}));
  const Length half = hull.girth(Face::bottom, hull.wide_point()) / 2.0;
  EXPECT_TRUE(hull.band_area(Face::bottom, half * 0.999, Length{}, hull.length()));
  const auto refused = hull.band_area(Face::bottom, half * 1.001, Length{}, hull.length());
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().at(0).code, "board.lap_too_wide");
  for (const double bad : {-0.01, std::nan(""), HUGE_VAL}) {
    const auto result = hull.band_area(Face::bottom, metres(bad), Length{}, hull.length());
    ASSERT_FALSE(result) << bad;
    EXPECT_EQ(result.error().at(0).code, "board.lap_not_a_length");
  }
  EXPECT_EQ(area(hull.band_area(Face::bottom, Length{}, Length{}, hull.length())), 0.0);
  EXPECT_EQ(area(hull.band_area(Face::bottom, inches(2), inches(40), inches(30))), 0.0);
}

}  // namespace
}  // namespace wetout::board
