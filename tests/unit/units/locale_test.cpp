// A program's locale must not reach what is read or printed.
#include <gtest/gtest.h>

#include <clocale>
#include <locale>
#include <sstream>
#include <string>

#include "wetout/units/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

// Decimal comma and grouped thousands, as in much of Europe.
struct CommaMarks : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

class ForeignLocale : public testing::Test {
 protected:
  void SetUp() override {
    std::setlocale(LC_ALL, "de_DE.UTF-8");  // only if installed; the C++ locale below always is
    before_ = std::locale::global(std::locale(std::locale(), new CommaMarks));
    std::ostringstream probe;
    probe << 1234.5;
    ASSERT_EQ(probe.str(), "1.234,5");
  }
  void TearDown() override {
    std::locale::global(before_);
    std::setlocale(LC_ALL, "C");
  }

 private:
  std::locale before_;
};

TEST_F(ForeignLocale, DoesNotReachReading) {
  EXPECT_EQ(*read_length("6 ft 2.5 in"), inches(74.5));
  EXPECT_EQ(*read_density("1.13 g/ml"), grams_per_millilitre(1.13));
  EXPECT_EQ(*read_mass("1234.5 g"), grams(1234.5));
  EXPECT_FALSE(read_mass("1234,5 g"));
  EXPECT_EQ(read_money("48.50 USD")->minor, 4850);
}

TEST_F(ForeignLocale, DoesNotReachPrinting) {
  EXPECT_EQ(print(grams(12345), System::metric), "12345 g");
  EXPECT_EQ(print(square_metres(0.9), System::us), "9.7 ft²");
  EXPECT_EQ(print(inches(76), System::metric), "193.0 cm");
  EXPECT_EQ(print(hours(48000), System::us), "2000 days");
  EXPECT_EQ(print(Money{123456789, "USD"}), "1234567.89 USD");
  EXPECT_EQ(print_number(1234.5, 1), "1234.5");
}

}  // namespace
}  // namespace wetout::units
