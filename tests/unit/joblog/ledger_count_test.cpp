// Counts and undos: the ledger put right.
#include <gtest/gtest.h>

#include "ledger_samples.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::count;
using testing::labour;
using testing::ledger;
using testing::lines;
using testing::mass;
using testing::receipt;
using testing::refusal;
using testing::reversal;
using testing::stock;
using testing::use;
using testing::waste;

// 100 of "1" at 1.00 and 100 of "2" at 2.00.
Log two_lots() {
  Log log = ledger();
  book(log, receipt("r1", {{mass("a"), 100, 100, "1"}}));
  book(log, receipt("r2", {{mass("a"), 100, 200, "2"}}, 1));
  return log;
}

TEST(Count, TakesWhatIsMissingFromTheOldest) {
  Log log = two_lots();
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 70}}))),
            "stock>adjustment a/1 100@100; stock>adjustment a/2 30@60");
  EXPECT_EQ(stock(log), "a 2 70@140");
}

TEST(Count, GivesWhatIsMoreToTheYoungestAtNoCost) {
  Log log = two_lots();
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 250}}))), "adjustment>stock a/2 50@0");
  EXPECT_EQ(stock(log), "a 1 100@100, 2 150@200");
  // Its cost spreads over what there is now.
  EXPECT_EQ(lines(book(log, use("u", "egret", "", {{mass("a"), 75, "2"}}))),
            "stock>board a/2 75@100");
  EXPECT_EQ(lines(book(log, use("v", "egret", "", {{mass("a"), 75, "2"}}))),
            "stock>board a/2 75@100");
}

TEST(Count, SpreadsWhatIsLeftOfTheCostOverWhatIsFound) {
  Log log = two_lots();
  book(log, use("u", "egret", "", {{mass("a"), 50, "1"}}));
  book(log, count("c", {{mass("a"), 100, "1"}}));
  EXPECT_EQ(lines(book(log, use("v", "egret", "", {{mass("a"), 50, "1"}}))),
            "stock>board a/1 50@25");
  EXPECT_EQ(lines(book(log, use("w", "egret", "", {{mass("a"), 50, "1"}}))),
            "stock>board a/1 50@25");
}

TEST(Count, OfOneLotLeavesTheOthersAlone) {
  Log log = two_lots();
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 60, "2"}}))), "stock>adjustment a/2 40@80");
  EXPECT_EQ(lines(book(log, count("d", {{mass("a"), 110, "1"}}))), "adjustment>stock a/1 10@0");
  EXPECT_EQ(refusal(log, count("e", {{mass("a"), 110, "3"}})), "lot.unknown");
}

TEST(Count, ThatFindsWhatTheLogSaysIsKeptAsSuch) {
  Log log = two_lots();
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 200}}))), "stock>adjustment a/2 0@0");
  EXPECT_EQ(lines(book(log, count("d", {{mass("a"), 100, "1"}}))), "stock>adjustment a/1 0@0");
  EXPECT_EQ(stock(log), "a 1 100@100, 2 100@200");
  EXPECT_EQ(log.info().entries, 4);
}

TEST(Count, BringsOverdrawnLotsBackToNothingFirst) {
  Log log = two_lots();
  book(log, use("u", "egret", "", {{mass("a"), 110, "1"}}));
  EXPECT_EQ(stock(log), "a 1 -10@-10, 2 100@200");
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 90}}))),
            "adjustment>stock a/1 10@10; stock>adjustment a/2 10@20");
  EXPECT_EQ(stock(log), "a 2 90@180");
  // The sum is right, the lots are not.
  book(log, use("v", "egret", "", {{mass("a"), 100, "2"}}));
  book(log, receipt("r3", {{mass("a"), 100, 300, "3"}}, 2));
  EXPECT_EQ(stock(log), "a 2 -10@-20, 3 100@300");
  EXPECT_EQ(lines(book(log, count("d", {{mass("a"), 90}}))),
            "adjustment>stock a/2 10@20; stock>adjustment a/3 10@30");
  // The overdrawn lot is the only one.
  book(log, use("w", "egret", "", {{mass("a"), 100, "3"}}));
  EXPECT_EQ(lines(book(log, count("e", {{mass("a"), 15}}))),
            "adjustment>stock a/3 10@30; adjustment>stock a/3 15@0");
}

TEST(Count, BeginsTheStockOfAMaterial) {
  Log log = ledger();
  EXPECT_EQ(lines(book(log, count("c", {{mass("a"), 500}, {mass("b"), 0}}))),
            "adjustment>stock a/unknown 500@0; stock>adjustment b/unknown 0@0");
  EXPECT_EQ(stock(log), "a unknown 500@0; b");
  EXPECT_EQ(lines(book(log, use("u", "egret", "", {{mass("a"), 200}}))),
            "stock>board a/unknown 200@0");
}

TEST(Undo, TurnsTheMovementsRound) {
  Log log = two_lots();
  book(log, use("u", "egret", "deck-lam/wet", {{mass("a"), 150}}));
  const Booked undone = book(log, reversal("x", 3));
  EXPECT_EQ(lines(undone), "board>stock a/1 100@100; board>stock a/2 50@100");
  EXPECT_EQ(undone.lines[0].job_slug, "egret");
  EXPECT_EQ(undone.lines[0].step, "deck-lam/wet");
  EXPECT_EQ(stock(log), "a 1 100@100, 2 100@200");
  EXPECT_EQ(log.job_cost("egret")->goods_minor, 0);
  EXPECT_TRUE(log.job_cost("egret")->goods.empty());
  EXPECT_EQ(log.entries({.number = 3}).at(0).undone_by, 4);
  EXPECT_EQ(log.entries({.number = 4}).at(0).undoes, 3);
}

TEST(Undo, IsDatedAsWhatItTakesBack) {
  Log log = two_lots();
  NewReversal slip = reversal("x", 2);
  slip.note = "price mistyped";
  book(log, slip);
  const EntryRow row = log.entries({.number = 3}).at(0);
  EXPECT_EQ(row.at, testing::noon(1));
  EXPECT_EQ(row.on, testing::day(1));
  EXPECT_EQ(row.recorded, slip.recorded);
  EXPECT_EQ(row.note, "price mistyped");
}

TEST(Undo, IsRefusedOfAnUndoTwiceAndOfNothing) {
  Log log = two_lots();
  book(log, reversal("x", 1));
  EXPECT_EQ(refusal(log, reversal("y", 1)), "entry.undone");
  EXPECT_EQ(refusal(log, reversal("y", 3)), "entry.is_undo");
  EXPECT_EQ(refusal(log, reversal("y", 4)), "entry.unknown");
  EXPECT_EQ(refusal(log, reversal("y", 0)), "entry.unknown");
  EXPECT_EQ(refusal(log, reversal("y", 2)), "");
}

// A price that was mistyped, noticed when some of it has gone: what is left bears the difference.
TEST(Undo, OfAReceiptLetsItComeAgainUnderItsLabel) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 100, 1000, "", "B 1", testing::day(90)}}));
  book(log, use("u", "egret", "", {{mass("a"), 30}}));
  EXPECT_EQ(lines(book(log, reversal("x", 1))), "stock>supplier a/2026-06-01 100@1000");
  EXPECT_EQ(stock(log), "a 2026-06-01 -30@-300");
  book(log, receipt("again", {{mass("a"), 100, 1200, "", "B 2"}}));
  EXPECT_EQ(stock(log), "a 2026-06-01 70@900");
  EXPECT_EQ(log.stock_of("a")->lots[0].batch, "B 2");
  EXPECT_FALSE(log.stock_of("a")->lots[0].expires);
  EXPECT_EQ(lines(book(log, use("v", "egret", "", {{mass("a"), 70}}))),
            "stock>board a/2026-06-01 70@900");
  EXPECT_EQ(log.job_cost("egret")->goods_minor, 1200);
  EXPECT_EQ(refusal(log, receipt("third", {{mass("a"), 5, 5, "2026-06-01"}})), "lot.taken");
}

// What was used cost more than it turns out to have cost at all.
TEST(Undo, LeavesNoCostWhereThereAreNoGoods) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 100, 1000, "1"}}));
  book(log, use("u", "egret", "", {{mass("a"), 90}}));
  book(log, reversal("x", 1));
  EXPECT_EQ(lines(book(log, receipt("r2", {{mass("a"), 100, 800, "1"}}))),
            "supplier>stock a/1 100@800; adjustment>stock a/1 0@100");
  EXPECT_EQ(stock(log), "a 1 10@0");
  // And less came than was used: its cost has nowhere to go.
  book(log, reversal("y", 4));
  EXPECT_EQ(stock(log), "a 1 -90@-900");
  EXPECT_EQ(lines(book(log, receipt("r3", {{mass("a"), 50, 1000, "1"}}))),
            "supplier>stock a/1 50@1000; stock>adjustment a/1 0@100");
  EXPECT_EQ(stock(log), "a 1 -40@0");
}

// Cents that fell to one taking or the other: 1 for 3, of which 4 were taken.
TEST(Undo, LeavesNoCentBehind) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 3, 1, "1"}}));
  for (const char* token : {"1", "2", "3", "4"}) book(log, waste(token, {{mass("a"), 1}}));
  EXPECT_EQ(stock(log), "a 1 -1@0");
  EXPECT_EQ(lines(book(log, reversal("x", 3))), "waste>stock a/1 1@1; stock>adjustment a/1 0@1");
  EXPECT_EQ(stock(log, Lots::all), "a 1 0@0");
}

TEST(Undo, OfACountPutsBackWhatItMoved) {
  Log log = two_lots();
  book(log, use("u", "egret", "", {{mass("a"), 110, "1"}}));
  const std::string before = stock(log);
  book(log, count("c", {{mass("a"), 120}}));
  EXPECT_EQ(stock(log), "a 2 120@200");
  EXPECT_EQ(lines(book(log, reversal("x", 4))),
            "stock>adjustment a/1 10@10; stock>adjustment a/2 20@0");
  EXPECT_EQ(stock(log), before);
}

// What was found by a count, then used, is taken back: the cost that is left without goods goes.
TEST(Undo, OfWhatWasFoundLeavesNoCost) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 100, 1000, "1"}}));
  book(log, count("c", {{mass("a"), 150}}));
  book(log, use("u", "egret", "", {{mass("a"), 100}}));
  EXPECT_EQ(stock(log), "a 1 50@333");
  EXPECT_EQ(lines(book(log, reversal("x", 2))),
            "stock>adjustment a/1 50@0; stock>adjustment a/1 0@333");
  EXPECT_EQ(stock(log), "a");
}

// Takings of before a count come back to a lot that has started anew.
TEST(Undo, OfATakingFromBeforeACountGivesItsCostBack) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 100, 1000, "1"}}));
  book(log, use("u", "egret", "", {{mass("a"), 80}}));
  book(log, count("c", {{mass("a"), 10}}));
  book(log, reversal("x", 2));
  EXPECT_EQ(stock(log), "a 1 90@900");
  EXPECT_EQ(lines(book(log, use("v", "egret", "", {{mass("a"), 45}}))), "stock>board a/1 45@450");
  EXPECT_EQ(lines(book(log, use("w", "egret", "", {{mass("a"), 45}}))), "stock>board a/1 45@450");
}

}  // namespace
}  // namespace wetout::joblog
