#include "wetout/units/read.hpp"

#include <gtest/gtest.h>

#include "refusal.hpp"

namespace wetout::units {
namespace {

TEST(ReadArea, TakesSquaresInManySpellings) {
  for (const char* text : {"12 ft2", "12 ft²", "12 ft^2", "12 sq ft", "12 sq. ft.", "12sqft",
                           "12 square feet", "12 Square Foot"}) {
    ASSERT_TRUE(read_area(text)) << text;
    EXPECT_EQ(*read_area(text), square_feet(12)) << text;
  }
  EXPECT_EQ(*read_area("1.2 m²"), square_metres(1.2));
  EXPECT_EQ(code_of(read_area("12 ft")), "unit.wrong");
}

TEST(ReadVolume, TakesMetricAndUsMeasures) {
  EXPECT_EQ(*read_volume("1 l"), millilitres(1000));
  EXPECT_EQ(*read_volume("1 L"), litres(1));
  EXPECT_EQ(*read_volume("100 cc"), millilitres(100));
  EXPECT_EQ(*read_volume("100 cm³"), millilitres(100));
  for (const char* text : {"12 fl oz", "12 fl. oz.", "12floz", "12 US fl oz", "12 U.S. fl. oz.",
                           "12 fluid ounces", "12 fl-oz"}) {
    ASSERT_TRUE(read_volume(text)) << text;
    EXPECT_EQ(*read_volume(text), us_fluid_ounces(12)) << text;
  }
  EXPECT_EQ(*read_volume("1/2 gal"), *read_volume("2 qt"));
  EXPECT_EQ(*read_volume("1 gal 1 qt"), *read_volume("5 quarts"));
}

TEST(ReadMass, TakesPoundsAndOunces) {
  EXPECT_EQ(*read_mass("245g"), grams(245));
  EXPECT_EQ(*read_mass("2.4 kg"), grams(2400));
  EXPECT_EQ(*read_mass("3 lb 4 oz"), ounces(52));
  EXPECT_EQ(*read_mass("3lb4oz"), ounces(52));
  EXPECT_EQ(*read_mass("5 pounds"), *read_mass("5 lbs"));
  EXPECT_EQ(*read_mass("8 oz"), ounces(8));
  EXPECT_EQ(*read_mass("1.5e3 g"), grams(1500));
}

TEST(ReadArealWeight, TakesABareOunceForOuncesPerSquareYard) {
  for (const char* text : {"4 oz", "4oz", "4 ounces", "4 oz/yd2", "4 oz/yd²", "4 oz./yd^2",
                           "4 oz/sq yd", "4 oz per sq. yd.", "4 ounces per square yard"}) {
    ASSERT_TRUE(read_areal_weight(text)) << text;
    EXPECT_EQ(*read_areal_weight(text), ounces_per_square_yard(4)) << text;
  }
  EXPECT_EQ(*read_areal_weight("135 gsm"), grams_per_square_metre(135));
  EXPECT_EQ(*read_areal_weight("135 g / m^2"), grams_per_square_metre(135));
  EXPECT_EQ(code_of(read_areal_weight("4 fl oz")), "unit.wrong");
  EXPECT_EQ(code_of(read_areal_weight("4 lb")), "unit.wrong");
}

TEST(ReadDensity, TakesFoamAndLiquids) {
  EXPECT_EQ(*read_density("2 lb/ft3"), *read_density("2 pcf"));
  EXPECT_EQ(*read_density("2 lb per cubic foot"), *read_density("2 lb/cu ft"));
  EXPECT_EQ(*read_density("32 kg/m³"), kilograms_per_cubic_metre(32));
  EXPECT_EQ(*read_density("1.13 g/ml"), *read_density("1.13 g/cm3"));
  EXPECT_EQ(code_of(read_density("2 lb")), "unit.wrong");
}

TEST(ReadRates, TakeMassPerLengthAndTimePerArea) {
  EXPECT_EQ(*read_linear_weight("6 g/m"), grams_per_metre(6));
  EXPECT_EQ(*read_pace("7 min/m2"), minutes_per_square_metre(7));
  EXPECT_EQ(*read_pace("7 minutes per square metre"), minutes_per_square_metre(7));
  EXPECT_EQ(code_of(read_pace("7 min/m")), "unit.wrong");
}

TEST(ReadDuration, TakesHoursAndMinutes) {
  EXPECT_EQ(*read_duration("1 h 30 min"), minutes(90));
  EXPECT_EQ(*read_duration("1h30min"), minutes(90));
  EXPECT_EQ(*read_duration("1 1/2 hours"), minutes(90));
  EXPECT_EQ(*read_duration("24 hrs"), days(1));
  EXPECT_EQ(*read_duration("2 weeks"), days(14));
  EXPECT_EQ(*read_duration("45s"), seconds(45));
}

TEST(ReadDuration, TellsMetresFromMinutes) {
  const base::Problem problem = refusal(read_duration("25 m"));
  EXPECT_EQ(problem.code, "unit.wrong");
  EXPECT_EQ(problem.hint, "\"m\" is metres; minutes are \"min\"");
}

TEST(ReadDurationRange, TakesWhatDataSheetsPrint) {
  const auto expect = [](const char* text, Duration low, Duration high) {
    const base::Result<DurationRange> range = read_duration_range(text);
    ASSERT_TRUE(range) << text << ": " << range.error()[0].message;
    EXPECT_EQ(range->low, low) << text;
    EXPECT_EQ(range->high, high) << text;
  };
  expect("25-30 min", minutes(25), minutes(30));
  expect("25 - 30min", minutes(25), minutes(30));
  expect("5–6 h", hours(5), hours(6));
  expect("5 to 6 h", hours(5), hours(6));
  expect("30 min to 1 h", minutes(30), hours(1));
  expect("30 min - 1 h 15 min", minutes(30), minutes(75));
  expect("1-1/2 h", minutes(90), minutes(90));
  expect("1-1/2-2 h", minutes(90), minutes(120));
  expect("13 h", hours(13), hours(13));
  expect("7-7 days", days(7), days(7));
}

TEST(ReadDurationRange, RefusesWhatIsNoRange) {
  EXPECT_EQ(code_of(read_duration_range("30-25 min")), "number.bad");
  EXPECT_EQ(code_of(read_duration_range("5-6")), "unit.missing");
  EXPECT_EQ(refusal(read_duration_range("5-6")).hint, "write \"5-6 min\" or \"5-6 h\"");
  EXPECT_EQ(code_of(read_duration_range("5-6 g")), "unit.wrong");
  EXPECT_EQ(code_of(read_duration_range("5-6 fortnights")), "unit.unknown");
  EXPECT_EQ(code_of(read_duration_range("5-")), "number.bad");
  EXPECT_EQ(code_of(read_duration_range("1 to 1 h 30 min")), "unit.missing");
  EXPECT_EQ(code_of(read_duration_range("25 g")), "unit.wrong");
  EXPECT_EQ(refusal(read_duration_range("5-6 g")).found, "5-6 g");
}

TEST(ReadTemperature, TakesBothScalesWithOrWithoutTheDegreeSign) {
  for (const char* text : {"22 C", "22C", "22 c", "22 °C", "22°C", "22 ° C", "22 º C", "22 ℃",
                           "22 deg C", "22 degrees Celsius", "22 celsius", "22 centigrade"}) {
    ASSERT_TRUE(read_temperature(text)) << text;
    EXPECT_EQ(*read_temperature(text), Temperature::celsius(22)) << text;
  }
  for (const char* text : {"72F", "72 °F", "72 ℉", "72 deg. F", "72 degrees Fahrenheit"}) {
    ASSERT_TRUE(read_temperature(text)) << text;
    EXPECT_EQ(*read_temperature(text), Temperature::fahrenheit(72)) << text;
  }
  EXPECT_EQ(*read_temperature("-5C"), Temperature::celsius(-5));
  EXPECT_EQ(*read_temperature("−5 °C"), Temperature::celsius(-5));
}

TEST(ReadTemperature, RefusesDegreesWithoutAScaleAndBelowAbsoluteZero) {
  EXPECT_EQ(code_of(read_temperature("22°")), "unit.ambiguous");
  EXPECT_EQ(refusal(read_temperature("22 degrees")).hint, "write \"22 C\" or \"22 F\"");
  EXPECT_EQ(code_of(read_temperature("-273.15 C")), "(read)");
  EXPECT_EQ(code_of(read_temperature("-273.16 C")), "number.bad");
  EXPECT_EQ(code_of(read_temperature("-460 F")), "number.bad");
  EXPECT_EQ(code_of(read_temperature("1e308 F")), "number.not_finite");
  EXPECT_EQ(code_of(read_temperature("20 C 5 C")), "number.bad");
}

TEST(ReadTempDelta, TakesNoOffset) {
  EXPECT_EQ(*read_temp_delta("3 C"), TempDelta::kelvin(3));
  EXPECT_EQ(*read_temp_delta("3 K"), TempDelta::kelvin(3));
  EXPECT_EQ(*read_temp_delta("9 F"), TempDelta::kelvin(5));
  EXPECT_EQ(*read_temp_delta("-9 F"), TempDelta::kelvin(-5));
}

TEST(ReadPercent, IsAShareOfOne) {
  EXPECT_EQ(*read_percent("2 %"), 0.02);
  EXPECT_EQ(*read_percent("0.5%"), 0.005);
  EXPECT_EQ(*read_percent("2 percent"), 0.02);
  EXPECT_EQ(*read_percent("2 per cent"), 0.02);
  EXPECT_EQ(code_of(read_percent("0.02")), "unit.missing");
  EXPECT_NE(refusal(read_percent("0.02")).hint.find("\"2 %\""), std::string::npos);
}

TEST(ReadMassOrVolume, TellsThemApartByTheUnit) {
  EXPECT_FALSE(read_mass_or_volume("245 g")->is_volume);
  EXPECT_EQ(read_mass_or_volume("245 g")->mass, grams(245));
  EXPECT_TRUE(read_mass_or_volume("1/2 gal")->is_volume);
  EXPECT_EQ(read_mass_or_volume("1/2 gal")->volume, us_fluid_ounces(64));
  EXPECT_EQ(read_mass_or_volume("1 lb 2 oz")->mass, ounces(18));
  EXPECT_EQ(read_mass_or_volume("8 oz wt")->mass, ounces(8));
  EXPECT_EQ(read_mass_or_volume("8 fl oz")->volume, us_fluid_ounces(8));
}

TEST(ReadMassOrVolume, RefusesABareOunce) {
  const base::Problem problem = refusal(read_mass_or_volume("8 oz"));
  EXPECT_EQ(problem.code, "unit.ambiguous");
  EXPECT_EQ(problem.hint, "write \"oz wt\" for a mass, \"fl oz\" for a volume");
  EXPECT_EQ(code_of(read_volume("8 oz")), "unit.ambiguous");
  EXPECT_EQ(code_of(read_mass_or_volume("8 in")), "unit.wrong");
}

}  // namespace
}  // namespace wetout::units
