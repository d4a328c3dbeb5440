// Booking goods and work, one entry at a time.
#include <gtest/gtest.h>

#include <stdexcept>

#include "ledger_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::count;
using testing::labour;
using testing::ledger;
using testing::length;
using testing::lines;
using testing::mass;
using testing::pieces;
using testing::receipt;
using testing::refusal;
using testing::reversal;
using testing::stock;
using testing::use;
using testing::waste;

std::int64_t board_cost(const Log& log, const std::string& job = "sandpiper") {
  return log.job_cost(job)->goods_minor;
}

// Accounting Principles: A Business Perspective, exhibits 50-53 [hermanson2011]: 690.00 of
// goods in six lots, 60 of 80 units sold; first in, first out leaves 179.00 in stock, 511.00 sold.
TEST(Ledger, IsTheTextbooksFirstInFirstOut) {
  const std::pair<std::int64_t, std::int64_t> purchases[] = {{10, 800}, {10, 850}, {20, 840},
                                                             {10, 900}, {20, 880}, {10, 910}};
  for (const std::vector<std::int64_t>& sales :
       {std::vector<std::int64_t>{60}, {10, 10, 10, 10, 10, 10}, {1, 29, 7, 23}}) {
    Log log = ledger();
    int n = 0;
    for (const auto& [units, price] : purchases) {
      book(log, receipt("r" + std::to_string(n), {{pieces("box"), units, units * price}}, n));
      ++n;
    }
    EXPECT_EQ(log.stock_of("box")->minor, 69'000);
    for (const std::int64_t units : sales) {
      book(log, use("u" + std::to_string(++n), "sandpiper", "fins/wet", {{pieces("box"), units}}));
    }
    EXPECT_EQ(board_cost(log), 51'100);
    EXPECT_EQ(log.stock_of("box")->minor, 17'900);
    EXPECT_EQ(stock(log), "box 2026-06-05 10@8800, 2026-06-06 10@9100");
  }
}

TEST(Ledger, ReceivesLotsWithTheirOwnCost) {
  Log log = ledger();
  EXPECT_FALSE(log.currency());
  const Booked booked =
      book(log, receipt("r", {{mass("slow-a"), 4'000'000, 4'800, "", "B 77", testing::day(300)},
                              {length("e4"), 9'144'000, 6'500, "first roll", "", {}, 762'000}}));
  EXPECT_EQ(booked.number, 1);
  EXPECT_FALSE(booked.already);
  EXPECT_EQ(lines(booked),
            "supplier>stock slow-a/2026-06-01 4000000@4800; supplier>stock e4/first roll "
            "9144000@6500");
  EXPECT_EQ(log.currency(), "USD");
  const auto resin = log.stock_of("slow-a");
  ASSERT_EQ(resin->lots.size(), 1U);
  EXPECT_EQ(resin->material, mass("slow-a"));
  EXPECT_EQ(resin->lots[0].batch, "B 77");
  EXPECT_EQ(resin->lots[0].expires, testing::day(300));
  EXPECT_EQ(resin->lots[0].received, testing::noon(0));
  EXPECT_FALSE(resin->lots[0].width_um);
  EXPECT_EQ(log.stock_of("e4")->lots[0].width_um, 762'000);
  EXPECT_FALSE(log.stock_of("e6"));
}

TEST(Ledger, MakesLabelsFromTheDay) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 5, 0}, {mass("a"), 5, 0}, {mass("b"), 5, 0}}));
  book(log, receipt("2", {{mass("a"), 5, 0}}));
  book(log, receipt("3", {{mass("a"), 5, 0, "2026-06-02"}}));
  book(log, receipt("4", {{mass("a"), 5, 0}}, 1));
  EXPECT_EQ(stock(log),
            "a 2026-06-01 5@0, 2026-06-01-2 5@0, 2026-06-01-3 5@0, 2026-06-02 5@0, "
            "2026-06-02-2 5@0; b 2026-06-01 5@0");
}

TEST(Ledger, TakesTheOldestLotFirst) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 300, "young"}}, 5));
  book(log, receipt("2", {{mass("a"), 100, 100, "old"}}, 1));
  book(log, receipt("3", {{mass("a"), 100, 200, "b"}, {mass("a"), 100, 250, "a"}}, 3));
  const Booked booked = book(log, use("u", "sandpiper", "bottom-lam/wet", {{mass("a"), 350}}, 9));
  EXPECT_EQ(lines(booked),
            "stock>board a/old 100@100; stock>board a/a 100@250; stock>board a/b 100@200; "
            "stock>board a/young 50@150");
  EXPECT_EQ(booked.lines[0].job_slug, "sandpiper");
  EXPECT_EQ(booked.lines[0].step, "bottom-lam/wet");
  EXPECT_EQ(stock(log), "a young 50@150");
  EXPECT_EQ(stock(log, Lots::all), "a old 0@0, a 0@0, b 0@0, young 50@150");
}

TEST(Ledger, TakesOneMaterialSeveralTimesInOneEntry) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 100, "1"}, {mass("a"), 100, 200, "2"}}));
  const Booked booked = book(
      log, use("u", "sandpiper", "", {{mass("a"), 60}, {mass("a"), 60}, {mass("a"), 50, "1"}}));
  EXPECT_EQ(lines(booked),
            "stock>board a/1 60@60; stock>board a/1 40@40; stock>board a/2 20@40; "
            "stock>board a/1 50@50 -50");
  EXPECT_EQ(stock(log), "a 1 -50@-50, 2 80@160");
}

TEST(Ledger, NeverTakesSilentlyWhatHasExpired) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 100, "past", "", testing::day(9)},
                          {mass("a"), 100, 100, "today", "", testing::day(10)},
                          {mass("a"), 100, 100, "well"}}));
  // On its last day it is still good.
  EXPECT_EQ(lines(book(log, use("u1", "egret", "", {{mass("a"), 150}}, 10))),
            "stock>board a/today 100@100; stock>board a/well 50@50");
  EXPECT_EQ(lines(book(log, use("u2", "egret", "", {{mass("a"), 70}}, 10))),
            "stock>board a/well 50@50; stock>board a/past 20@20!");
  // What nobody has comes from the last lot that is good.
  EXPECT_EQ(lines(book(log, waste("w", {{mass("a"), 90}}, 10))),
            "stock>waste a/past 80@80!; stock>waste a/well 10@10 -10; short a 10");
}

TEST(Ledger, MarksAnExpiredLotThatIsNamedOrTheLast) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 100, "past", "", testing::day(9)}}));
  EXPECT_EQ(lines(book(log, use("u1", "egret", "", {{mass("a"), 10, "past"}}, 10))),
            "stock>board a/past 10@10!");
  EXPECT_EQ(lines(book(log, use("u2", "egret", "", {{mass("a"), 100}}, 10))),
            "stock>board a/past 100@100! -10; short a 10");
}

TEST(Ledger, TakesMoreThanThereIsAndSaysSo) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 100, "1"}, {mass("a"), 100, 200, "2"}}));
  EXPECT_EQ(lines(book(log, use("u1", "egret", "", {{mass("a"), 230}, {mass("b"), 7}}))),
            "stock>board a/1 100@100; stock>board a/2 130@260 -30; stock>board b/unknown 7@0 -7; "
            "short a 30; short b 7");
  EXPECT_EQ(stock(log), "a 2 -30@-60; b unknown -7@0");
  // More of the same: what was short before is not told again.
  EXPECT_EQ(lines(book(log, use("u2", "egret", "", {{mass("a"), 10}}))),
            "stock>board a/2 10@20 -10; short a 10");
  // A purchase makes up for it as far as it goes.
  book(log, receipt("2", {{mass("a"), 50, 150, "3"}}, 1));
  EXPECT_EQ(log.stock_of("a")->quantity, 10);
  EXPECT_EQ(lines(book(log, use("u3", "egret", "", {{mass("a"), 25}}))),
            "stock>board a/3 25@75; short a 15");
}

TEST(Ledger, TakesFromANamedLotWhateverItHas) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 100, 100, "1"}, {mass("a"), 100, 200, "2"}}));
  EXPECT_EQ(lines(book(log, use("u", "egret", "", {{mass("a"), 120, "2"}}))),
            "stock>board a/2 120@240 -20");
  EXPECT_EQ(refusal(log, use("v", "egret", "", {{mass("a"), 1, "3"}})), "lot.unknown");
  const auto booked = log.book(use("v", "egret", "", {{mass("a"), 1, "3"}}));
  EXPECT_EQ(booked.error()[0].expected, "a lot on the shelf, such as 1");
}

// Three for ten cents: 3, 4, 3 so that the last of it leaves with the last of the price.
TEST(Ledger, SpreadsACostToTheLastCent) {
  Log log = ledger();
  book(log, receipt("r", {{pieces("box"), 3, 10, "a"}}));
  std::string costs;
  for (const char* token : {"1", "2", "3"}) {
    costs += lines(book(log, use(token, "sandpiper", "", {{pieces("box"), 1}}))) + "; ";
  }
  EXPECT_EQ(costs, "stock>board box/a 1@3; stock>board box/a 1@4; stock>board box/a 1@3; ");
  EXPECT_EQ(board_cost(log), 10);
}

// Half a cent goes to the even neighbour: of 1 cent for 2, of 3 cents for 2.
TEST(Ledger, RoundsHalvesToEven) {
  Log log = ledger();
  book(log, receipt("r", {{pieces("one"), 2, 1, "a"}, {pieces("three"), 2, 3, "a"}}));
  EXPECT_EQ(lines(book(log, waste("1", {{pieces("one"), 1}, {pieces("three"), 1}}))),
            "stock>waste one/a 1@0; stock>waste three/a 1@2");
  EXPECT_EQ(lines(book(log, waste("2", {{pieces("one"), 1}, {pieces("three"), 1}}))),
            "stock>waste one/a 1@1; stock>waste three/a 1@1");
}

// 700 tonnes for 7 000 million: a product far beyond 64 bits.
TEST(Ledger, IsExactInTheLargest) {
  Log log = ledger();
  constexpr std::int64_t most = most_of_a_line;
  book(log, receipt("r", {{mass("a"), most, most, "a"}, {mass("b"), most - 1, most, "a"}}));
  EXPECT_EQ(lines(book(log, waste("1", {{mass("a"), most - 1}, {mass("b"), 1}}))),
            "stock>waste a/a 999999999999@999999999999; stock>waste b/a 1@1");
  EXPECT_EQ(lines(book(log, waste("2", {{mass("a"), 1}, {mass("b"), most - 2}}))),
            "stock>waste a/a 1@1; stock>waste b/a 999999999998@999999999999");
}

TEST(Ledger, RefusesWhatALineCannotHold) {
  Log log = ledger();
  const auto received = [&](std::int64_t quantity, std::int64_t cost) {
    return refusal(log, receipt("r", {{mass("a"), quantity, cost, "x"}}));
  };
  EXPECT_EQ(received(0, 5), "amount.range");
  EXPECT_EQ(received(-1, 5), "amount.range");
  EXPECT_EQ(received(most_of_a_line + 1, 5), "amount.range");
  EXPECT_EQ(received(5, -1), "amount.range");
  EXPECT_EQ(received(5, most_of_a_line + 1), "amount.range");
  EXPECT_EQ(refusal(log, use("u", "egret", "", {{mass("a"), 0}})), "amount.range");
  EXPECT_EQ(refusal(log, waste("w", {{mass("a"), -5}})), "amount.range");
  EXPECT_EQ(refusal(log, count("c", {{mass("a"), -1}})), "amount.range");
  EXPECT_EQ(refusal(log, labour("l", "egret", -1, 5)), "amount.range");
  EXPECT_EQ(refusal(log, labour("l", "egret", 5, -1)), "amount.range");
  // One milligram for ten thousand million, and a great deal more of it.
  book(log, receipt("dear", {{mass("a"), 1, most_of_a_line, "x"}}));
  EXPECT_EQ(refusal(log, waste("w", {{mass("a"), most_of_a_line}})), "amount.range");
  EXPECT_EQ(stock(log), "a x 1@1000000000000");
  EXPECT_EQ(log.info().entries, 1);
}

TEST(Ledger, KeepsAMaterialInOneUnit) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 5, 1, "x"}}));
  const auto refused = log.book(receipt("2", {{length("a"), 5, 1, "y"}}));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].code, "material.unit");
  EXPECT_EQ(refused.error()[0].key, "a");
  EXPECT_EQ(refused.error()[0].expected, "by mass, e.g. \"500 g\"");
  EXPECT_EQ(refusal(log, use("u", "egret", "", {{pieces("a"), 5}})), "material.unit");
  EXPECT_EQ(refusal(log, count("c", {{pieces("a"), 5}})), "material.unit");
}

TEST(Ledger, CallsAMaterialAsTheLastReceiptDid) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 5, 1, "x"}}));
  Material renamed = mass("a");
  renamed.name = "Laminating resin";
  book(log, waste("w", {{renamed, 1}}));
  EXPECT_EQ(log.stock_of("a")->material.name, "The a");
  book(log, receipt("2", {{renamed, 5, 1, "y"}}));
  EXPECT_EQ(log.stock_of("a")->material.name, "Laminating resin");
}

TEST(Ledger, SaysAllThatIsWrong) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 5, 1, "x"}}));
  NewReceipt bad = receipt("2", {{length("a"), 5, 1, "y"},
                                 {mass("a"), 5, 1, "x"},
                                 {mass("b"), 0, 1, "z"},
                                 {mass("c"), 5, 1, std::string(65, 'l')},
                                 {mass("c"), 5, 1, "two\nlines"}});
  bad.currency = "EUR";
  const auto refused = log.book(bad);
  ASSERT_FALSE(refused);
  std::string codes;
  for (const base::Problem& problem : refused.error()) codes += problem.code + " ";
  EXPECT_EQ(codes, "material.unit lot.taken amount.range lot.label lot.label ledger.currency ");
  EXPECT_EQ(stock(log), "a x 5@1") << "nothing of it is kept, not even its materials";
}

TEST(Ledger, HasOneCurrency) {
  Log log = ledger();
  NewReceipt gift = receipt("1", {{mass("a"), 5, 0, "x"}});
  gift.currency = "";
  book(log, gift);
  EXPECT_FALSE(log.currency());
  book(log, labour("2", "egret", 5, 100));
  EXPECT_EQ(log.currency(), "USD");
  NewLabour other = labour("3", "egret", 5, 100);
  other.currency = "EUR";
  const auto refused = log.book(other);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].code, "ledger.currency");
  EXPECT_EQ(refused.error()[0].expected, "USD");
  other.cost_minor = 0;
  other.currency = "";
  EXPECT_EQ(refusal(log, other), "");
}

TEST(Ledger, KnowsTheJobAndTheEventOfAnEntry) {
  Log log = ledger();
  book(log, receipt("1", {{mass("a"), 50, 10, "x"}}));
  EXPECT_EQ(refusal(log, use("u", "heron", "", {{mass("a"), 5}})), "job.unknown");
  EXPECT_EQ(refusal(log, labour("l", "heron", 5, 5)), "job.unknown");
  NewEvents event;
  event.job_slug = "egret";
  event.events = {{.token = "e", .kind = EventKind::note, .facts = {.note = "x"}}};
  ASSERT_TRUE(log.record_events(event));
  NewUse used = use("u", "egret", "deck-lam/wet", {{mass("a"), 5}});
  used.head.event = 1;
  used.head.note = "a patch";
  book(log, used);
  const auto entries = log.entries({.event = 1});
  ASSERT_EQ(entries.size(), 1U);
  EXPECT_EQ(entries[0].kind, EntryKind::use);
  EXPECT_EQ(entries[0].note, "a patch");
  EXPECT_EQ(entries[0].at, testing::noon(0));
  EXPECT_EQ(entries[0].on, testing::day(0));
  EXPECT_EQ(entries[0].recorded, used.head.recorded);
  EXPECT_EQ(entries[0].event, 1);
  EXPECT_EQ(entries[0].lines.size(), 1U);
  used.head.token = "v";
  used.head.event = 99;
  EXPECT_THROW((void)log.book(used), std::logic_error);
  EXPECT_EQ(log.info().entries, 2);
}

TEST(Ledger, BooksWork) {
  Log log = ledger();
  EXPECT_EQ(lines(book(log, labour("1", "egret", 90, 2250))), "labour>board 90@2250");
  EXPECT_EQ(lines(book(log, labour("2", "egret", 30, 0))), "labour>board 30@0");
  EXPECT_EQ(lines(book(log, labour("3", "egret", 0, 5000))), "labour>board 0@5000");
  book(log, reversal("undo", 1));
  const auto cost = log.job_cost("egret");
  EXPECT_EQ(cost->minutes, 30);
  EXPECT_EQ(cost->work_minor, 5000);
  EXPECT_EQ(cost->goods_minor, 0);
}

TEST(Ledger, TakesBrokenPromisesForBugs) {
  Log log = ledger();
  const auto breaks = [&](const NewEntry& entry) {
    EXPECT_THROW((void)log.book(entry), std::logic_error);
  };
  breaks(receipt("", {{mass("a"), 5, 1, "x"}}));
  breaks(receipt("1", {}));
  breaks(receipt("1", {{{"A b", "x"}, 5, 1, "x"}}));
  breaks(receipt("1", {{{"a", ""}, 5, 1, "x"}}));
  breaks(receipt("1", {{mass("a"), 5, 1, "x", "", {}, 0}}));
  breaks(use("1", "egret", "", {}));
  breaks(waste("1", {}));
  breaks(count("1", {}));
  breaks(count("1", {{mass("a"), 5}, {mass("a"), 5, "x"}}));
  breaks(count("1", {{mass("a"), 5, "x"}, {mass("a"), 5}}));
  breaks(count("1", {{mass("a"), 5, "x"}, {mass("a"), 5, "x"}}));
  breaks(labour("1", "egret", 0, 0));
  NewLabour odd = labour("1", "egret", 5, 5);
  odd.currency = "";
  breaks(odd);
  odd.currency = "dollars";
  breaks(odd);
  EXPECT_EQ(log.info().entries, 0);
}

}  // namespace
}  // namespace wetout::joblog
