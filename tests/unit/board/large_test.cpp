// Outlines of very many stations, as a drawing or a scan gives them.
#include <gtest/gtest.h>

#include <cmath>

#include "boards.hpp"

namespace wetout::board {
namespace {

TEST(ManyStations, MeasureTheSameBoard) {
  // Ten thousand stations read off the example board.
  const Hull sparse = hull_of(spec_of(MeasuringPoints{}));
  Spec spec = spec_of(MeasuringPoints{});
  spec.wide_point.reset();
  spec.width.clear();
  spec.thickness.clear();
  spec.rocker.clear();
  constexpr int n = 10000;
  for (int i = 0; i <= n; ++i) {
    const units::Length x = sparse.length() * (1.0 * i / n);
    spec.width.push_back({x, sparse.width(x)});
    spec.thickness.push_back({x, sparse.thickness(x)});
    spec.rocker.push_back({x, sparse.rocker(x)});
  }
  const Hull dense = hull_of(spec);
  EXPECT_FALSE(dense.tip_thickness_assumed());
  const Surfaces a = sparse.surfaces();
  const Surfaces b = dense.surfaces();
  EXPECT_NEAR(b.planform.area / a.planform.area, 1.0, 1e-5);
  EXPECT_NEAR(b.deck.area / a.deck.area, 1.0, 1e-5);
  EXPECT_NEAR(b.bottom.area / a.bottom.area, 1.0, 1e-5);
  EXPECT_NEAR(b.volume / a.volume, 1.0, 1e-5);
  EXPECT_NEAR(b.perimeter / a.perimeter, 1.0, 1e-5);
  EXPECT_NEAR(whole_band(dense, Face::deck, 0.05) / whole_band(sparse, Face::deck, 0.05), 1.0,
              7e-5);  // 5.6e-5 with panels that are graded towards the ends
  const units::Length one_place = sparse.length() * 0.1234;
  EXPECT_NEAR(dense.width(one_place) / sparse.width(one_place), 1.0, 1e-6);
}

TEST(ManyStations, CopyAndMoveLikeValues) {
  Hull a = hull_of(spec_of(MeasuringPoints{}));
  const double deck = a.surfaces().deck.area.si();
  Hull b = a;
  a = hull_of(ellipsoid(1.0, 0.3, 0.05, 11));
  EXPECT_EQ(b.surfaces().deck.area.si(), deck);
  a = std::move(b);
  EXPECT_EQ(a.surfaces().deck.area.si(), deck);
}

}  // namespace
}  // namespace wetout::board
