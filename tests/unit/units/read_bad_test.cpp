// Every reader says what is wrong, what it wants, and what to write instead.
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "refusal.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

struct Reader {
  std::string name;
  std::string good_unit;
  std::function<base::Problem(std::string_view)> refuse;
};

template <class T>
Reader reader(std::string name, std::string unit, base::Result<T> (*read)(std::string_view)) {
  return {std::move(name), std::move(unit),
          [read](std::string_view text) { return refusal(read(text)); }};
}

std::vector<Reader> readers() {
  return {reader("length", "mm", read_length),
          reader("area", "m2", read_area),
          reader("volume", "ml", read_volume),
          reader("mass", "g", read_mass),
          reader("areal weight", "g/m2", read_areal_weight),
          reader("density", "kg/m3", read_density),
          reader("linear weight", "g/m", read_linear_weight),
          reader("duration", "min", read_duration),
          reader("duration range", "min", read_duration_range),
          reader("pace", "min/m2", read_pace),
          reader("temperature", "C", read_temperature),
          reader("temp delta", "K", read_temp_delta),
          reader("percent", "%", read_percent),
          reader("mass or volume", "ml", read_mass_or_volume),
          reader("money", "USD", read_money)};
}

void expect_useful(const base::Problem& problem, const std::string& where) {
  EXPECT_FALSE(problem.message.empty()) << where;
  EXPECT_NE(problem.expected.find("e.g. \""), std::string::npos) << where;
  EXPECT_FALSE(problem.hint.empty()) << where;
}

TEST(BadQuantity, BareNumberIsRefusedEverywhere) {
  for (const Reader& read : readers()) {
    const base::Problem problem = read.refuse("25");
    EXPECT_EQ(problem.code, "unit.missing") << read.name;
    EXPECT_EQ(problem.found, "25") << read.name;
    expect_useful(problem, read.name);
    EXPECT_EQ(read.refuse("2 1/2").code, read.name == "money" ? "currency.unknown" : "unit.missing")
        << read.name;
  }
}

TEST(BadQuantity, ExamplesInMessagesAreReadByTheSameReader) {
  for (const Reader& read : readers()) {
    const std::string expected = read.refuse("25").expected;
    const std::size_t begin = expected.find("e.g. \"") + 6;
    const std::string example = expected.substr(begin, expected.rfind('"') - begin);
    EXPECT_EQ(read.refuse(example).code, "(read)") << read.name << ": " << example;
  }
}

TEST(BadQuantity, HintsForABareNumberAreReadByTheSameReader) {
  for (const Reader& read : readers()) {
    const std::string hint = read.refuse("25").hint;
    const std::size_t begin = hint.find('"') + 1;
    const std::string first = hint.substr(begin, hint.find('"', begin) - begin);
    EXPECT_EQ(read.refuse(first).code, "(read)") << read.name << ": " << first;
  }
}

TEST(BadQuantity, NumbersThatAreNotFiniteAreRefused) {
  for (const Reader& read : readers()) {
    if (read.name == "money") continue;
    for (const std::string number : {"nan", "inf", "-inf", "NaN", "Infinity", "1e400", "1e-400"}) {
      const base::Problem problem = read.refuse(number + " " + read.good_unit);
      EXPECT_EQ(problem.code, "number.not_finite") << read.name << ": " << number;
      expect_useful(problem, read.name);
    }
  }
}

TEST(BadQuantity, ResultsThatAreNotFiniteAreRefused) {
  EXPECT_EQ(code_of(read_length("1e308 ft")), "number.not_finite");
  EXPECT_EQ(code_of(read_duration("1e308 weeks")), "number.not_finite");
  EXPECT_EQ(code_of(read_temp_delta("1.7e308 F")), "number.not_finite");
}

TEST(BadQuantity, WhatIsNoNumberIsRefused) {
  for (const Reader& read : readers()) {
    for (const std::string number : {"", "abc ", "- ", "--5 ", "+-5 ", ". ", "1.2.3 ", "1/0 ",
                                     "2 5/4 ", "1/2/3 ", "1,5 ", "1,200 ", "1 000 "}) {
      if (read.name == "money" && number.find('/') != std::string::npos) continue;
      const base::Problem problem = read.refuse(number + read.good_unit);
      const bool refused = problem.code == "number.bad" ||
                           (read.name == "money" && problem.code == "currency.unknown");
      EXPECT_TRUE(refused) << read.name << ": " << number << " gave " << problem.code;
      expect_useful(problem, read.name + ": " + number);
    }
  }
}

TEST(BadQuantity, NothingAtAllIsRefused) {
  for (const Reader& read : readers()) {
    for (const std::string_view text : {std::string_view(""), std::string_view("  "),
                                        std::string_view("\0", 1), std::string_view("\n")}) {
      EXPECT_EQ(read.refuse(text).code, "number.bad") << read.name;
    }
  }
}

TEST(BadQuantity, UnknownUnitsComeWithTheNearestOne) {
  EXPECT_EQ(refusal(read_length("25 mn")).hint, "did you mean \"mm\"?");
  EXPECT_EQ(refusal(read_length("12 inchs")).hint, "did you mean \"inch\"?");
  EXPECT_EQ(refusal(read_mass("5 punds")).hint, "did you mean \"pounds\"?");
  EXPECT_EQ(refusal(read_duration("25 minuts")).hint, "did you mean \"minute\"?");
  EXPECT_EQ(refusal(read_areal_weight("4 oz/yb2")).hint, "did you mean \"oz/yd2\"?");
  EXPECT_EQ(refusal(read_temperature("22 celcius")).hint, "did you mean \"celsius\"?");
  EXPECT_EQ(code_of(read_length("25 zorkmids")), "unit.unknown");
  // One letter is one slip away from every other: no guess.
  EXPECT_EQ(refusal(read_mass("5 x")).hint, "use \"g\" or \"oz\"");
}

TEST(BadQuantity, WrongUnitsNameBothKinds) {
  const base::Problem problem = refusal(read_length("25 kg"));
  EXPECT_EQ(problem.code, "unit.wrong");
  EXPECT_EQ(problem.message, "\"kg\" is a unit of mass, not of length");
  EXPECT_EQ(problem.expected, "a length with its unit, e.g. \"20 3/4 in\"");
  EXPECT_EQ(problem.hint, "use \"in\" or \"mm\"");
  EXPECT_EQ(refusal(read_length("5 m/s")).message, "\"m/s\" is not a unit of length");
}

TEST(BadQuantity, WhatFollowsTheUnitIsRefused) {
  EXPECT_EQ(refusal(read_mass("5 g x")).message, "\"x\" after the unit \"g\" is not understood");
  for (const char* text : {"5 g x", "5 g)", "5 g 3", "5 g ~", "5 g;", "5 g - 6 g", "5 g\"", "5 g/",
                           "5 g per", "5 g/m2/m2", "5 g g", "5 g +1 g"}) {
    EXPECT_NE(code_of(read_mass(text)), "(read)") << text;
  }
}

TEST(BadQuantity, ImperialMeasuresAreNotTakenForUsOnes) {
  for (const char* text : {"1 imp gal", "1 imperial gallon", "1 UK pint"}) {
    EXPECT_EQ(code_of(read_volume(text)), "unit.unknown") << text;
    EXPECT_NE(refusal(read_volume(text)).hint.find("US"), std::string::npos) << text;
  }
}

TEST(BadQuantity, HugeAndBrokenTextIsShownShortAndClean) {
  for (const Reader& read : readers()) {
    const base::Problem huge = read.refuse(std::string(1'000'000, '9'));
    EXPECT_EQ(huge.code, "number.bad") << read.name;
    EXPECT_LE(huge.found.size(), 70U) << read.name;
    const base::Problem broken = read.refuse("5 \xff\x1b[31m\xc3");
    EXPECT_NE(broken.code, "(read)") << read.name;
    for (const std::string& said : {broken.found, broken.message, broken.hint}) {
      EXPECT_EQ(said.find_first_of("\xff\x1b\xc3"), std::string::npos) << read.name << said;
    }
  }
}

}  // namespace
}  // namespace wetout::units
