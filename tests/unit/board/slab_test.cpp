// Blanks with square rails, by arithmetic: a box is the sum of its sides.
#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

#include "boards.hpp"

namespace wetout::board {
namespace {

using units::Length;
using units::metres;

constexpr double l = 2.2, w = 0.6, t = 0.08, below = 0.3;
constexpr double up = (1.0 - below) * t, down = below * t;

TEST(Slab, IsTheSumOfItsSides) {
  const Hull hull = hull_of(slab(l, w, t, below));
  const Surfaces s = hull.surfaces();
  EXPECT_NEAR(s.planform.area.si(), l * w, 1e-12);
  EXPECT_NEAR(s.perimeter.si(), 2.0 * (l + w), 1e-12);
  EXPECT_NEAR(s.volume.si(), l * w * t, 1e-13);
  EXPECT_NEAR(s.deck.area.si(), l * w + 2.0 * (l + w) * up, 1e-12);
  EXPECT_NEAR(s.bottom.area.si(), l * w + 2.0 * (l + w) * down, 1e-12);
  EXPECT_NEAR(s.deck_length.si(), l, 1e-12);
  EXPECT_NEAR(hull.girth(Face::deck, metres(1)).si(), w + 2.0 * up, 1e-12);
  EXPECT_NEAR(hull.girth(Face::bottom, metres(1)).si(), w + 2.0 * down, 1e-12);
}

TEST(Slab, HasBandsAroundAllFourSides) {
  const Hull hull = hull_of(slab(l, w, t, below));
  const auto band = [](double reach, double wall) {
    const double in = std::max(0.0, reach - wall);
    return 2.0 * (l + w) * std::min(reach, wall) + l * w - (l - 2.0 * in) * (w - 2.0 * in);
  };
  for (const double reach : {0.005, 0.024, 0.03, 0.056, 0.06, 0.1, 0.25}) {
    EXPECT_NEAR(whole_band(hull, Face::deck, reach), band(reach, up), 1e-5) << reach;
    EXPECT_NEAR(whole_band(hull, Face::bottom, reach), band(reach, down), 1e-5) << reach;
  }
}

TEST(Slab, HasABandOfPartOfItsLength) {
  const Hull hull = hull_of(slab(l, w, t, below));
  const double reach = 0.1;
  const double in = reach - up;
  // Away from the ends only the two rails count.
  EXPECT_NEAR(area(hull.band_area(Face::deck, metres(reach), metres(0.5), metres(1.5))),
              2.0 * 1.0 * reach, 1e-12);
  // To the tail: both corners go half to the tail block.
  EXPECT_NEAR(area(hull.band_area(Face::deck, metres(reach), Length{}, metres(0.5))),
              2.0 * (0.5 * reach - 0.5 * in * in) + w * reach - in * in, 1e-5);
}

TEST(Slab, HasPatchesOfPlainRectangles) {
  const Hull hull = hull_of(slab(l, w, t, below));
  const auto patch = [&](double from, double to, std::optional<Length> width) {
    return hull.patch_area({Face::deck, metres(from), metres(to), width}).area.si();
  };
  EXPECT_NEAR(patch(0.5, 1.5, metres(0.3)), 0.3, 1e-12);
  EXPECT_NEAR(patch(0.5, 1.5, metres(w + up)), w + up, 1e-12);      // half-way down the rail
  EXPECT_NEAR(patch(0.5, 1.5, metres(1.0)), w + 2.0 * up, 1e-12);   // more than there is
  EXPECT_NEAR(patch(0.5, 1.5, std::nullopt), w + 2.0 * up, 1e-12);  // to the apex
  EXPECT_NEAR(patch(0.0, 0.5, std::nullopt), 0.5 * (w + 2.0 * up) + w * up, 1e-12);  // tail block
  EXPECT_NEAR(patch(0.0, 9.0, std::nullopt), hull.surfaces().deck.area.si(), 1e-12);
  EXPECT_EQ(patch(1.5, 0.5, std::nullopt), 0.0);
}

TEST(Slab, HasStripsWithRoundCorners) {
  const Hull hull = hull_of(slab(l, w, t, below));
  const double reach = 0.1;
  EXPECT_NEAR(hull.strip_area(metres(reach), Length{}, metres(l)).si(),
              2.0 * (l + w) * reach + M_PI * reach * reach, 1e-12);
  EXPECT_NEAR(hull.strip_area(metres(reach), metres(0.5), metres(1.5)).si(), 2.0 * reach, 1e-12);
}

// A board twice as thick at the nose: deck and bottom are planes at a slope.
TEST(Wedge, IsTheSumOfItsSides) {
  Spec spec = slab(l, w, 0.04, 0.5);
  spec.thickness = {{metres(0), metres(0.04)}, {metres(l), metres(0.08)}};
  const Surfaces s = hull_of(spec).surfaces();
  // The thickness is level at its greatest value, so that it is a parabola from 0.08 down to 0.04.
  EXPECT_NEAR(s.volume.si(), w * l * (0.08 - 0.04 / 3.0), 1e-9);
  const double length = [] {
    double sum = 0.0;
    constexpr int n = 20000;
    for (int i = 0; i < n; ++i) sum += std::hypot(l / n, 0.08 * (i + 0.5) / n / n);
    return sum;
  }();
  EXPECT_NEAR(s.deck_length.si(), length, 1e-7);
  const double walls = 0.5 * 2.0 * l * (0.08 - 0.04 / 3.0) + 0.5 * w * (0.04 + 0.08);
  EXPECT_NEAR(s.deck.area.si(), w * s.deck_length.si() + walls, 1e-9);
  EXPECT_NEAR(s.bottom.area.si(), w * l + walls, 1e-9);
}

// A swallow cut out of a slab: two prongs, four edges at the tail.
TEST(SwallowSlab, IsTheSumOfItsSides) {
  constexpr double depth = 0.25;
  const Hull hull = hull_of(slab(l, w, t, below, depth));
  const Surfaces s = hull.surfaces();
  const double edge = 2.0 * std::hypot(depth, 0.5 * w);
  const double plan = l * w - 0.5 * w * depth;
  EXPECT_NEAR(s.planform.area.si(), plan, 1e-9);
  EXPECT_NEAR(s.perimeter.si(), 2.0 * l + w + edge, 1e-12);
  EXPECT_NEAR(s.volume.si(), plan * t, 1e-10);
  EXPECT_NEAR(s.deck.area.si(), plan + (2.0 * l + w + edge) * up, 1e-9);
  EXPECT_NEAR(s.bottom.area.si(), plan + (2.0 * l + w + edge) * down, 1e-9);
  EXPECT_NEAR(hull.edge_length(Length{}, metres(l)).si(), s.perimeter.si(), 1e-12);
  EXPECT_NEAR(hull.edge_length(metres(0.125), metres(1.125)).si(), 2.0 + 0.5 * edge, 1e-12);
  const double reach = 0.05;
  EXPECT_NEAR(hull.strip_area(metres(reach), Length{}, metres(l)).si(),
              s.perimeter.si() * reach + M_PI * reach * reach, 1e-12);
  // A patch over the tail leaves the notch out; without a width the notch's walls belong to it.
  EXPECT_NEAR(hull.patch_area({Face::deck, Length{}, metres(0.5), metres(0.4)}).area.si(),
              0.5 * 0.4 - 0.5 * depth * w + 0.5 * (w - 0.4) * (w - 0.4) * depth / w, 1e-6);
  EXPECT_NEAR(hull.patch_area({Face::deck, Length{}, metres(0.5), std::nullopt}).area.si(),
              0.5 * w - 0.5 * depth * w + (1.0 + edge) * up, 1e-9);
}

}  // namespace
}  // namespace wetout::board
