#include "wetout/units/print.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

#include "refusal.hpp"

namespace wetout::units {
namespace {

constexpr System us = System::us;
constexpr System metric = System::metric;

TEST(PrintLength, UsIsFeetAndSixteenths) {
  EXPECT_EQ(print(inches(76), us), "6 ft 4 in");
  EXPECT_EQ(print(inches(74.5), us), "6 ft 2 1/2 in");
  EXPECT_EQ(print(inches(72), us), "6 ft");
  EXPECT_EQ(print(inches(72.5), us), "6 ft 1/2 in");
  EXPECT_EQ(print(inches(20.75), us), "20 3/4 in");
  EXPECT_EQ(print(inches(2.0 + 5.0 / 16), us), "2 5/16 in");
  EXPECT_EQ(print(inches(0.125), us), "1/8 in");
  EXPECT_EQ(print(inches(12), us), "12 in");
  EXPECT_EQ(print_inches(inches(75.125), us), "75 1/8 in");
}

TEST(PrintLength, RoundingCarries) {
  EXPECT_EQ(print(inches(15.99), us), "16 in");
  EXPECT_EQ(print(inches(11.98), us), "12 in");
  EXPECT_EQ(print(inches(23.98), us), "2 ft");
  EXPECT_EQ(print(inches(83.98), us), "7 ft");
  EXPECT_EQ(print(inches(0.97), us), "1 in");
  EXPECT_EQ(print(millimetres(99.4), metric), "99 mm");
  EXPECT_EQ(print(millimetres(99.6), metric), "10.0 cm");
  EXPECT_EQ(print(millimetres(9999.4), metric), "999.9 cm");
  EXPECT_EQ(print(millimetres(9999.6), metric), "10.00 m");
}

TEST(PrintLength, MetricKeepsMillimetres) {
  EXPECT_EQ(print(inches(76), metric), "193.0 cm");
  EXPECT_EQ(print(millimetres(52.3), metric), "52 mm");
  EXPECT_EQ(print(millimetres(527), metric), "52.7 cm");
  EXPECT_EQ(print_inches(inches(76), metric), "193.0 cm");
  EXPECT_EQ(print(metres(27.432), metric), "27.43 m");
  EXPECT_EQ(print_thickness(millimetres(0.18), us), "0.18 mm");
  EXPECT_EQ(print_thickness(millimetres(0.2), metric), "0.20 mm");
}

TEST(Print, NeverWritesMinusZero) {
  EXPECT_EQ(print(inches(-0.01), us), "0 in");
  EXPECT_EQ(print(millimetres(-0.4), metric), "0 mm");
  EXPECT_EQ(print(square_metres(-0.001), metric), "0.00 m²");
  EXPECT_EQ(print(grams(-0.3), metric), "0 g");
  EXPECT_EQ(print(grams(-0.3), us), "0.0 oz");
  EXPECT_EQ(print_weight(grams(-0.3), us), "0.0 oz");
  EXPECT_EQ(print_weight(grams(-0.3), metric), "0.00 kg");
  EXPECT_EQ(print(seconds(-0.2), us), "0 min");
  EXPECT_EQ(print(Temperature::celsius(-0.02), metric), "0 °C");
  EXPECT_EQ(print(TempDelta::kelvin(-0.0), us), "0 °F");
  EXPECT_EQ(print_percent(-0.0001), "0 %");
  EXPECT_EQ(print_number(-0.0, 3), "0");
}

TEST(Print, KeepsTheSignOfWhatIsNegative) {
  EXPECT_EQ(print(inches(-74.5), us), "-6 ft 2 1/2 in");
  EXPECT_EQ(print(inches(-1), us), "-1 in");
  EXPECT_EQ(print_weight(pounds(-1.5), us), "-1 lb 8.0 oz");
  EXPECT_EQ(print(minutes(-85), us), "-1 h 25 min");
  EXPECT_EQ(print(Temperature::celsius(-5), metric), "-5 °C");
}

TEST(Print, MassesAndVolumes) {
  EXPECT_EQ(print(grams(212.4), metric), "212 g");
  EXPECT_EQ(print(grams(212.4), us), "7.5 oz");
  EXPECT_EQ(print_both(grams(212.4), us), "212 g (7.5 oz)");
  EXPECT_EQ(print_both(grams(212.4), metric), "212 g");
  EXPECT_EQ(print_weight(kilograms(2.84), metric), "2.84 kg");
  EXPECT_EQ(print_weight(kilograms(2.84), us), "6 lb 4.2 oz");
  EXPECT_EQ(print_weight(pounds(6), us), "6 lb");
  EXPECT_EQ(print_weight(ounces(95.97), us), "6 lb");  // not "5 lb 16.0 oz"
  EXPECT_EQ(print_weight(ounces(4.2), us), "4.2 oz");
  EXPECT_EQ(print(millilitres(900.4), metric), "900 ml");
  EXPECT_EQ(print(us_fluid_ounces(8), us), "8.0 fl oz");
  EXPECT_EQ(print_litres(litres(31.42), us), "31.4 l");
  EXPECT_EQ(print_litres(litres(31.42), metric), "31.4 l");
}

TEST(Print, AreasWeightsAndDensities) {
  EXPECT_EQ(print(square_metres(0.9), metric), "0.90 m²");
  EXPECT_EQ(print(square_metres(0.9), us), "9.7 ft²");
  EXPECT_EQ(print(ounces_per_square_yard(4), us), "4 oz/yd²");
  EXPECT_EQ(print(ounces_per_square_yard(7.5), us), "7.5 oz/yd²");
  EXPECT_EQ(print(ounces_per_square_yard(4), metric), "136 g/m²");
  EXPECT_EQ(print(pounds_per_cubic_foot(2), us), "2 lb/ft³");
  EXPECT_EQ(print(pounds_per_cubic_foot(2), metric), "32 kg/m³");
  EXPECT_EQ(print(grams_per_metre(6), metric), "6 g/m");
  EXPECT_EQ(print(grams_per_metre(6), us), "0.06 oz/ft");
  EXPECT_EQ(print(minutes_per_square_metre(7), metric), "7 min/m²");
  EXPECT_EQ(print(minutes_per_square_metre(7), us), "0.65 min/ft²");
}

TEST(PrintDuration, ChoosesTheUnitAfterRounding) {
  EXPECT_EQ(print(seconds(45), us), "45 s");
  EXPECT_EQ(print(seconds(59.6), us), "1 min");
  EXPECT_EQ(print(seconds(0), metric), "0 min");
  EXPECT_EQ(print(minutes(17.2), us), "17 min");
  EXPECT_EQ(print(minutes(59.7), us), "1 h");
  EXPECT_EQ(print(minutes(85), us), "1 h 25 min");
  EXPECT_EQ(print(minutes(119.6), us), "2 h");
  EXPECT_EQ(print(hours(24), us), "24 h");
  EXPECT_EQ(print(minutes(48 * 60 - 0.3), us), "2 days");
  EXPECT_EQ(print(hours(60), us), "2 days 12 h");
  EXPECT_EQ(print(hours(71.8), us), "3 days");
  EXPECT_EQ(print(days(7), metric), "7 days");
}

TEST(PrintTemperature, HasSensibleDigits) {
  EXPECT_EQ(print(Temperature::celsius(22), us), "72 °F");
  EXPECT_EQ(print(Temperature::celsius(22), metric), "22 °C");
  EXPECT_EQ(print(Temperature::celsius(22.46), metric), "22.5 °C");
  EXPECT_EQ(print(TempDelta::kelvin(3), us), "5.4 °F");
  EXPECT_EQ(print(TempDelta::kelvin(3), metric), "3 °C");
}

TEST(PrintPercent, HasOneDecimalIfNeeded) {
  EXPECT_EQ(print_percent(0.08), "8 %");
  EXPECT_EQ(print_percent(0.125), "12.5 %");
  EXPECT_EQ(print_percent(1), "100 %");
}

TEST(PrintNumber, DropsTrailingZerosOnlyAfterThePoint) {
  EXPECT_EQ(print_number(120, 0), "120");
  EXPECT_EQ(print_number(120, 2), "120");
  EXPECT_EQ(print_number(1.5, 2), "1.5");
  EXPECT_EQ(print_number(0.999, 2), "1");
  EXPECT_EQ(print_number(-2.345, 2), "-2.35");
}

TEST(Print, HugeNumbersStayShort) {
  EXPECT_EQ(print(metres(1e300), metric), "1e+300 m");
  EXPECT_EQ(print(grams(1e20), us), "3.5274e+18 oz");
  EXPECT_LT(print(metres(1e300), us).size(), 20U);
  EXPECT_LT(print(seconds(1e300), us).size(), 20U);
  EXPECT_LT(print_weight(kilograms(1e300), us).size(), 20U);
}

TEST(Print, WhatIsNotFiniteIsABug) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double inf = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, inf, -inf}) {
    EXPECT_THROW(print(metres(bad), us), std::logic_error);
    EXPECT_THROW(print(metres(bad), metric), std::logic_error);
    EXPECT_THROW(print(kilograms(bad), us), std::logic_error);
    EXPECT_THROW(print_weight(kilograms(bad), us), std::logic_error);
    EXPECT_THROW(print(seconds(bad), us), std::logic_error);
    EXPECT_THROW(print_number(bad, 1), std::logic_error);
  }
}

TEST(System, IsReadByName) {
  EXPECT_EQ(*read_system("us"), us);
  EXPECT_EQ(*read_system("metric"), metric);
  EXPECT_EQ(to_string(us), "us");
  EXPECT_EQ(to_string(metric), "metric");
  EXPECT_EQ(code_of(read_system("imperial")), "word.unknown");
  EXPECT_EQ(refusal(read_system("metrik")).hint, "did you mean \"metric\"?");
}

}  // namespace
}  // namespace wetout::units
