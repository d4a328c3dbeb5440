#include "wetout/learn/robust_fit.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace wetout::learn {
namespace {

// As good as certain about the errors: plain least squares.
constexpr Noise known{.factor = 1.0, .records = 1e15, .tuning = 1e9, .aside = 1e9};

TEST(Fit, WithoutRecordsIsWhatWasBelieved) {
  const Fit found = fit({{8.0, 7.0}, {60.0, 32.5}}, {});
  EXPECT_EQ(found.values, (std::vector<double>{8.0, 60.0}));
  EXPECT_DOUBLE_EQ(found.spread(0), 7.0);
  EXPECT_DOUBLE_EQ(found.spread(1), 32.5);
  EXPECT_DOUBLE_EQ(found.factor, 1.0);
  EXPECT_DOUBLE_EQ(found.freedom, 4.0);
}

// A normal belief and normal errors of known spread: means weighted by 1/spread² (any text on
// Bayesian statistics, conjugate normal).
TEST(Fit, WeighsMeansByTheirPrecision) {
  const Fit found = fit({{10.0, 2.0}}, {{{1.0}, 16.0, 1.0}, {{1.0}, 18.0, 0.5}}, known);
  const double precision = 1.0 / 4 + 1.0 + 4.0;
  EXPECT_NEAR(found.values[0], (10.0 / 4 + 16.0 + 4 * 18.0) / precision, 1e-12);
  EXPECT_NEAR(found.spread(0), std::sqrt(1.0 / precision), 1e-12);
}

TEST(Fit, OneWildRecordInTenMovesNothingFar) {
  std::vector<Record> records;
  const double errors[] = {0.4, -1.1, 0.2, 0.9, -0.3, -0.8, 1.2, 0.1, -0.6};
  for (const double error : errors) records.push_back({{1.0}, 20.0 + error, 1.0});
  const Fit tame = fit({{10.0, 20.0}}, records);
  for (const double wild : {1e2, 1e4, 1e9, -1e9}) {
    auto all = records;
    all.push_back({{1.0}, wild, 1.0});
    const Fit found = fit({{10.0, 20.0}}, all);
    EXPECT_LT(std::abs(found.values[0] - tame.values[0]), tame.spread(0)) << wild;
    EXPECT_EQ(found.weights.back(), 0.0) << wild;
  }
}

TEST(Prediction, IsAsUnsureAsTheErrorAndTheCoefficients) {
  const Fit found = fit({{10.0, 3.0}}, {}, known);
  const Prediction next = predict(found, {2.0}, 8.0);
  EXPECT_DOUBLE_EQ(next.value, 20.0);
  EXPECT_DOUBLE_EQ(next.spread, 10.0);
  EXPECT_NEAR(next.quantile(0.975), 20.0 + 19.59964, 1e-4);  // table of the normal distribution
  EXPECT_NEAR(next.chance_above(30.0), 0.158655, 1e-6);
}

// Student's t of few degrees of freedom (tables in any text): 95 % one-sided of 4 is 2.1318.
TEST(Prediction, IsUnsureOfTheErrorItself) {
  const Prediction next = predict(fit({{0.0, 1e-9}}, {}), {1.0}, 1.0);
  EXPECT_NEAR(next.quantile(0.95), 2.1318, 5e-5);
}

RC_GTEST_PROP(FitProperty, EqualRecordsNarrowTheSpread, ()) {
  const double value = *rc::gen::inRange(-50, 50);
  const int count = *rc::gen::inRange(1, 20);
  const std::vector<Record> fewer(static_cast<std::size_t>(count), {{1.0, 0.5}, value, 2.0});
  auto more = fewer;
  more.push_back(fewer.front());
  const std::vector<Belief> beliefs{{value * 1.0, 3.0}, {0.0, 4.0}};
  const Fit a = fit(beliefs, fewer);
  const Fit b = fit(beliefs, more);
  RC_ASSERT(b.spread(0) < a.spread(0));
  RC_ASSERT(b.spread(1) < a.spread(1));
  RC_ASSERT(b.factor < a.factor);
}

// Units do not matter: grams or ounces.
RC_GTEST_PROP(FitProperty, IsTheSameInOtherUnits, ()) {
  const double unit = *rc::gen::element(0.001, 28.349523125, 1000.0);
  std::vector<Record> here;
  std::vector<Record> there;
  for (int n = *rc::gen::inRange(0, 15); n > 0; --n) {
    const double row = *rc::gen::inRange(1, 9);
    const double value = *rc::gen::inRange(-30, 90);
    here.push_back({{row}, value, 2.0});
    there.push_back({{row}, value * unit, 2.0 * unit});
  }
  const Fit a = fit({{7.0, 5.0}}, here);
  const Fit b = fit({{7.0 * unit, 5.0 * unit}}, there);
  RC_ASSERT(std::abs(a.values[0] * unit - b.values[0]) < 1e-9 * b.spread(0));
  RC_ASSERT(std::abs(a.factor - b.factor) < 1e-9 * a.factor);
}

}  // namespace
}  // namespace wetout::learn
