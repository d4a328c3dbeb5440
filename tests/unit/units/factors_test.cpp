// Unit factors against their definitions. Source: nistsp811 (NIST SP 811, 2008), appendix B.8, and
// the exact definitions it rests on: inch 25.4 mm, avoirdupois pound 453.59237 g, US gallon 231
// in³.
#include <gtest/gtest.h>

#include "wetout/units/milligrams.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

TEST(Factors, LengthsAreExact) {
  EXPECT_EQ(in_metres(*read_length("1 in")), 0.0254);
  EXPECT_EQ(in_metres(*read_length("1 ft")), 0.3048);
  EXPECT_EQ(in_metres(*read_length("1 yd")), 0.9144);
  EXPECT_EQ(in_metres(*read_length("1 mm")), 0.001);
  EXPECT_EQ(in_metres(*read_length("1 um")), 0.000001);
}

TEST(Factors, AreasAreExact) {
  EXPECT_EQ(in_square_metres(*read_area("1 ft2")), 0.09290304);
  EXPECT_EQ(in_square_metres(*read_area("1 yd2")), 0.83612736);
  EXPECT_EQ(in_square_metres(*read_area("1 in2")), 0.00064516);
  EXPECT_EQ(in_square_metres(*read_area("1 cm2")), 0.0001);
}

TEST(Factors, MassesAreExact) {
  EXPECT_EQ(in_kilograms(*read_mass("1 oz")), 0.028349523125);
  EXPECT_EQ(in_kilograms(*read_mass("1 lb")), 0.45359237);
  EXPECT_EQ(in_kilograms(*read_mass("1 g")), 0.001);
}

TEST(Factors, VolumesAreUsMeasures) {
  EXPECT_EQ(in_cubic_metres(*read_volume("1 fl oz")), 29.5735295625e-6);
  EXPECT_EQ(in_cubic_metres(*read_volume("1 qt")), 0.946352946e-3);
  EXPECT_EQ(in_cubic_metres(*read_volume("1 gal")), 3.785411784e-3);
  EXPECT_EQ(in_cubic_metres(*read_volume("231 in3")), 3.785411784e-3);
  EXPECT_EQ(in_cubic_metres(*read_volume("1 pt")), 0.473176473e-3);
}

// 28.349523125 g / 0.83612736 m², worked to fifteen digits; SP 811 prints 3.390 575 E-02 kg/m².
TEST(Factors, ClothWeightPerSquareYard) {
  EXPECT_NEAR(in_grams_per_square_metre(*read_areal_weight("1 oz/yd2")), 33.9057474748823, 5e-14);
  EXPECT_NEAR(read_areal_weight("1 oz/yd2")->si(), 3.390575e-2, 5e-9);
  EXPECT_NEAR(in_grams_per_square_metre(*read_areal_weight("4 oz/yd2")), 135.6230, 5e-5);
  EXPECT_NEAR(in_grams_per_square_metre(*read_areal_weight("6 oz/yd2")), 203.4345, 5e-5);
  EXPECT_NEAR(in_grams_per_square_metre(*read_areal_weight("7.5 oz/yd2")), 254.2931, 5e-5);
  EXPECT_NEAR(in_grams_per_square_metre(*read_areal_weight("10 oz/yd2")), 339.0575, 5e-5);
}

// SP 811 prints 1.601 846 E+01 kg/m³ per lb/ft³.
TEST(Factors, FoamDensityPerCubicFoot) {
  EXPECT_NEAR(in_kilograms_per_cubic_metre(*read_density("1 lb/ft3")), 16.01846337, 5e-9);
  EXPECT_NEAR(in_kilograms_per_cubic_metre(*read_density("1 lb/ft3")), 1.601846e1, 5e-6);
  EXPECT_EQ(*read_density("1 g/ml"), *read_density("1000 kg/m3"));
}

TEST(Factors, TemperatureScalesMeetAtMinusForty) {
  EXPECT_NEAR(in_minutes(*read_duration("1 h")), 60.0, 0.0);
  EXPECT_EQ(*read_temperature("-40 C"), *read_temperature("-40 F"));
  EXPECT_EQ(*read_temperature("0 C"), *read_temperature("32 F"));
  EXPECT_EQ(*read_temperature("100 C"), *read_temperature("212 F"));
  EXPECT_EQ(*read_temperature("0 C"), *read_temperature("273.15 K"));
}

TEST(Factors, NamedFunctionsAgreeWithTheReaderToTheLastBit) {
  EXPECT_EQ(inches(20.75), *read_length("20 3/4 in"));
  EXPECT_EQ(feet(6.25), *read_length("6.25 ft"));
  EXPECT_EQ(millimetres(52.3), *read_length("52.3 mm"));
  EXPECT_EQ(square_feet(12.5), *read_area("12.5 ft2"));
  EXPECT_EQ(litres(1.3), *read_volume("1.3 l"));
  EXPECT_EQ(millilitres(18.7), *read_volume("18.7 ml"));
  EXPECT_EQ(us_fluid_ounces(12.5), *read_volume("12.5 fl oz"));
  EXPECT_EQ(grams(212.3), *read_mass("212.3 g"));
  EXPECT_EQ(ounces(7.5), *read_mass("7.5 oz"));
  EXPECT_EQ(pounds(5.25), *read_mass("5.25 lb"));
  EXPECT_EQ(grams_per_square_metre(135.6), *read_areal_weight("135.6 g/m2"));
  EXPECT_EQ(ounces_per_square_yard(4.4), *read_areal_weight("4.4 oz/yd2"));
  EXPECT_EQ(kilograms_per_cubic_metre(32.5), *read_density("32.5 kg/m3"));
  EXPECT_EQ(grams_per_millilitre(1.13), *read_density("1.13 g/ml"));
  EXPECT_EQ(grams_per_metre(6.5), *read_linear_weight("6.5 g/m"));
  EXPECT_EQ(minutes(25.5), *read_duration("25.5 min"));
  EXPECT_EQ(minutes_per_square_metre(7.5), *read_pace("7.5 min/m2"));
  EXPECT_DOUBLE_EQ(pounds_per_cubic_foot(2.2).si(), read_density("2.2 lb/ft3")->si());
}

TEST(Factors, ReadersAndWritersOfOneUnitAreInverse) {
  EXPECT_DOUBLE_EQ(in_inches(inches(20.75)), 20.75);
  EXPECT_DOUBLE_EQ(in_square_feet(square_feet(9.7)), 9.7);
  EXPECT_DOUBLE_EQ(in_us_fluid_ounces(us_fluid_ounces(8.1)), 8.1);
  EXPECT_DOUBLE_EQ(in_ounces(ounces(7.5)), 7.5);
  EXPECT_DOUBLE_EQ(in_pounds(pounds(6.3)), 6.3);
  EXPECT_DOUBLE_EQ(in_ounces_per_square_yard(ounces_per_square_yard(4.1)), 4.1);
  EXPECT_DOUBLE_EQ(in_pounds_per_cubic_foot(pounds_per_cubic_foot(2.1)), 2.1);
  EXPECT_DOUBLE_EQ(in_ounces_per_foot(*read_linear_weight("0.07 oz/ft")), 0.07);
  EXPECT_DOUBLE_EQ(in_minutes_per_square_foot(*read_pace("0.65 min/ft2")), 0.65);
}

TEST(Products, CarryTheirDimension) {
  EXPECT_DOUBLE_EQ(in_grams(grams_per_square_metre(135.0) * square_metres(0.9)), 121.5);
  EXPECT_DOUBLE_EQ(in_litres(grams(1130) / grams_per_millilitre(1.13)), 1.0);
  EXPECT_DOUBLE_EQ(in_minutes(minutes_per_square_metre(7) * square_metres(0.9)), 6.3);
  EXPECT_DOUBLE_EQ(in_grams(grams_per_metre(6) * metres(4)), 24.0);
}

TEST(Milligrams, RoundToTheNearest) {
  EXPECT_EQ(Milligrams::nearest(grams(0.0004999)).count(), 0);
  EXPECT_EQ(Milligrams::nearest(grams(0.0005001)).count(), 1);
  EXPECT_EQ(Milligrams::nearest(grams(212.3456)).count(), 212346);
  EXPECT_EQ(Milligrams::nearest(grams(-1.2)).count(), -1200);
}

}  // namespace
}  // namespace wetout::units
