#include "wetout/time/history.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

namespace wetout::time {
namespace {

using std::chrono::seconds;

Instant at(long s) { return Instant{} + seconds(s); }

TEST(History, IsStraightBetweenItsPoints) {
  const auto history = History::of({{at(100), 10.0}, {at(200), 20.0}, {at(250), 15.0}});
  ASSERT_TRUE(history);
  EXPECT_DOUBLE_EQ(history->at(at(100)), 10.0);
  EXPECT_DOUBLE_EQ(history->at(at(130)), 13.0);
  EXPECT_DOUBLE_EQ(history->at(at(200)), 20.0);
  EXPECT_DOUBLE_EQ(history->at(at(210)), 19.0);
  EXPECT_DOUBLE_EQ(history->at_seconds(30.5), 13.05);
  EXPECT_EQ(history->lowest(), 10.0);
  EXPECT_EQ(history->highest(), 20.0);
}

TEST(History, EndValuesHoldOutside) {
  const auto history = History::of({{at(100), 10.0}, {at(200), 20.0}});
  EXPECT_DOUBLE_EQ(history->at(at(-1000000)), 10.0);
  EXPECT_DOUBLE_EQ(history->at(at(1000000)), 20.0);
  EXPECT_DOUBLE_EQ(History::constant(3.5).at(at(123456789)), 3.5);
}

TEST(History, BadPointsAreRefused) {
  EXPECT_EQ(History::of({}).error().front().code, "history.empty");
  const auto twice = History::of({{at(0), 1.0}, {at(0), 2.0}});
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().front().code, "history.order");
  EXPECT_EQ(twice.error().front().found, "1970-01-01T00:00:00Z");
  const auto back = History::of({{at(60), 1.0}, {at(0), 2.0}});
  EXPECT_EQ(back.error().front().code, "history.order");
  const auto nan = History::of({{at(0), std::numeric_limits<double>::quiet_NaN()}});
  EXPECT_EQ(nan.error().front().code, "history.not_finite");
}

RC_GTEST_PROP(History, StaysBetweenNeighbours, ()) {
  std::vector<HistoryPoint> points;
  long t = *rc::gen::inRange(-100000, 100000);
  for (int i = 0; i < 20; ++i) {
    t += *rc::gen::inRange(1, 5000);
    points.push_back({at(t), 0.1 * *rc::gen::inRange(-400, 400)});
  }
  const auto history = History::of(points);
  const auto i = *rc::gen::inRange<std::size_t>(0, 19);
  const long a = points[i].at.time_since_epoch().count();
  const long b = points[i + 1].at.time_since_epoch().count();
  const double value = history->at(at(*rc::gen::inRange(a, b + 1)));
  RC_ASSERT(value >= std::min(points[i].value, points[i + 1].value) - 1e-9);
  RC_ASSERT(value <= std::max(points[i].value, points[i + 1].value) + 1e-9);
}

}  // namespace
}  // namespace wetout::time
