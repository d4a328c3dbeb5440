// Every line of tests/published/cure.csv against the library's building blocks.
#include "published.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>

#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/kinetics.hpp"

namespace wetout::resin {
namespace {

using units::Temperature;

constexpr double r_gas = gas_constant_j_per_mol_k.value;

struct TwoEnergies {
  double a1, e1, a2, e2, m, n;
  [[nodiscard]] double k1(double c) const { return a1 * std::exp(-e1 / (r_gas * (c + 273.15))); }
  [[nodiscard]] double k2(double c) const { return a2 * std::exp(-e2 / (r_gas * (c + 273.15))); }
  // At one temperature the two terms are one with r = k1/k2.
  [[nodiscard]] ConversionCurve curve(double c) const { return {k1(c) / k2(c), m, n}; }
  [[nodiscard]] double gel_h(double c) const {
    return curve(c).reduced_time(0.57735026919) / k2(c) / 3600.0;
  }
};
constexpr TwoEnergies w1{35982, 54960, 3574.1, 44289, 0.39845, 1.5361};
constexpr TwoEnergies w2{2.0e5, 63267.9637, 118000.438, 55157.8279, 0.30450112, 1.61742134};
const Glass w1_glass{Temperature::celsius(-57), Temperature::celsius(91), 0.36903, 10, 4};

// Set J at 453.15 K: its stop runs over conversion, the film's over Tg; the factor is one.
double j_stop(double a) { return stopping_factor(43.09 * (a - (-1.6840 + 5.475e-3 * 453.15))); }

// Set L at 450 K, per minute: (K1 + K2 a)(1 - a)(B - a), above 0.3 K3 (1 - a).
double l_rate(double a) {
  const auto k = [](double factor, double kj) {
    return factor * std::exp(-kj * 1e3 / (r_gas * 450));
  };
  const double k1 = k(2.101e9, 80.7), k2 = k(-2.014e9, 77.8), k3 = k(1.960e5, 56.6);
  return a <= 0.3 ? k2 * chemical_rate(a, k1 / k2, 1, 1) * (0.47 - a)
                  : k3 * chemical_rate(a, 0, 0, 1);
}

double heat(double q, double eew, double ahew) { return 1e3 * q / (eew + ahew); }

const std::map<std::string, std::function<double(double)>> computed{
    {"k1", [](double c) { return w1.k1(c); }},
    {"k2",
     [](double c) {
       const Kinetics kinetics{w1.k2(25), 0.1, w1.m, w1.n, w1.e2, Temperature::celsius(25)};
       return rate_constant(kinetics, Temperature::celsius(c));
     }},
    {"gel_h", [](double c) { return w1.gel_h(c); }},
    {"w2_gel_h", [](double c) { return w2.gel_h(c); }},
    {"rate_at_0.2",
     [](double c) { return w1.k2(c) * chemical_rate(0.2, w1.k1(c) / w1.k2(c), w1.m, w1.n); }},
    {"conversion_20", [](double h) { return w1.curve(20).conversion(w1.k2(20) * h * 3600); }},
    {"conversion_25", [](double h) { return w1.curve(25).conversion(w1.k2(25) * h * 3600); }},
    {"tg", [](double a) { return glass_transition(w1_glass, a).in_celsius(); }},
    {"tg_is", [](double c) { return conversion_at(w1_glass, Temperature::celsius(c)); }},
    {"tg_is_20_above",
     [](double c) { return conversion_at(w1_glass, Temperature::celsius(c + 20)); }},
    {"j_rate",
     [](double a) {
       return 1.528e5 * std::exp(-66500 / (r_gas * 453.15)) * chemical_rate(a, 0, 0.8129, 2.736) *
              j_stop(a);
     }},
    {"j_stop", j_stop},
    {"l_rate", l_rate},
    {"gel_point", [](double ratio) { return gel_point(2, 4, ratio); }},
    {"heat_190_95", [](double q) { return heat(q, 190, 95); }},
    {"heat_190_60", [](double q) { return heat(q, 190, 60); }},
};

TEST(PublishedCure, EveryLineIsMetToItsLastDigit) {
  const auto values = published_cure();
  ASSERT_GT(values.size(), 40u);
  for (const PublishedValue& value : values) {
    ASSERT_TRUE(computed.count(value.what)) << value.name;
    EXPECT_NEAR(computed.at(value.what)(value.input), value.expected, value.tolerance)
        << value.name;
  }
}

TEST(PublishedCure, HalfOfTheRateIsLeftAtTheStop) {
  // chern1987, set J: critical conversion 0.79700 at 453.15 K, 0.46850 at 393.15 K.
  EXPECT_NEAR(-1.6840 + 5.475e-3 * 453.15, 0.79700, 5e-6);
  EXPECT_NEAR(-1.6840 + 5.475e-3 * 393.15, 0.46850, 5e-6);
  EXPECT_DOUBLE_EQ(stopping_factor(0.0), 0.5);
  EXPECT_EQ(stopping_factor(1e9), 1.0 / (1.0 + std::exp(600.0)));
  EXPECT_EQ(stopping_factor(-1e9), 1.0);
}

TEST(PublishedCure, VitrificationFollowsTgAboveTheFilm) {
  const Glass glass;
  for (const auto& [above, factor] : {std::pair{10.0, 0.5}, {20.0, 0.08}, {30.0, 0.007}}) {
    const double a = conversion_at(glass, Temperature::celsius(25 + above));
    EXPECT_NEAR(vitrification_factor(glass, a, Temperature::celsius(25)), factor, 0.005);
  }
}

}  // namespace
}  // namespace wetout::resin
