#include "wetout/units/money.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <limits>
#include <stdexcept>

#include "refusal.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

TEST(Money, DigitsAreExact) {
  EXPECT_EQ(*read_money("48.00 USD"), (Money{4800, "USD"}));
  EXPECT_EQ(*read_money("48 USD"), (Money{4800, "USD"}));
  EXPECT_EQ(*read_money("48.5usd"), (Money{4850, "USD"}));
  EXPECT_EQ(*read_money("0.29 EUR"), (Money{29, "EUR"}));
  EXPECT_EQ(*read_money("-3.50 EUR"), (Money{-350, "EUR"}));
  EXPECT_EQ(*read_money("9999999999999.99 USD"), (Money{999999999999999, "USD"}));
}

// Decimals of iso4217: none for JPY, three for KWD.
TEST(Money, UsesTheDecimalsOfItsCurrency) {
  EXPECT_EQ(*read_money("100 JPY"), (Money{100, "JPY"}));
  EXPECT_EQ(*read_money("1.234 KWD"), (Money{1234, "KWD"}));
  EXPECT_EQ(code_of(read_money("100.5 JPY")), "number.bad");
  EXPECT_EQ(code_of(read_money("48.005 USD")), "number.bad");
}

TEST(Money, PrintsWhatItReads) {
  for (const char* text : {"48.00 USD", "0.05 USD", "-0.05 USD", "0.00 USD", "100 JPY", "1.234 KWD",
                           "9999999999999.99 EUR"}) {
    EXPECT_EQ(print(*read_money(text)), text);
  }
  EXPECT_EQ(print(*read_money("-0.00 USD")), "0.00 USD");
  EXPECT_EQ(print(Money{std::numeric_limits<std::int64_t>::min(), "USD"}),
            "-92233720368547758.08 USD");
}

TEST(Money, RefusesWhatIsNotAnAmount) {
  EXPECT_EQ(code_of(read_money("48")), "unit.missing");
  EXPECT_EQ(code_of(read_money("$48")), "number.bad");
  EXPECT_EQ(code_of(read_money("nan USD")), "number.bad");
  EXPECT_EQ(code_of(read_money("48. USD")), "number.bad");
  EXPECT_EQ(code_of(read_money("1,200.00 USD")), "number.bad");
  EXPECT_EQ(code_of(read_money("99999999999999.99 USD")), "number.not_finite");
  EXPECT_EQ(code_of(read_money("48.00 USD EUR")), "currency.unknown");
  EXPECT_EQ(refusal(read_money("48 UDS")).hint, "did you mean \"USD\"?");
}

TEST(Money, PerHourIsReadAsItsAmount) {
  EXPECT_EQ(*read_money_per_hour("30 USD/h"), (Money{3000, "USD"}));
  EXPECT_EQ(*read_money_per_hour("30.50 USD per hour"), (Money{3050, "USD"}));
  EXPECT_EQ(code_of(read_money_per_hour("30 USD")), "unit.missing");
  EXPECT_EQ(code_of(read_money_per_hour("30 USD/min")), "unit.missing");
  EXPECT_EQ(code_of(read_money_per_hour("30/h")), "unit.missing");
}

TEST(Currency, IsReadInCapitals) {
  EXPECT_EQ(*read_currency("usd"), "USD");
  EXPECT_EQ(code_of(read_currency("dollars")), "currency.unknown");
  EXPECT_EQ(code_of(read_currency("")), "currency.unknown");
  EXPECT_EQ(code_of(read_currency("USD EUR")), "currency.unknown");
  EXPECT_EQ(minor_digits("D A"), std::nullopt);  // a piece of the list is no currency
}

TEST(Money, InAnUnknownCurrencyIsABug) { EXPECT_THROW(print(Money{1, "???"}), std::logic_error); }

}  // namespace
}  // namespace wetout::units
