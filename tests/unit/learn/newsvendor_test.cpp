// Worked cases of operations texts, after Arrow, Harris and Marschak 1951 [arrow1951]: problem
// statements as seen on public homework pages, quantities recomputed.
#include "wetout/learn/newsvendor.hpp"

#include <gtest/gtest.h>

#include "wetout/learn/robust_fit.hpp"

namespace wetout::learn {
namespace {

// Demand of which so much is known that it is as good as normal.
Prediction normal(double mean, double spread) {
  return {.value = mean, .spread = spread, .freedom = 1e12};
}

TEST(Newsvendor, OrdersCalendars) {
  // Cost 4.25, price 9.50, salvage 2.00, goodwill 1.50; demand N(250, 40).
  const double ratio = critical_ratio(9.50 - 4.25 + 1.50, 4.25 - 2.00);
  EXPECT_DOUBLE_EQ(ratio, 0.75);
  EXPECT_NEAR(normal(250, 40).quantile(ratio), 276.98, 0.005);
}

TEST(Newsvendor, OrdersAThousand) {
  // Cost 100, price 140, salvage 90; demand N(1000, 200).
  const double ratio = critical_ratio(40, 10);
  EXPECT_DOUBLE_EQ(ratio, 0.80);
  EXPECT_NEAR(normal(1000, 200).quantile(ratio), 1168.32, 0.005);
}

TEST(Newsvendor, OrdersLessThanTheMeanWhereLeftoversCostMore) {
  // Price 20, cost 14, salvage 5; demand N(115, 15) and N(115, 5).
  const double ratio = critical_ratio(6, 9);
  EXPECT_DOUBLE_EQ(ratio, 0.40);
  EXPECT_NEAR(normal(115, 15).quantile(ratio), 111.20, 0.005);
  EXPECT_NEAR(normal(115, 5).quantile(ratio), 113.73, 0.005);
}

// By brute force: the mean cost of a quantity, over 20 000 quantiles of the demand.
double mean_cost(const Prediction& demand, double quantity, double short_cost, double left_cost) {
  constexpr int steps = 20'000;
  double cost = short_cost * demand.chance_above(quantity);
  for (int k = 0; k < steps; ++k) {
    const double takes = demand.quantile((k + 0.5) / steps);
    if (takes >= quantity) break;
    cost += left_cost * (quantity - takes) / steps;
  }
  return cost;
}

TEST(BestQuantity, CostsLeast) {
  const Prediction demand{.value = 230.0, .spread = 14.0, .freedom = 7.5};
  for (const double short_cost : {2.0, 45.0, 400.0}) {
    const double best = best_quantity(demand, short_cost, 0.02);
    const double least = mean_cost(demand, best, short_cost, 0.02);
    for (const double step : {-8.0, -2.0, 2.0, 8.0}) {
      EXPECT_LT(least, mean_cost(demand, best + step, short_cost, 0.02)) << short_cost << step;
    }
  }
}

TEST(BestQuantity, IsWhatIsExpectedWhereRunningShortCostsNextToNothing) {
  EXPECT_EQ(best_quantity({.value = 230.0, .spread = 14.0, .freedom = 7.5}, 1e-6, 1.0), 230.0);
}

}  // namespace
}  // namespace wetout::learn
