#include "wetout/files/kit_file.hpp"

#include "sample.hpp"
#include "wetout/time/print.hpp"

namespace wetout::files {
namespace {

const std::string kit = R"([kit]
name = "starter kit"
price = "120.00 EUR"
[[part]]
material = "resin-a"
amount = "5 kg"
worth = "79.00 EUR"
batch = "B2041"
expires = 2027-06-30
[[part]]
material = "fin-box"
amount = 2
worth = "15 EUR"
lot = "boxes"
)";

std::string code_of(const std::string& text, const std::string& currency = "EUR") {
  const auto read = parse_kit(text, "kit.toml", currency);
  if (read) return "none";
  const base::Problem& first = read.error().front();
  return first.code + " " + first.key + " " + std::to_string(first.line);
}

TEST(Kit, HasAPriceAndParts) {
  const auto read = parse_kit(kit, "kit.toml", "EUR");
  ASSERT_TRUE(read) << list(read.error());
  EXPECT_EQ(read->name, "starter kit");
  EXPECT_EQ(read->price, (units::Money{12000, "EUR"}));
  ASSERT_EQ(read->parts.size(), 2U);
  EXPECT_EQ(read->parts[0].material, "resin-a");
  EXPECT_EQ(read->parts[0].amount, "5 kg");
  EXPECT_EQ(read->parts[0].batch, "B2041");
  EXPECT_EQ(time::print(*read->parts[0].expires), "2027-06-30");
  EXPECT_EQ(read->parts[1].amount, "2");
  EXPECT_EQ(read->parts[1].lot, "boxes");
  EXPECT_EQ(read->parts[1].worth, (units::Money{1500, "EUR"}));
}

TEST(Kit, MayLeaveWorthsToTheShop) {
  const std::string bare =
      with(with(kit, "worth = \"79.00 EUR\"\n", ""), "worth = \"15 EUR\"\n", "");
  EXPECT_EQ(code_of(bare), "none");
  EXPECT_EQ(code_of(with(kit, "worth = \"15 EUR\"\n", "")), "kit.worth part[1].worth 10");
}

TEST(Kit, SaysWhatIsMissingOrWrong) {
  EXPECT_EQ(code_of(with(kit, "price = \"120.00 EUR\"\n", "")), "key.missing kit.price 1");
  EXPECT_EQ(code_of(with(kit, "material = \"resin-a\"\n", "")), "key.missing part[0].material 4");
  EXPECT_EQ(code_of(with(kit, "amount = \"5 kg\"\n", "")), "key.missing part[0].amount 4");
  EXPECT_EQ(code_of("[kit]\nprice = \"1 EUR\"\n"), "key.missing part 1");
  EXPECT_EQ(code_of(with(kit, "120.00 EUR", "-1 EUR")), "value.range kit.price 3");
  EXPECT_EQ(code_of(with(kit, "120.00 EUR", "120")), "unit.missing kit.price 3");
  EXPECT_EQ(code_of(kit, "USD"), "currency.other kit.price 3");
  EXPECT_EQ(code_of(with(kit, "2027-06-30", "\"2027-6-31\"")), "date.bad part[0].expires 9");
  EXPECT_EQ(code_of(with(kit, "batch =", "bach =")), "key.unknown part[0].bach 8");
  EXPECT_EQ(code_of(with(kit, "name = \"starter kit\"", "amount = 2")), "key.unknown kit.amount 2");
}

TEST(Kit, IsToldFromOtherFiles) {
  EXPECT_EQ(code_of(input("shop.toml")).substr(0, 15), "file.other_kind");
  EXPECT_EQ(code_of(input("job.toml")).substr(0, 15), "file.other_kind");
  EXPECT_EQ(read_kit("no/such.toml", "EUR").error().front().code, "file.missing");
}

TEST(Shop, HasAWageForLabour) {
  const auto read = parse_shop(input("shop.toml"), "shop.toml");
  ASSERT_TRUE(read);
  EXPECT_EQ(read->labour, (units::Money{3000, "USD"}));
  EXPECT_FALSE(parse_shop(shop_with("labour = \"30 USD/h\"", "#"), "shop.toml")->labour);
}

}  // namespace
}  // namespace wetout::files
