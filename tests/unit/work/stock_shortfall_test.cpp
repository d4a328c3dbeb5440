// What runs short, against a shelf that is looked through gram by gram.
#include "stock_shortfall.hpp"

#include <gtest/gtest.h>

#include <random>

namespace wetout::work {
namespace {

using namespace std::chrono_literals;

const time::Instant now = std::chrono::sys_days(std::chrono::year(2026) / 6 / 13) + 16h;

joblog::Date on(int days) {
  return joblog::Date(std::chrono::floor<std::chrono::days>(now) + std::chrono::days(days));
}

joblog::LotStock lot(std::int64_t quantity, std::optional<joblog::Date> expires = {}) {
  joblog::LotStock out;
  out.quantity = quantity;
  out.expires = expires;
  return out;
}

OpenNeed need(std::int64_t quantity, std::optional<int> in_days, std::string job = "pico") {
  OpenNeed out;
  out.quantity = quantity;
  out.job = std::move(job);
  if (in_days) out.when = now + std::chrono::days(*in_days);
  return out;
}

TEST(Shortfall, IsWhatTheShelfHasNot) {
  const Shortfall enough = shortfall({lot(100), lot(50)}, {need(120, 1), need(30, 2)}, now, {});
  EXPECT_EQ(enough.planned, 150);
  EXPECT_EQ(enough.missing, 0);
  EXPECT_FALSE(enough.first);
  const Shortfall little =
      shortfall({lot(100)}, {need(30, 5, "faial"), need(90, 2), need(10, 1)}, now, {});
  EXPECT_EQ(little.planned, 130);
  EXPECT_EQ(little.missing, 30);
  ASSERT_TRUE(little.first);
  EXPECT_EQ(little.first->job, "faial");
  EXPECT_EQ(little.jobs, (std::vector<std::string>{"faial"}));
}

TEST(Shortfall, ComesFirstToWhatHasNoTime) {
  const Shortfall out =
      shortfall({lot(100)}, {need(80, 1), need(50, std::nullopt, "begun")}, now, {});
  EXPECT_EQ(out.missing, 30);
  EXPECT_EQ(out.first->job, "pico");
}

TEST(Shortfall, KnowsThatLotsExpire) {
  // Good on its last day, not after it.
  EXPECT_EQ(shortfall({lot(100, on(3))}, {need(60, 3)}, now, {}).missing, 0);
  EXPECT_EQ(shortfall({lot(100, on(3))}, {need(60, 4)}, now, {}).missing, 60);
  // A step that is late is done today.
  EXPECT_EQ(shortfall({lot(100, on(-1))}, {need(60, -2)}, now, {}).missing, 60);
  EXPECT_EQ(shortfall({lot(100, on(0))}, {need(60, -2)}, now, {}).missing, 0);
  EXPECT_EQ(shortfall({lot(100, on(1)), lot(40)}, {need(60, 1), need(60, 2)}, now, {}).missing, 20);
}

TEST(Shortfall, TellsDaysByTheShopsClock) {
  // 16:00 UTC is 06:00 of the next day on Kiritimati.
  const auto zone = time::Zone::named("Pacific/Kiritimati");
  ASSERT_TRUE(zone);
  EXPECT_EQ(shortfall({lot(100, on(0))}, {need(60, 0)}, now, *zone).missing, 60);
  EXPECT_EQ(shortfall({lot(100, on(1))}, {need(60, 0)}, now, *zone).missing, 0);
}

TEST(Shortfall, CountsWhatIsOverdrawnOnce) {
  EXPECT_EQ(shortfall({lot(100), lot(-30)}, {need(80, 1)}, now, {}).missing, 10);
  EXPECT_EQ(shortfall({lot(-30)}, {need(80, 1)}, now, {}).missing, 80);
}

TEST(Shortfall, IsThatOfAShelfGramByGram) {
  std::mt19937 random(12);
  const auto pick = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  for (int trial = 0; trial < 3000; ++trial) {
    std::vector<joblog::LotStock> lots(static_cast<std::size_t>(pick(0, 4)));
    for (auto& one : lots) {
      one = lot(pick(0, 12), pick(0, 1) == 0 ? std::nullopt : std::optional(on(pick(-1, 5))));
    }
    std::vector<OpenNeed> needs;
    for (int n = pick(0, 5); n > 0; --n) needs.push_back(need(pick(1, 9), pick(0, 5)));
    // One gram after the other, each need in turn.
    std::vector<OpenNeed> sorted = needs;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const OpenNeed& a, const OpenNeed& b) { return a.when < b.when; });
    auto shelf = lots;
    std::int64_t missing = 0;
    for (const OpenNeed& one : sorted) {
      for (std::int64_t gram = 0; gram < one.quantity; ++gram) {
        const auto day = std::chrono::floor<std::chrono::days>(*one.when);
        const auto found = std::find_if(shelf.begin(), shelf.end(), [&](const auto& l) {
          return l.quantity > 0 && (!l.expires || std::chrono::sys_days(*l.expires) >= day);
        });
        if (found == shelf.end()) {
          ++missing;
        } else {
          --found->quantity;
        }
      }
    }
    EXPECT_EQ(shortfall(lots, needs, now, {}).missing, missing) << "trial " << trial;
  }
}

}  // namespace
}  // namespace wetout::work
