#include "wetout/resin/weigh.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace wetout::resin {
namespace {

using units::Milligrams;

WeighRequest request(std::int64_t target_mg, double ratio, std::int64_t step_mg = 1000) {
  WeighRequest r;
  r.target = Milligrams(target_mg);
  r.hardener_per_resin = ratio;
  r.tolerance = 0.02;
  r.step = Milligrams(step_mg);
  return r;
}

TEST(Weigh, ExactRatiosNeedNoRaising) {
  const auto mix = weigh(request(300'000, 0.5));
  ASSERT_TRUE(mix);
  EXPECT_EQ(mix->part_a.count(), 200'000);
  EXPECT_EQ(mix->part_b.count(), 100'000);
  EXPECT_EQ(mix->off_ratio, 0.0);
}

TEST(Weigh, SmallBatchIsRaisedUntilTheStepHoldsTheRatio) {
  // 100:43 on a 1 g scale, 2 %: by hand the first pair at or above 20 g is 16 + 7 (off by 1.7 %);
  // 14 + 6 is 0.3 % off but is exactly 20 g.
  const auto exact = weigh(request(20'000, 0.43));
  ASSERT_TRUE(exact);
  EXPECT_EQ(exact->part_a.count(), 14'000);
  EXPECT_EQ(exact->part_b.count(), 6'000);
  const auto raised = weigh(request(21'000, 0.43));
  ASSERT_TRUE(raised);
  EXPECT_EQ(raised->part_a.count(), 16'000);
  EXPECT_EQ(raised->part_b.count(), 7'000);
}

TEST(Weigh, RefusesAndNamesTheStepThatWouldDo) {
  const auto mix = weigh(request(3'000, 0.43));
  ASSERT_FALSE(mix);
  EXPECT_EQ(mix.error().front().code, "pour.step_too_coarse");
  EXPECT_NE(mix.error().front().expected.find("0.5 g"), std::string::npos)
      << mix.error().front().expected;
}

TEST(Weigh, AdditivesComeOnTop) {
  WeighRequest r = request(306'000, 0.5);
  r.additive_shares = {0.02};
  const auto mix = weigh(r);
  ASSERT_TRUE(mix);
  ASSERT_EQ(mix->additives.size(), 1u);
  EXPECT_EQ(mix->additives[0].count(), 6'000);
  EXPECT_EQ(mix->total.count(), 306'000);
}

RC_GTEST_PROP(Weigh, EnoughOnTheGridAndInsideTheTolerance, ()) {
  WeighRequest r =
      request(*rc::gen::inRange<std::int64_t>(1, 3'000'000), *rc::gen::inRange(20, 120) / 100.0,
              *rc::gen::element<std::int64_t>(100, 500, 1000, 2000, 5000));
  r.tolerance = *rc::gen::inRange(5, 50) / 1000.0;
  if (*rc::gen::arbitrary<bool>()) r.additive_shares = {*rc::gen::inRange(1, 100) / 1000.0};
  const auto mix = weigh(r);
  if (!mix) {
    RC_TAG("refused");
    return;
  }
  RC_ASSERT(mix->total >= r.target);
  RC_ASSERT(mix->part_a.count() % r.step.count() == 0);
  RC_ASSERT(mix->part_b.count() % r.step.count() == 0);
  const double wanted = static_cast<double>(mix->part_a.count()) * r.hardener_per_resin;
  RC_ASSERT(std::abs(static_cast<double>(mix->part_b.count()) / wanted - 1.0) <=
            r.tolerance * (1.0 + 1e-9));
  Milligrams sum = mix->part_a + mix->part_b;
  for (const Milligrams additive : mix->additives) sum += additive;
  RC_ASSERT(sum == mix->total);
}

RC_GTEST_PROP(Weigh, NothingSmallerWouldDo, ()) {
  // The slow way round: try every pair on the grid below the answer.
  WeighRequest r =
      request(*rc::gen::inRange<std::int64_t>(5'000, 120'000), *rc::gen::inRange(20, 120) / 100.0);
  const auto mix = weigh(r);
  RC_PRE(mix.has_value());
  for (std::int64_t a = 1; a * 1000 < mix->part_a.count(); ++a) {
    const double wanted = static_cast<double>(a) * r.hardener_per_resin;
    const auto b = std::max<std::int64_t>(1, std::llround(wanted));
    const bool enough = (a + b) * 1000 >= r.target.count();
    const bool holds = std::abs(static_cast<double>(b) / wanted - 1.0) <= r.tolerance;
    RC_ASSERT(!(enough && holds));
  }
}

}  // namespace
}  // namespace wetout::resin
