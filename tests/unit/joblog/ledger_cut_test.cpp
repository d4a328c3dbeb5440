// Pieces of a roll that become lots of their own.
#include <gtest/gtest.h>

#include "ledger_samples.hpp"
#include "wetout/joblog/log.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::lines;
using testing::refusal;
using testing::stock;

NewCount cut(const std::string& token, std::int64_t off, std::int64_t length,
             const std::string& lot = "", int day = 0) {
  NewCount count = testing::count(token, {}, day);
  count.cuts = {{.material = testing::length("cloth"),
                 .quantity = off,
                 .lot = lot,
                 .length = length,
                 .width_um = 400'000}};
  return count;
}

// Two rolls, 1000 for 500 and 1000 for 900, the first good until the 9th.
Log shelf() {
  Log log = testing::ledger();
  book(log, testing::receipt("r1", {{.material = testing::length("cloth"),
                                     .quantity = 1000,
                                     .cost_minor = 500,
                                     .lot = "one",
                                     .batch = "B7",
                                     .expires = testing::day(9),
                                     .width_um = 800'000}}));
  book(log, testing::receipt("r2", {{testing::length("cloth"), 1000, 900, "two"}}, 1));
  return log;
}

TEST(LedgerCut, MovesItsShareOfTheCostIntoALotOfItsOwn) {
  Log log = shelf();
  EXPECT_EQ(lines(book(log, cut("c1", 101, 202))),
            "stock>adjustment cloth/one 101@50; adjustment>stock cloth/remnant 2026-06-01 202@50");
  EXPECT_EQ(stock(log), "cloth one 899@450, remnant 2026-06-01 202@50, two 1000@900");
  const auto lots = log.stock_of("cloth")->lots;
  EXPECT_EQ(lots[1].batch, "B7");
  EXPECT_EQ(lots[1].expires, testing::day(9));
  EXPECT_EQ(lots[1].width_um, 400'000);
  book(log, cut("c2", 10, 20));
  EXPECT_EQ(log.stock_of("cloth")->lots[2].label, "remnant 2026-06-01-2");
  const auto totals = log.material_totals();
  EXPECT_EQ(totals[0].adjusted.minor, 0);
  EXPECT_EQ(totals[0].received.minor, 1400);
}

TEST(LedgerCut, IsOfTheOldestRollThatHasSoMuchAndIsGood) {
  Log log = shelf();
  book(log, testing::use("u", "egret", "", {{testing::length("cloth"), 950}}));
  EXPECT_EQ(lines(book(log, cut("c1", 60, 100, "", 2))).substr(0, 27),
            "stock>adjustment cloth/two ");
  EXPECT_EQ(lines(book(log, cut("c2", 50, 100, "", 2))).substr(0, 27),
            "stock>adjustment cloth/one ");
  EXPECT_EQ(lines(book(log, cut("c3", 10, 10, "", 20))).substr(0, 27),
            "stock>adjustment cloth/two ");
  EXPECT_EQ(refusal(log, cut("c4", 1000, 10)), "lot.short");
  EXPECT_EQ(refusal(log, cut("c5", 100, 10, "one")), "lot.short");
  EXPECT_EQ(refusal(log, cut("c6", 100, 10, "three")), "lot.unknown");
  EXPECT_EQ(refusal(log, cut("c7", 0, 10)), "amount.range");
}

TEST(LedgerCut, IsTakenFromByItsNameOnly) {
  Log log = shelf();
  book(log, cut("c1", 100, 200));
  const auto all = testing::use("u1", "egret", "", {{testing::length("cloth"), 2000}}, 2);
  EXPECT_EQ(lines(book(log, all)),
            "stock>board cloth/one 900@450; stock>board cloth/two "
            "1100@990 -100");
  const auto named =
      testing::use("u2", "egret", "", {{testing::length("cloth"), 50, "remnant 2026-06-01"}}, 2);
  EXPECT_EQ(lines(book(log, named)), "stock>board cloth/remnant 2026-06-01 50@12");
}

TEST(LedgerCut, IsTakenBackAndSentAgain) {
  Log log = shelf();
  const Booked first = book(log, cut("c1", 100, 200));
  const Booked again = book(log, cut("c1", 100, 200));
  EXPECT_TRUE(again.already);
  EXPECT_EQ(lines(again), lines(first));
  EXPECT_EQ(refusal(log, cut("c1", 100, 201)), "entry.token");
  EXPECT_EQ(refusal(log, cut("c1", 100, 200, "two")), "entry.token");
  book(log, testing::reversal("back", first.number));
  EXPECT_EQ(stock(log), "cloth one 1000@500, two 1000@900");
}

}  // namespace
}  // namespace wetout::joblog
