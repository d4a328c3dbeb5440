#include <gtest/gtest.h>

#include "refusal.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

TEST(ReadLength, TakesFeetInchesAndFractions) {
  EXPECT_EQ(*read_length("6' 2 1/2\""), inches(74.5));
  EXPECT_EQ(*read_length("6 ft 2.5 in"), inches(74.5));
  EXPECT_EQ(*read_length("20 3/4 in"), inches(20.75));
  EXPECT_EQ(*read_length("1/8\""), inches(0.125));
  EXPECT_EQ(*read_length("6'4\""), inches(76));
  EXPECT_EQ(*read_length("6'"), feet(6));
  EXPECT_EQ(*read_length("6ft2in"), inches(74));
  EXPECT_EQ(*read_length("6ft2 1/2in"), inches(74.5));
  EXPECT_EQ(*read_length("20-3/4 in"), inches(20.75));
  EXPECT_EQ(*read_length("6'-2 1/2\""), inches(74.5));
}

TEST(ReadLength, TakesPrimesAndCurlyQuotes) {
  EXPECT_EQ(*read_length("6′ 4″"), inches(76));
  EXPECT_EQ(*read_length("6’ 4”"), inches(76));
  EXPECT_EQ(*read_length("6‘ 4“"), inches(76));
  EXPECT_EQ(*read_length("6'4''"), inches(76));
  EXPECT_EQ(*read_length("20¾″"), inches(20.75));
  EXPECT_EQ(*read_length("20 3⁄4 in"), inches(20.75));  // fraction slash, narrow blank
}

TEST(ReadLength, TakesANumberAfterAFootMarkForInches) {
  EXPECT_EQ(*read_length("6'4"), inches(76));
  EXPECT_EQ(*read_length("6' 2 1/2"), inches(74.5));
  EXPECT_EQ(code_of(read_length("6 ft 4")), "unit.missing");
}

TEST(ReadLength, TakesWordsPeopleWrite) {
  EXPECT_EQ(*read_length("6 feet 2 inches"), inches(74));
  EXPECT_EQ(*read_length("6 ft. 2 in."), inches(74));
  EXPECT_EQ(*read_length("6 ft, 2 in"), inches(74));
  EXPECT_EQ(*read_length("6 ft and 2 in"), inches(74));
  EXPECT_EQ(*read_length("10 yards"), feet(30));
  EXPECT_EQ(*read_length("188 centimetres"), *read_length("1.88 meters"));
  EXPECT_EQ(*read_length("  188 CM "), *read_length("188cm"));
}

TEST(ReadLength, TakesMetricInParts) {
  EXPECT_EQ(*read_length("1 m 93 cm"), *read_length("193 cm"));
  EXPECT_EQ(*read_length("1930 mm"), *read_length("1.93 m"));
}

TEST(ReadLength, PutsTheSignOnTheWhole) {
  EXPECT_EQ(*read_length("-1 ft 2 in"), inches(-14));
  EXPECT_EQ(*read_length("−3 mm"), millimetres(-3));
  EXPECT_EQ(*read_length("+1 in"), inches(1));
  EXPECT_EQ(1.0 / read_length("-0 in")->si(), 1.0 / 0.0);  // no negative zero
}

TEST(ReadLength, IsExactForSixteenths) {
  for (int n = 0; n < 16 * 24; ++n) {
    const std::string text = std::to_string(n / 16) + " " + std::to_string(n % 16) + "/16 in";
    ASSERT_EQ(read_length(text)->si(), n * 15.875 / 10000.0) << text;  // 1/16 in = 1.5875 mm
  }
}

TEST(ReadLength, RefusesPartsThatDoNotFit) {
  EXPECT_EQ(code_of(read_length("6 ft 12 in")), "number.bad");
  EXPECT_EQ(code_of(read_length("6'41")), "number.bad");
  EXPECT_EQ(code_of(read_length("6.5 ft 2 in")), "number.bad");
  EXPECT_EQ(code_of(read_length("4 in 6 ft")), "number.bad");
  EXPECT_EQ(code_of(read_length("1 ft 3 cm")), "number.bad");
  EXPECT_EQ(code_of(read_length("6 ft 6 ft")), "number.bad");
}

TEST(ReadLength, ExplainsTheNamesOfBoards) {
  const base::Problem problem = refusal(read_length("6-4"));
  EXPECT_EQ(problem.code, "number.bad");
  EXPECT_NE(problem.hint.find("\"6 ft 4 in\""), std::string::npos) << problem.hint;
}

}  // namespace
}  // namespace wetout::units
