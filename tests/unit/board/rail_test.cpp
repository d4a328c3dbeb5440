// Rails that change along the board, and how little areas care about fullness.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "boards.hpp"

namespace wetout::board {
namespace {

using units::inches;
using units::Length;

double faces(const Hull& hull) {
  const Surfaces s = hull.surfaces();
  return s.deck.area.si() + s.bottom.area.si();
}

Hull example(double exponent) {
  MeasuringPoints p;
  p.exponent = exponent;
  return hull_of(spec_of(p));
}

// The table of docs/models/board.md: deck, bottom (m²), volume (l), a 2 in lap on the deck (m²).
TEST(Fullness, MovesAreasLittle) {
  struct Row {
    double exponent, deck, bottom, litres, lap;
  };
  const double square = std::numeric_limits<double>::infinity();
  const Row table[] = {{2.0, 0.787, 0.777, 31.3, 0.2064},
                       {2.5, 0.798, 0.784, 33.7, 0.2068},
                       {3.2, 0.810, 0.792, 35.6, 0.2073},
                       {8.0, 0.847, 0.818, 39.0, 0.2085},
                       {square, 0.879, 0.841, 39.8, 0.2092}};
  for (const Row& row : table) {
    const Hull hull = example(row.exponent);
    const Surfaces s = hull.surfaces();
    EXPECT_NEAR(s.deck.area.si(), row.deck, 5e-4) << row.exponent;
    EXPECT_NEAR(s.bottom.area.si(), row.bottom, 5e-4) << row.exponent;
    EXPECT_NEAR(units::in_litres(s.volume), row.litres, 0.05) << row.exponent;
    EXPECT_NEAR(whole_band(hull, Face::deck, 0.0508), row.lap, 5e-5) << row.exponent;
  }
  // The claim: from soft to full both faces together gain less than 3 %, a lap less than 1 %.
  EXPECT_LT(faces(example(3.2)) / faces(example(2.0)), 1.03);
  EXPECT_GT(faces(example(3.2)) / faces(example(2.0)), 1.0);
  EXPECT_LT(
      whole_band(example(3.2), Face::deck, 0.0508) / whole_band(example(2.0), Face::deck, 0.0508),
      1.01);
}

// The same rail said at three stations takes the general way through the code.
TEST(ChangingRail, ThatHardlyChangesIsTheConstantOne) {
  for (const double exponent : {2.0, 2.5, 8.0}) {
    MeasuringPoints p;
    p.exponent = exponent;
    Spec spec = spec_of(p);
    const Hull constant = hull_of(spec);
    spec.rail = {{Length{}, {0.4, exponent}},
                 {inches(40), {0.4, exponent + 1e-9}},
                 {inches(76), {0.4, exponent + 2e-9}}};
    const Hull changing = hull_of(spec);
    EXPECT_NEAR(faces(changing) / faces(constant), 1.0, 1e-7) << exponent;
    for (const Face face : {Face::deck, Face::bottom}) {
      EXPECT_NEAR(whole_band(changing, face, 0.05) / whole_band(constant, face, 0.05), 1.0, 1e-6)
          << exponent;
    }
    EXPECT_NEAR(changing.surfaces().volume.si() / constant.surfaces().volume.si(), 1.0, 1e-8);
  }
}

// Soft and low in the nose, square and high in the tail: between the boards that are so all along.
TEST(ChangingRail, LiesBetweenItsEnds) {
  const double square = std::numeric_limits<double>::infinity();
  Spec spec = spec_of(MeasuringPoints{});
  spec.rail = {{Length{}, {0.2, square}}, {inches(30), {0.3, 3.0}}, {inches(70), {0.5, 2.0}}};
  const Hull hull = hull_of(spec);
  const Surfaces s = hull.surfaces();
  const Surfaces soft = example(2.0).surfaces();
  const Surfaces hard = example(square).surfaces();
  EXPECT_GT(s.volume, soft.volume);
  EXPECT_LT(s.volume, hard.volume);
  EXPECT_GT(s.deck.area, soft.deck.area);
  EXPECT_LT(s.deck.error.si(), 1e-4 * s.deck.area.si());
  // At the tail block the rail is square: the deck's girth is the width and twice the upper height.
  const double t = hull.thickness(Length{}).si();
  EXPECT_NEAR(hull.girth(Face::deck, Length{}).si(), inches(6).si() + 2.0 * 0.8 * t, 1e-9);
  const Measured band = hull.band_area(Face::bottom, inches(2), Length{}, hull.length()).value();
  EXPECT_LT(band.error.si(), 1e-3 * band.area.si());
  EXPECT_NEAR(band.area.si() / whole_band(example(2.5), Face::bottom, 0.0508), 1.0, 0.02);
}

// A net of triangles over sections whose exponent and apex change, by the public measures only.
TEST(ChangingRail, AgreesWithANet) {
  // Flat bottom, constant thickness and width would hide the rail's own slope: a slab that goes
  // from an ellipse at the tail to a square rail at the nose, linear in e = 2/n and in the share.
  Spec spec = slab(1.0, 0.5, 0.1, 0.5);
  spec.rail = {{Length{}, {0.3, 2.0}},
               {units::metres(1.0), {0.6, std::numeric_limits<double>::infinity()}}};
  const Hull hull = hull_of(spec);
  constexpr int along = 800;
  constexpr int across = 800;
  const auto place = [](double x, int k, double* p) {
    const double e = 1.0 - x;
    const double share = 0.3 + 0.3 * x;
    // Even steps in c on the flat half, in s on the rail half.
    const double split = std::pow(0.5, 0.5 * e);
    const double near = split * (k <= across / 2 ? k : across - k) / (across / 2);
    const double far = e > 0.0 ? std::pow(1.0 - std::pow(near, 2.0 / e), 0.5 * e) : 1.0;
    const bool flat = k <= across / 2;
    p[0] = x;
    p[1] = 0.25 * (flat ? near : far);
    p[2] = 0.1 * share + 0.1 * (1.0 - share) * (flat ? far : near);
  };
  const auto triangle = [](const double* a, const double* b, const double* c) {
    const double u[] = {b[0] - a[0], b[1] - a[1], b[2] - a[2]};
    const double v[] = {c[0] - a[0], c[1] - a[1], c[2] - a[2]};
    return 0.5 * std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2],
                            u[0] * v[1] - u[1] * v[0]);
  };
  double sum = 0.0;
  for (int i = 0; i < along; ++i) {
    for (int k = 0; k < across; ++k) {
      double q[4][3];
      place(1.0 * i / along, k, q[0]);
      place((i + 1.0) / along, k, q[1]);
      place((i + 1.0) / along, k + 1, q[2]);
      place(1.0 * i / along, k + 1, q[3]);
      sum += triangle(q[0], q[1], q[2]) + triangle(q[0], q[2], q[3]);
    }
  }
  // Walls of the two cut ends above the apex: a half ellipse and a rectangle.
  const double walls = 0.5 * M_PI * 0.25 * 0.07 + 0.5 * 0.04;
  EXPECT_NEAR(hull.surfaces().deck.area.si() / (2.0 * sum + walls), 1.0, 2e-5);
}

}  // namespace
}  // namespace wetout::board
