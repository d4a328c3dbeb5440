// What is asked of the ledger, by hand. (ledger_property_test.cpp asks everything of everything.)
#include <gtest/gtest.h>

#include "ledger_questions.hpp"
#include "ledger_samples.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::count;
using testing::labour;
using testing::ledger;
using testing::length;
using testing::mass;
using testing::receipt;
using testing::reversal;
using testing::stock;
using testing::use;
using testing::waste;

// Two boards in June and July.
Log season() {
  Log log = ledger();
  book(log, receipt("r1", {{mass("slow-a"), 4'000, 4'800, "jug 1"},
                           {length("e4"), 9'000, 6'300, "roll", "", {}, 762'000}}));
  book(log, receipt("r2", {{mass("slow-a"), 4'000, 5'600, "jug 2"}}, 10));
  book(log, use("u1", "sandpiper", "bottom-lam/wet",
                {{mass("slow-a"), 3'000}, {length("e4"), 2'000}}, 11));
  book(log, use("u2", "sandpiper", "deck-lam/wet", {{mass("slow-a"), 2'000}, {length("e4"), 2'500}},
                12));
  book(log, labour("l1", "sandpiper", 90, 2'250, 12));
  book(log, use("u3", "egret", "", {{mass("slow-a"), 500}}, 40));
  book(log, waste("w1", {{mass("slow-a"), 100}}, 41));
  book(log, count("c1", {{mass("slow-a"), 2'000}}, 42));
  book(log, use("u4", "egret", "gloss/wet", {{mass("slow-a"), 2'000}}, 43));
  book(log, reversal("x", 9));
  return log;
}

TEST(Stock, IsListedByMaterialAndLot) {
  const Log log = season();
  EXPECT_EQ(stock(log), "e4 roll 4500@3150; slow-a jug 2 2000@2800");
  EXPECT_EQ(stock(log, Lots::all), "e4 roll 4500@3150; slow-a jug 1 0@0, jug 2 2000@2800");
  EXPECT_EQ(log.stock()[1].minor, 2'800);
  EXPECT_EQ(log.stock()[1].quantity, 2'000);
  EXPECT_EQ(log.stock_of("slow-a")->lots.size(), 1U);
  EXPECT_EQ(log.stock_of("slow-a", Lots::all)->lots.size(), 2U);
  EXPECT_FALSE(log.stock_of("slow"));
  EXPECT_EQ(testing::wrong_answers(log), "");
}

TEST(Stock, ListsAMaterialThatIsUsedUp) {
  Log log = season();
  book(log, waste("w2", {{mass("slow-a"), 2'000}}));
  EXPECT_EQ(stock(log), "e4 roll 4500@3150; slow-a");
}

TEST(JobCost, IsByStepMaterialAndLot) {
  const Log log = season();
  const auto cost = log.job_cost("sandpiper");
  std::string text;
  for (const JobGoods& goods : cost->goods) {
    text += goods.step + " " + goods.material.slug + "/" + goods.lot + " " +
            std::to_string(goods.quantity) + "@" + std::to_string(goods.minor) + "; ";
  }
  EXPECT_EQ(text,
            "bottom-lam/wet e4/roll 2000@1400; bottom-lam/wet slow-a/jug 1 3000@3600; "
            "deck-lam/wet e4/roll 2500@1750; deck-lam/wet slow-a/jug 1 1000@1200; "
            "deck-lam/wet slow-a/jug 2 1000@1400; ");
  ASSERT_EQ(cost->work.size(), 1U);
  EXPECT_EQ(cost->work[0].minutes, 90);
  EXPECT_EQ(cost->goods_minor, 9'350);
  EXPECT_EQ(cost->work_minor, 2'250);
  EXPECT_EQ(cost->minutes, 90);
  EXPECT_FALSE(log.job_cost("heron"));
}

TEST(JobCost, GoesWithTheBoardThatIsRenamed) {
  Log log = season();
  ASSERT_TRUE(log.rename_job("sandpiper", "snipe", "Snipe"));
  EXPECT_EQ(log.job_cost("snipe")->goods_minor, 9'350);
  EXPECT_FALSE(log.job_cost("sandpiper"));
  EXPECT_EQ(log.boards_with("slow-a", "jug 1").at(0).job_name, "Snipe");
  EXPECT_EQ(log.entries({.job_slug = "snipe"}).size(), 3U);
}

TEST(BoardsWith, AreThoseThatHoldSomeOfALot) {
  const Log log = season();
  const auto boards = log.boards_with("slow-a", "jug 2");
  ASSERT_EQ(boards.size(), 2U);
  EXPECT_EQ(boards[0].job_slug, "egret");
  EXPECT_EQ(boards[0].quantity, 500) << "what was undone is not in it";
  EXPECT_EQ(boards[0].minor, 700);
  EXPECT_EQ(boards[1].job_slug, "sandpiper");
  EXPECT_EQ(boards[1].quantity, 1'000);
  EXPECT_EQ(log.boards_with("slow-a", "jug 1").size(), 1U);
  EXPECT_TRUE(log.boards_with("slow-a", "jug 3").empty());
  EXPECT_TRUE(log.boards_with("e6", "roll").empty());
}

TEST(Totals, OfMaterialsAddUp) {
  const Log log = season();
  const auto totals = log.material_totals();
  ASSERT_EQ(totals.size(), 2U);
  const MaterialTotals& resin = totals[1];
  EXPECT_EQ(resin.material, mass("slow-a"));
  EXPECT_EQ(resin.received, (Flow{8'000, 10'400}));
  EXPECT_EQ(resin.used, (Flow{5'500, 6'900}));
  EXPECT_EQ(resin.wasted, (Flow{100, 140}));
  EXPECT_EQ(resin.adjusted, (Flow{-400, -560}));
  EXPECT_EQ(resin.on_hand, (Flow{2'000, 2'800}));
  const auto of_egret = log.material_totals("egret");
  ASSERT_EQ(of_egret.size(), 1U);
  EXPECT_EQ(of_egret[0].used, (Flow{500, 700}));
  EXPECT_EQ(of_egret[0].received, Flow());
  EXPECT_TRUE(log.material_totals("heron").empty());
}

TEST(Totals, OfMonthsGoByTheShopsCalendar) {
  Log log = season();
  NewUse late = use("late", "egret", "", {{mass("slow-a"), 100}}, 29);
  late.head.at += std::chrono::hours(20);  // already July in Greenwich, still 30 June in the shop
  book(log, late);
  const auto months = log.month_totals();
  ASSERT_EQ(months.size(), 2U);
  using namespace std::chrono;
  EXPECT_EQ(months[0].month, 2026y / June);
  EXPECT_EQ(months[0].received_minor, 16'700);
  EXPECT_EQ(months[0].used_minor, 9'350 + 140);
  EXPECT_EQ(months[0].work_minor, 2'250);
  EXPECT_EQ(months[0].minutes, 90);
  EXPECT_EQ(months[1].month, 2026y / July);
  EXPECT_EQ(months[1].used_minor, 700);
  EXPECT_EQ(months[1].wasted_minor, 140);
  EXPECT_EQ(months[1].adjusted_minor, -560);
  const auto of_egret = log.month_totals("egret");
  ASSERT_EQ(of_egret.size(), 2U);
  EXPECT_EQ(of_egret[1].used_minor, 700);
  EXPECT_EQ(of_egret[1].wasted_minor, 0);
}

TEST(Totals, OfJobsAddUp) {
  const Log log = season();
  const auto totals = log.job_totals();
  ASSERT_EQ(totals.size(), 2U);
  EXPECT_EQ(totals[0].slug, "egret");
  EXPECT_EQ(totals[0].goods_minor, 700);
  EXPECT_EQ(totals[1].name, "The sandpiper");
  EXPECT_EQ(totals[1].goods_minor, 9'350);
  EXPECT_EQ(totals[1].work_minor, 2'250);
  EXPECT_EQ(totals[1].minutes, 90);
}

TEST(Entries, AreReadWithTheirLines) {
  const Log log = season();
  const auto all = log.entries();
  ASSERT_EQ(all.size(), 10U);
  EXPECT_EQ(all[0].token, "r1");
  EXPECT_EQ(all[0].lines.size(), 2U);
  EXPECT_EQ(all[3].lines[1].lot, "jug 2");
  EXPECT_EQ(all[8].undone_by, 10);
  EXPECT_EQ(all[9].undoes, 9);
  EXPECT_EQ(all[9].lines[0].source, Account::board);
  EXPECT_EQ(log.entries({.job_slug = "sandpiper"}).size(), 3U);
  EXPECT_EQ(log.entries({.number = 5}).at(0).kind, EntryKind::labour);
  EXPECT_TRUE(log.entries({.number = 11}).empty());
  EXPECT_TRUE(log.entries({.job_slug = "sandpiper", .number = 1}).empty());
  std::int64_t n = 0;
  log.each_entry({}, [&](const EntryRow& entry) { EXPECT_EQ(entry.number, ++n); });
  EXPECT_EQ(n, 10);
}

TEST(Ledger, OfNothingAnswersNothing) {
  const Log log = ledger();
  EXPECT_TRUE(log.stock().empty());
  EXPECT_TRUE(log.entries().empty());
  EXPECT_TRUE(log.material_totals().empty());
  EXPECT_TRUE(log.month_totals().empty());
  EXPECT_TRUE(log.job_totals().empty());
  EXPECT_TRUE(log.job_cost("egret")->goods.empty());
}

}  // namespace
}  // namespace wetout::joblog
