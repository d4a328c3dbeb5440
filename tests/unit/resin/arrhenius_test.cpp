#include "wetout/resin/arrhenius.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace wetout::resin {
namespace {

using units::Temperature;

TEST(ArrheniusFactor, MatchesPublishedRatioForTenKelvin) {
  // Rate ratio 20 -> 30 C, computed from the definition of the law: 1.839, 1.967, 2.105. The
  // trade's "twice as fast per 10 degrees" (a supplier's page) lies between the last two.
  for (const auto& [energy, ratio] : {std::pair{45.0, 1.839}, {50.0, 1.967}, {55.0, 2.105}}) {
    EXPECT_NEAR(1.0 / arrhenius_factor(energy, Temperature::celsius(20), Temperature::celsius(30)),
                ratio, 0.0005);
  }
}

TEST(TemperatureForFactor, UndoesTheFactor) {
  const Temperature from = Temperature::celsius(25);
  const double factor = arrhenius_factor(55.0, from, Temperature::celsius(17));
  EXPECT_NEAR(temperature_for_factor(55.0, from, factor).in_celsius(), 17.0, 1e-9);
}

}  // namespace
}  // namespace wetout::resin
