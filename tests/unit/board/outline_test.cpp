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

// The trade's measuring points (common practice, no source): ends, 12 in from each end, the middle.
TEST(MeasuringPoints, ComeBackExactly) {
  for (const Named& board : shapes()) {
    const MeasuringPoints& p = board.points;
    const Hull hull = hull_of(spec_of(p));
    const auto width = [&](double at) { return units::in_inches(hull.width(inches(at))); };
    const auto thickness = [&](double at) { return units::in_inches(hull.thickness(inches(at))); };
    const auto rocker = [&](double at) { return units::in_inches(hull.rocker(inches(at))); };
    constexpr double close = 1e-12;
    EXPECT_NEAR(width(0), p.tail, close) << board.name;
    EXPECT_NEAR(width(12), p.tail12, close) << board.name;
    EXPECT_NEAR(width(0.5 * p.length + p.wide_offset), p.wide, close) << board.name;
    EXPECT_NEAR(width(p.length - 12), p.nose12, close) << board.name;
    EXPECT_NEAR(width(p.length), 0.0, close) << board.name;
    EXPECT_NEAR(thickness(12), p.thick_tail12, close) << board.name;
    EXPECT_NEAR(thickness(0.5 * p.length), p.thick_centre, close) << board.name;
    EXPECT_NEAR(thickness(p.length - 12), p.thick_nose12, close) << board.name;
    EXPECT_NEAR(rocker(0), p.rocker_tail, close) << board.name;
    EXPECT_NEAR(rocker(12), p.rocker_tail12, close) << board.name;
    EXPECT_NEAR(rocker(0.5 * p.length), 0.0, close) << board.name;
    EXPECT_NEAR(rocker(p.length - 12), p.rocker_nose12, close) << board.name;
    EXPECT_NEAR(rocker(p.length), p.rocker_nose, close) << board.name;
    EXPECT_NEAR(units::in_inches(hull.max_width()), p.wide, close) << board.name;
    EXPECT_NEAR(units::in_inches(hull.wide_point()), 0.5 * p.length + p.wide_offset, close);
  }
}

TEST(Outline, RisesToTheWidePointAndFalls) {
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    const double wide = hull.wide_point().si();
    constexpr int n = 4000;
    for (int i = 0; i < n; ++i) {
      const Length a = hull.length() * (1.0 * i / n);
      const Length b = hull.length() * ((i + 1.0) / n);
      if (b.si() <= wide) {
        EXPECT_LE(hull.width(a), hull.width(b)) << board.name << " " << a.si();
      }
      if (a.si() >= wide) {
        EXPECT_GE(hull.width(a), hull.width(b)) << board.name << " " << a.si();
      }
    }
  }
}

// No bumps: these boards' widths bend one way only, and so must what lies between.
TEST(Outline, BendsOneWayOnly) {
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    const double step = hull.length().si() / 1000.0;
    for (int i = 1; i < 1000; ++i) {
      const auto b = [&](int k) { return 0.5 * hull.width(metres(step * (i + k))).si(); };
      const double bend = (b(1) - 2.0 * b(0) + b(-1)) / (step * step);
      EXPECT_LT(bend, 1e-3) << board.name << " at " << i / 10.0 << " %";
    }
  }
}

TEST(Outline, IsSmoothAtEveryStation) {
  for (const Named& board : shapes()) {
    const Spec spec = spec_of(board.points);
    const Hull hull = hull_of(spec);
    for (std::size_t i = 1; i + 1 < spec.width.size(); ++i) {
      const double x = spec.width[i].from_tail.si();
      const double h = 1e-5;
      const auto w = [&](double at) { return hull.width(metres(at)).si(); };
      const double before = (3.0 * w(x) - 4.0 * w(x - h) + w(x - 2.0 * h)) / (2.0 * h);
      const double after = (-3.0 * w(x) + 4.0 * w(x + h) - w(x + 2.0 * h)) / (2.0 * h);
      EXPECT_NEAR(before, after, 1e-6) << board.name << " station " << i;
      if (spec.width[i].from_tail == *spec.wide_point) {
        EXPECT_NEAR(before, 0.0, 1e-6);
      }
    }
  }
}

// Area and length of the polygon by GEOS; what the polygon cuts off is bounded by its tolerance.
TEST(Outline, AgreesWithGeosInAreaAndLength) {
  constexpr double tolerance = 1e-6;
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    const PlanPolygon polygon(hull.outline(metres(tolerance)));
    ASSERT_TRUE(polygon.valid()) << board.name;
    const Surfaces s = hull.surfaces();
    const double slack = tolerance * s.perimeter.si();
    EXPECT_NEAR(polygon.area(), s.planform.area.si(), slack) << board.name;
    EXPECT_NEAR(polygon.length(), s.perimeter.si(), 2e-5 * s.perimeter.si()) << board.name;
    EXPECT_NEAR(hull.edge_length(Length{}, hull.length()).si(), s.perimeter.si(), 1e-9);
  }
}

TEST(Outline, StartsAtTheTailAndGoesCounterClockwise) {
  for (const Named& board : shapes()) {
    const Hull hull = hull_of(spec_of(board.points));
    const std::vector<Hull::Point> points = hull.outline(units::millimetres(0.5));
    EXPECT_EQ(points.front().x, Length{}) << board.name;
    EXPECT_LT(points.size(), 400U) << board.name;
    double twice = 0.0;
    double nose = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Hull::Point& a = points[i];
      const Hull::Point& b = points[(i + 1) % points.size()];
      twice += a.x.si() * b.y.si() - b.x.si() * a.y.si();
      nose = std::max(nose, a.x.si());
      EXPECT_GT(std::hypot(a.x.si() - b.x.si(), a.y.si() - b.y.si()), 0.0) << "a point twice";
    }
    EXPECT_GT(twice, 0.0) << board.name;
    EXPECT_EQ(nose, hull.length().si()) << board.name;
  }
}

// The polygon's farthest place from the curve, seen from the curve.
TEST(Outline, KeepsItsTolerance) {
  for (const double tolerance_mm : {2.0, 0.1, 0.01}) {
    for (const Named& board : shapes()) {
      const Hull hull = hull_of(spec_of(board.points));
      const std::vector<Hull::Point> points = hull.outline(units::millimetres(tolerance_mm));
      double worst = 0.0;
      constexpr int n = 1000;
      for (int i = 0; i <= n; ++i) {
        const double x = 0.5 * hull.length().si() * (1.0 - std::cos(std::numbers::pi * i / n));
        const double y = 0.5 * hull.width(metres(x)).si();
        double nearest = 1.0;
        for (std::size_t k = 0; k < points.size(); ++k) {
          const Hull::Point& a = points[k];
          const Hull::Point& b = points[(k + 1) % points.size()];
          const double ux = b.x.si() - a.x.si();
          const double uy = b.y.si() - a.y.si();
          const double t = std::clamp(
              ((x - a.x.si()) * ux + (y - a.y.si()) * uy) / (ux * ux + uy * uy), 0.0, 1.0);
          nearest = std::min(nearest, std::hypot(x - a.x.si() - t * ux, y - a.y.si() - t * uy));
        }
        worst = std::max(worst, nearest);
      }
      EXPECT_LT(worst, 1e-3 * tolerance_mm) << board.name;
      EXPECT_GT(worst, 1e-5 * tolerance_mm) << board.name << ": more points than needed";
    }
  }
}

// Barrass and Derrett, Ship Stability for Masters and Mates, p. 74: a waterplane 120 m long, half-
// ordinates as below, by Simpson's first rule 2 * 20/3 * 90.5 = 1206.67 m², printed 1207. Here at a
// tenth of the size, a ship being longer than any board; the last ordinate is a small cut.
TEST(Waterplane, MeetsSimpsonsRule) {
  const double half[] = {0.0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1};
  Spec spec;
  spec.length = metres(12.0);
  spec.tail.shape = spec.nose.shape = EndShape::point;
  for (int i = 0; i < 7; ++i) spec.width.push_back({metres(2.0 * i), metres(0.2 * half[i])});
  spec.thickness = {{metres(6.0), metres(0.1)}};
  spec.rail = {{Length{}, {0.5, 2.0}}};
  EXPECT_NEAR(100.0 * hull_of(spec).surfaces().planform.area.si(), 1206.67, 0.001 * 1206.67);
}

// Stations of a circle, at uneven places: found again between them.
TEST(Outline, FindsACircleBetweenItsStations) {
  Spec spec = flat(ellipsoid(0.5, 0.5, 1.0, 3), 0.05, 0.5);
  spec.width.clear();
  for (const double x : {0.0, 0.03, 0.17, 0.41, 0.5, 0.66, 0.8, 0.93, 1.0})
    spec.width.push_back({metres(x), metres(2.0 * std::sqrt(x * (1.0 - x)))});
  const Hull hull = hull_of(spec);
  for (double x = 0.001; x < 1.0; x += 0.001)
    EXPECT_NEAR(hull.width(metres(x)).si(), 2.0 * std::sqrt(x * (1.0 - x)), 1e-12) << x;
}

TEST(Outline, TakesAPlateauForItsWidePlace) {
  Spec spec = flat(ellipsoid(0.5, 0.5, 1.0, 3), 0.05, 0.5);
  spec.width = {{metres(0), metres(0)},
                {metres(0.3), metres(0.4)},
                {metres(0.6), metres(0.4)},
                {metres(1), metres(0)}};
  const Hull hull = hull_of(spec);
  EXPECT_NEAR(hull.wide_point().si(), 0.45, 1e-12);
  EXPECT_EQ(hull.width(metres(0.45)).si(), 0.4);
}

TEST(TipThickness, IsExtrapolatedWithinBoundsAndSaysSo) {
  MeasuringPoints p;
  const Hull assumed = hull_of(spec_of(p));
  EXPECT_TRUE(assumed.tip_thickness_assumed());
  // A straight line through 1 5/8 in at 12 in and 2 5/8 in at 38 in; 1 1/2 in at 64 in likewise.
  EXPECT_NEAR(units::in_inches(assumed.thickness(Length{})), 1.625 - 12.0 / 26.0, 1e-12);
  EXPECT_NEAR(units::in_inches(assumed.thickness(inches(76))), 1.5 - 12.0 * 1.125 / 26.0, 1e-12);
  // Never below half of the next station, never above it.
  p.thick_tail12 = 0.8;
  p.thick_nose12 = 2.7;
  const Hull bounded = hull_of(spec_of(p));
  EXPECT_NEAR(units::in_inches(bounded.thickness(Length{})), 0.4, 1e-12);
  EXPECT_NEAR(units::in_inches(bounded.thickness(inches(76))), 2.7, 1e-12);
  Spec given = spec_of(MeasuringPoints{});
  given.thickness.insert(given.thickness.begin(), {Length{}, inches(1)});
  EXPECT_TRUE(hull_of(given).tip_thickness_assumed());
  given.thickness.push_back({inches(76), inches(0.75)});
  EXPECT_FALSE(hull_of(given).tip_thickness_assumed());
  EXPECT_NEAR(units::in_inches(hull_of(given).thickness(Length{})), 1.0, 1e-12);
}

}  // namespace
}  // namespace wetout::board
