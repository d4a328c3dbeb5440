// Boards with a closed form.
//
// Surface of an ellipsoid: DLMF 19.33(i), S = 4 pi R_G(a²b², a²c², b²c²); the equation's number is
// from memory, the value for 5, 3, 2 was seen printed in a computer-algebra help page
// (134.7751767), that for 11, 12, 13 in a programming site's exercise (1807.89).
#include <gtest/gtest.h>

#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/special_functions/ellint_rg.hpp>
#include <cmath>
#include <numbers>
#include <tuple>

#include "boards.hpp"

namespace wetout::board {
namespace {

constexpr double pi = std::numbers::pi;

double surface(double a, double b, double c) {
  const double ab = a * b;
  const double ac = a * c;
  const double bc = b * c;
  return 4.0 * pi * boost::math::ellint_rg(ab * ab, ac * ac, bc * bc);
}

double faces(const Surfaces& s) { return s.deck.area.si() + s.bottom.area.si(); }
double off(double value, double exact) { return std::abs(value / exact - 1.0); }

TEST(EllipsoidFormula, GivesThePrintedValues) {
  EXPECT_NEAR(surface(5, 3, 2), 134.7751767, 5e-8);
  EXPECT_NEAR(surface(11, 12, 13), 1807.89, 5e-3);
  EXPECT_NEAR(surface(1, 1, 1), 4.0 * pi, 1e-12);
}

using Axes = std::tuple<double, double, double>;

class Ellipsoid : public testing::TestWithParam<Axes> {
 protected:
  void expect_within(int stations, double share) const {
    const auto [a, b, c] = GetParam();
    const Surfaces s = hull_of(ellipsoid(a, b, c, stations)).surfaces();
    EXPECT_LT(off(faces(s), surface(a, b, c)), share) << stations << " stations";
    EXPECT_LT(off(s.planform.area.si(), pi * a * b), share) << stations << " stations";
    EXPECT_LT(off(s.volume.si(), 4.0 / 3.0 * pi * a * b * c), share) << stations << " stations";
  }
};

// The limits are those set for this program; what is reached is far inside and held below.
TEST_P(Ellipsoid, IsWithinAFifthPercentByFortyOneStations) { expect_within(41, 0.002); }
TEST_P(Ellipsoid, IsWithinOnePercentByElevenStations) { expect_within(11, 0.01); }

// Width and thickness squared are parabolas here, so that planform and volume are exact; the rocker
// is a cubic through a cosine.
TEST_P(Ellipsoid, IsNearlyExact) {
  const auto [a, b, c] = GetParam();
  const Surfaces s = hull_of(ellipsoid(a, b, c, 41)).surfaces();
  EXPECT_LT(off(faces(s), surface(a, b, c)), 1e-6);
  EXPECT_LT(off(s.planform.area.si(), pi * a * b), 1e-12);
  EXPECT_LT(off(s.volume.si(), 4.0 / 3.0 * pi * a * b * c), 1e-12);
  EXPECT_LT(off(faces(hull_of(ellipsoid(a, b, c, 11)).surfaces()), surface(a, b, c)), 2e-5);
}

// Halves of an ellipsoid: both faces of 50/50 are equal, and 60/40 is two half ellipsoids. A tenth
// of the 0.2 % that is asked for: the apex is level only as far as a cubic follows a cosine.
TEST_P(Ellipsoid, SplitsAtTheApex) {
  const auto [a, b, c] = GetParam();
  const Surfaces even = hull_of(ellipsoid(a, b, c, 41)).surfaces();
  EXPECT_LT(off(even.deck.area.si(), 0.5 * surface(a, b, c)), 2e-4);
  EXPECT_LT(off(even.bottom.area.si(), 0.5 * surface(a, b, c)), 2e-4);
  const Surfaces uneven = hull_of(ellipsoid(a, b, c, 41, 0.4)).surfaces();
  EXPECT_LT(off(uneven.deck.area.si(), 0.5 * surface(a, b, 1.2 * c)), 2e-4);
  EXPECT_LT(off(uneven.bottom.area.si(), 0.5 * surface(a, b, 0.8 * c)), 2e-4);
  EXPECT_LT(off(uneven.volume.si(), 4.0 / 3.0 * pi * a * b * c), 1e-12);
}

TEST_P(Ellipsoid, HasTheEllipsesOfItsSections) {
  const auto [a, b, c] = GetParam();
  const Hull hull = hull_of(ellipsoid(a, b, c, 41));
  const Surfaces s = hull.surfaces();
  const auto perimeter = [](double p, double q) {
    const double major = std::max(p, q);
    const double minor = std::min(p, q);
    return 4.0 * major * boost::math::ellint_2(std::sqrt(1.0 - minor * minor / (major * major)));
  };
  EXPECT_LT(off(s.perimeter.si(), perimeter(a, b)), 1e-7);
  EXPECT_LT(off(s.deck_length.si(), 0.5 * perimeter(a, c)), 2e-4);
  EXPECT_LT(off(s.bottom_length.si(), 0.5 * perimeter(a, c)), 2e-4);
  const units::Length middle = hull.length() / 2.0;
  EXPECT_LT(off(hull.girth(Face::deck, middle).si(), 0.5 * perimeter(b, c)), 1e-9);
  EXPECT_LT(
      off(hull.max_girth(Face::bottom, units::Length{}, hull.length()).si(), 0.5 * perimeter(b, c)),
      1e-9);
}

// What is left of the error is interpolation; the quadrature's own must be what it says.
TEST_P(Ellipsoid, IsOffByNoMoreThanTheEstimateAndTheInterpolation) {
  const auto [a, b, c] = GetParam();
  const double exact = surface(a, b, c);
  const auto error = [&, a = a, b = b, c = c](int stations) {
    const Surfaces s = hull_of(ellipsoid(a, b, c, stations)).surfaces();
    return std::pair(std::abs(faces(s) - exact), s.deck.error.si() + s.bottom.error.si());
  };
  const double interpolation = error(641).first;  // a fourth-order method: 256 times the next
  for (const int stations : {161, 321}) {
    const auto [off_by, estimate] = error(stations);
    const double shrink = std::pow(640.0 / (stations - 1), 4.0);
    EXPECT_LT(off_by, 3.0 * estimate + 2.0 * shrink * (interpolation + 1e-12 * exact)) << stations;
  }
  const auto [off_by, estimate] = error(641);
  EXPECT_LT(off_by, 3.0 * estimate);
}

// Long and thick, squat, and as flat as a board.
INSTANTIATE_TEST_SUITE_P(Axes, Ellipsoid,
                         testing::Values(Axes{5, 3, 2}, Axes{3, 2, 1}, Axes{0.95, 0.26, 0.033}));

// Published: exact values computed from 4 a E(m); Ramanujan's second formula agrees to the digits
// it is good for (seen in public mathematical texts).
TEST(EllipsePerimeter, MeetsTheTable) {
  struct Row {
    double a, b, exact, ramanujan_two;
  };
  for (const Row& row :
       {Row{2, 1, 9.688448221, 9.688448216}, Row{5, 1, 21.010044540, 21.010026652},
        Row{10, 1, 40.639741801, 40.639272100}, Row{0.25, 0.03, 1.021742247, 1.021735442}}) {
    const double perimeter =
        hull_of(ellipsoid(row.a, row.b, 0.1 * row.b, 41)).surfaces().perimeter.si();
    EXPECT_LT(off(perimeter, row.exact), 1e-8) << row.a << " by " << row.b;
    const double h = std::pow((row.a - row.b) / (row.a + row.b), 2.0);
    const double two = pi * (row.a + row.b) * (1.0 + 3.0 * h / (10.0 + std::sqrt(4.0 - 3.0 * h)));
    EXPECT_LT(off(two, row.ramanujan_two), 1e-9);
    EXPECT_LT(off(perimeter, two), 2e-5);
  }
}

}  // namespace
}  // namespace wetout::board
