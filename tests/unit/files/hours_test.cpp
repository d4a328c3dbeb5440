#include <gtest/gtest.h>

#include <chrono>

#include "sample.hpp"
#include "wetout/files/shop_file.hpp"

namespace wetout::files {
namespace {

using std::chrono::minutes;

ShopFile read(const std::string& text) {
  auto shop = parse_shop(text, "shop.toml");
  EXPECT_TRUE(shop);
  return *shop;
}

TEST(Hours, PersonReplacesTheDaysTheyName) {
  const ShopFile shop = read(input("shop.toml"));
  ASSERT_EQ(shop.people.size(), 1u);
  EXPECT_EQ(shop.people[0].id, "first");
  const schedule::WeekHours& hours = shop.people[0].hours;
  ASSERT_EQ(hours.days[0].size(), 1u);
  EXPECT_EQ(hours.days[0][0].from, minutes(18 * 60));
  EXPECT_TRUE(hours.days[1].empty());
  ASSERT_EQ(hours.days[5].size(), 1u);  // instead of two in [hours]
  EXPECT_EQ(hours.days[5][0].until, minutes(18 * 60));
  ASSERT_EQ(hours.off.size(), 2u);
  EXPECT_EQ(hours.off[0].first, hours.off[0].last);
  EXPECT_EQ(hours.off[1].last, time::Date(std::chrono::year(2026) / 7 / 5));
  ASSERT_EQ(shop.shared.size(), 1u);
  EXPECT_EQ(shop.shared[0].id, "stand");
  EXPECT_EQ(shop.shared[0].count, 2);
}

TEST(Hours, WithoutAPersonOneWorksInThoseOfTheShop) {
  const std::string text = input("shop.toml");
  const std::size_t from = text.find("[[person]]"), until = text.find("[[resource]]");
  ASSERT_LT(from, until);
  const ShopFile shop =
      read(with(text.substr(0, from) + text.substr(until), "off = [", "off = [2026-06-24, "));
  ASSERT_EQ(shop.people.size(), 1u);
  EXPECT_EQ(shop.people[0].hours.days[5].size(), 2u);
  EXPECT_EQ(shop.people[0].hours.off[0].first, time::Date(std::chrono::year(2026) / 6 / 24));
}

}  // namespace
}  // namespace wetout::files
