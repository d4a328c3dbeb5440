#include "wetout/resin/conversion_curve.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <boost/math/quadrature/tanh_sinh.hpp>
#include <cmath>

#include "wetout/resin/kinetics.hpp"

namespace wetout::resin {
namespace {

// Closed forms of d a/d tau = (r + a^m)(1 - a)^n.
TEST(ConversionCurve, MeetsFirstOrder) {
  const ConversionCurve curve(1.0, 0.0, 1.0);  // rate 2 (1 - a)
  for (const double tau : {0.0, 1e-4, 0.01, 0.3, 1.0, 3.0, 5.0}) {
    EXPECT_NEAR(curve.conversion(tau), -std::expm1(-2.0 * tau), 2e-8) << tau;
    EXPECT_NEAR(curve.slope(tau), 2.0 * std::exp(-2.0 * tau), 1e-6) << tau;
  }
}

TEST(ConversionCurve, MeetsOrderOneAndAHalfAndTwo) {
  for (const double n : {1.5, 2.0, 2.5}) {
    const ConversionCurve curve(0.5, 0.0, n);  // rate 1.5 (1 - a)^n
    for (double tau = 1e-3; tau < 1e3; tau *= 3.0) {
      const double left = std::pow(1.0 + (n - 1.0) * 1.5 * tau, -1.0 / (n - 1.0));
      EXPECT_NEAR(curve.conversion(tau), 1.0 - left, 2e-9) << n << " " << tau;
    }
  }
}

TEST(ConversionCurve, MeetsAutocatalysisOfFirstOrder) {
  const double r = 0.05;  // rate (r + a)(1 - a)
  const ConversionCurve curve(r, 1.0, 1.0);
  for (const double tau : {1e-3, 0.1, 1.0, 2.0, 4.0, 8.0}) {
    const double e = std::exp((1.0 + r) * tau);
    EXPECT_NEAR(curve.conversion(tau), r * (e - 1.0) / (1.0 + r * e), 5e-9) << tau;
  }
}

// The integral of d a/rate by another rule (tanh-sinh takes the singular start in its stride).
RC_GTEST_PROP(ConversionCurve, IsTheInverseOfItsQuadrature, ()) {
  const double r = *rc::gen::inRange(10, 600) / 1000.0;
  const double m = *rc::gen::inRange(300, 1000) / 1000.0;
  const double n = *rc::gen::inRange(1290, 2000) / 1000.0;
  const double a = *rc::gen::inRange(1, 985) / 1000.0;
  const ConversionCurve curve(r, m, n);
  boost::math::quadrature::tanh_sinh<double> rule;
  const double tau =
      rule.integrate([&](double x) { return 1.0 / chemical_rate(x, r, m, n); }, 0.0, a, 1e-12);
  RC_ASSERT(std::abs(curve.conversion(tau) - a) < 3e-8);
  RC_ASSERT(std::abs(curve.conversion(curve.reduced_time(a)) - a) < 1e-12);
}

RC_GTEST_PROP(ConversionCurve, NeverFalls, ()) {
  const ConversionCurve curve(*rc::gen::inRange(10, 600) / 1000.0, 0.6, 1.5);
  double last = -1.0;
  for (double tau = 0.0; tau < 1e6; tau = tau * 1.01 + 1e-5) {
    const double a = curve.conversion(tau);
    RC_ASSERT(a >= last - 1e-13);
    RC_ASSERT(a <= 1.0);
    last = a;
  }
}

TEST(ConversionCurve, EndsAreDefined) {
  const ConversionCurve curve(0.1, 0.6, 1.5);
  EXPECT_EQ(curve.conversion(0.0), 0.0);
  EXPECT_EQ(curve.reduced_time(0.0), 0.0);
  EXPECT_TRUE(std::isinf(curve.reduced_time(1.0)));
  EXPECT_GT(curve.conversion(1e12), 1.0 - 1e-9);
}

}  // namespace
}  // namespace wetout::resin
