// Packs to buy, against all combinations there are.
#include "stock_packs.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <tuple>

namespace wetout::work {
namespace {

using Worth = std::tuple<std::int64_t, std::int64_t, std::int64_t>;  // price, holds, packs

Worth worth_of(const std::vector<std::int64_t>& counts, const std::vector<PackSize>& sizes) {
  Worth out{0, 0, 0};
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    std::get<0>(out) += counts[i] * sizes[i].minor.value_or(1);
    std::get<1>(out) += counts[i] * sizes[i].holds;
    std::get<2>(out) += counts[i];
  }
  return out;
}

// Every combination in which no size is taken more often than it is needed alone.
void try_all(std::int64_t need, const std::vector<PackSize>& sizes,
             std::vector<std::int64_t>& counts, std::size_t i, std::optional<Worth>& best) {
  if (i == sizes.size()) {
    const Worth worth = worth_of(counts, sizes);
    if (std::get<1>(worth) >= need && (!best || worth < *best)) best = worth;
    return;
  }
  const std::int64_t most = (need + sizes[i].holds - 1) / sizes[i].holds;
  for (counts[i] = 0; counts[i] <= most; ++counts[i]) try_all(need, sizes, counts, i + 1, best);
}

Worth cheapest(std::int64_t need, const std::vector<PackSize>& sizes) {
  std::vector<std::int64_t> counts(sizes.size(), 0);
  std::optional<Worth> best;
  try_all(need, sizes, counts, 0, best);
  return best.value();
}

TEST(Packs, AreTheCheapestOfAllCombinations) {
  std::mt19937 random(4711);
  const auto pick = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  for (int trial = 0; trial < 20000; ++trial) {
    std::vector<PackSize> sizes(static_cast<std::size_t>(pick(1, 4)));
    // Now and then prices that go with the size, where many combinations cost the same.
    const bool even = pick(0, 3) == 0;
    for (PackSize& size : sizes) {
      size.holds = pick(1, 12);
      size.minor = even ? size.holds * 5 : pick(0, 60);
    }
    const std::int64_t need = pick(1, 30);
    const auto bought = packs_to_buy(need, sizes);
    ASSERT_TRUE(bought);
    EXPECT_TRUE(bought->proved);
    const Worth worth = worth_of(bought->counts, sizes);
    EXPECT_EQ(worth, cheapest(need, sizes)) << "trial " << trial << ", need " << need;
    EXPECT_EQ(bought->holds, std::get<1>(worth));
    EXPECT_EQ(bought->minor, std::get<0>(worth));
  }
}

TEST(Packs, WithoutPricesAreAsFewAsCanBe) {
  std::mt19937 random(815);
  const auto pick = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  for (int trial = 0; trial < 2000; ++trial) {
    std::vector<PackSize> sizes(static_cast<std::size_t>(pick(1, 3)));
    for (PackSize& size : sizes) size.holds = pick(1, 12);
    const std::int64_t need = pick(1, 30);
    const auto bought = packs_to_buy(need, sizes);
    ASSERT_TRUE(bought);
    EXPECT_EQ(bought->minor, std::nullopt);
    EXPECT_EQ(worth_of(bought->counts, sizes), cheapest(need, sizes)) << "trial " << trial;
  }
}

TEST(Packs, LeaveOutSizesWithoutAPriceWhereOthersHaveOne) {
  const auto bought = packs_to_buy(5, {{5, std::nullopt}, {2, 100}});
  ASSERT_TRUE(bought);
  EXPECT_EQ(bought->counts, (std::vector<std::int64_t>{0, 3}));
  EXPECT_EQ(bought->minor, 300);
}

// Sizes in milligrams as they come from gallons and quarts: no step in common.
TEST(Packs, TakeLargeUnitsInTheirStride) {
  const std::vector<PackSize> sizes = {{4277515, 4800}, {1069379, 1500}, {267345, 480}};
  const auto bought = packs_to_buy(5'500'000, sizes);
  ASSERT_TRUE(bought);
  EXPECT_EQ(bought->counts, (std::vector<std::int64_t>{1, 1, 1}));
  EXPECT_EQ(bought->minor, 6780);
  EXPECT_TRUE(bought->proved);
}

TEST(Packs, OfWhichAnyNumberCostsTheSameAreStillFound) {
  // Equal prices per unit and sizes without a common measure: the search may give up, but says so.
  const auto bought = packs_to_buy(
      99'999'999'999, {{70'001, 70'001}, {110'017, 110'017}, {130'021, 130'021}, {1'009, 1'009}});
  ASSERT_TRUE(bought);
  EXPECT_GE(bought->holds, 99'999'999'999);
  EXPECT_EQ(bought->minor, bought->holds);
  EXPECT_TRUE(!bought->proved || bought->holds == 99'999'999'999);
}

TEST(Packs, ThatMakeNoSenseAreNotBought) {
  EXPECT_EQ(packs_to_buy(10, {}), std::nullopt);
  EXPECT_EQ(packs_to_buy(1'000'000'000'000, {{1, 5}}), std::nullopt);
  const auto free = packs_to_buy(10, {{4, 0}, {5, 1}});
  ASSERT_TRUE(free);
  EXPECT_EQ(free->minor, 0);
  EXPECT_EQ(free->counts, (std::vector<std::int64_t>{3, 0}));
}

}  // namespace
}  // namespace wetout::work
