// The superellipse quarter: closed forms, and derivatives against differences.
#include "../../../src/board/section.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "../../../src/board/chebyshev.hpp"

namespace wetout::board {
namespace {

TEST(Section, LiesOnItsCurve) {
  for (const double n : {2.0, 2.5, 3.2, 8.0, 60.0}) {
    const double e = 2.0 / n;
    for (double c = 0.01; c < 1.0; c += 0.07) {
      const SectionPoint p = section_point(e, c);
      EXPECT_NEAR(std::pow(p.near, n) + std::pow(p.far, n), 1.0, 1e-13) << n << " " << c;
    }
    EXPECT_NEAR(section_point(e, section_split(e)).far, section_split(e), 1e-14);
  }
}

TEST(Section, HasTheSlopesOfItsDifferences) {
  const double h = 1e-6;
  for (const double e : {1.0, 0.8, 0.625, 0.25, 0.05}) {
    for (double c = 0.05; c <= section_split(e); c += 0.09) {
      const SectionPoint p = section_point(e, c);
      const double slope = (section_point(e, c + h).far - section_point(e, c - h).far) / (2.0 * h);
      const double by_e = (section_point(e + h, c).far - section_point(e - h, c).far) / (2.0 * h);
      EXPECT_NEAR(p.slope, slope, 1e-8) << e << " " << c;
      EXPECT_NEAR(p.by_e, by_e, 1e-8) << e << " " << c;
    }
  }
}

// Area of a superellipse's quarter: Gamma(1 + 1/n)² / Gamma(1 + 2/n); pi/4 for an ellipse.
TEST(Section, HasTheAreaOfTheClosedForm) {
  EXPECT_NEAR(section_area(1.0), std::numbers::pi / 4.0, 1e-15);
  EXPECT_NEAR(section_area(0.0), 1.0, 1e-15);
  for (const double n : {2.0, 2.5, 3.2, 8.0, 40.0}) {
    const double e = 2.0 / n;
    EXPECT_NEAR(whole_quarter(e).area().fine, section_area(e), 2e-6) << n;
    // Cut on either half: what lies outside and the numbers of a fine sum inside add up.
    for (const double c : {0.3, 0.6, 0.95}) {
      double inside = 0.0;
      constexpr int steps = 20000;
      for (int i = 0; i < steps; ++i)
        inside += section_point(e, c * (i + 0.5) / steps).far * c / steps;
      EXPECT_NEAR(quarter_outside(e, place_at(e, c)).area().fine + inside, section_area(e), 2e-6)
          << n << " " << c;
    }
  }
}

TEST(Section, NearlySquareIsNearlySquare) {
  const SectionPoint p = section_point(1e-6, 0.5);
  EXPECT_NEAR(p.far, 1.0, 1e-6);
  EXPECT_EQ(section_point(0.0, 0.999).far, 1.0);
}

TEST(Chebyshev, IntegratesItsPolynomialsExactly) {
  ChebValues values{};
  for (std::size_t i = 0; i < cheb_size; ++i) {
    const double t = cheb_points()[i];
    values[i] = 1.0 + 3.0 * t * t - std::pow(t, 4.0);
  }
  const auto exact = [](double t) { return t + t * t * t - std::pow(t, 5.0) / 5.0; };
  for (const double t : {0.0, 0.2, 0.5, 0.77, 1.0}) {
    EXPECT_NEAR(through(values).at(t), 1.0 + 3.0 * t * t - std::pow(t, 4.0), 1e-14);
    EXPECT_NEAR(integral(values).at(t), exact(t), 1e-14);
    EXPECT_NEAR(where(integral(values), exact(t)), t, 1e-8);
  }
}

}  // namespace
}  // namespace wetout::board
