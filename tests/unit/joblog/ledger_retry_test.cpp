// Entries sent again, several kept together, and what would be booked.
#include <SQLiteCpp/Database.h>
#include <gtest/gtest.h>

#include <stdexcept>

#include "ledger_samples.hpp"
#include "record_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::count;
using testing::labour;
using testing::ledger;
using testing::length;
using testing::lines;
using testing::mass;
using testing::receipt;
using testing::refusal;
using testing::reversal;
using testing::stock;
using testing::use;
using testing::waste;

NewEntry noted(NewEntry entry, const std::string& note) {
  std::visit(
      [&](auto& one) {
        if constexpr (requires { one.head; }) {
          one.head.note = note;
        } else {
          one.note = note;
        }
      },
      entry);
  return entry;
}

// One of each kind, after which stock goes on changing.
const std::vector<NewEntry>& entries() {
  static const std::vector<NewEntry> all = {
      receipt("r1", {{mass("a"), 100, 100, "", "B 1", testing::day(2)},
                     {length("e4"), 900, 70, "roll", "", {}, 762'000}}),
      receipt("r2", {{mass("a"), 100, 200, "two"}}, 1),
      use("u1", "sandpiper", "bottom-lam/wet", {{mass("a"), 150}, {mass("b"), 5}}, 4),
      use("u2", "egret", "", {{mass("a"), 60, "two"}, {length("e4"), 10}}, 4),
      waste("w", {{mass("a"), 20}, {mass("a"), 30}}, 4),
      count("c1", {{mass("a"), 40}, {length("e4"), 900, "roll"}}, 5),
      count("c2", {{mass("a"), 40}}, 5),
      labour("l", "egret", 60, 1500, 5),
      reversal("x", 3),
  };
  return all;
}

TEST(Retry, AnswersAsTheFirstTime) {
  Log log = ledger();
  std::vector<Booked> answers;
  for (const NewEntry& entry : entries()) answers.push_back(book(log, entry));
  EXPECT_EQ(lines(answers[2]),
            "stock>board a/two 100@200; stock>board a/2026-06-01 50@50!; "
            "stock>board b/unknown 5@0 -5; short b 5");
  EXPECT_EQ(lines(answers[3]),
            "stock>board a/two 60@120 -60; stock>board e4/roll 10@1; short a 10");
  EXPECT_EQ(lines(answers[4]),
            "stock>waste a/2026-06-01 20@20!; stock>waste a/2026-06-01 30@30!; short a 50");
  const std::string before = stock(log, Lots::all);
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const Booked again = book(log, entries()[i]);
    EXPECT_TRUE(again.already);
    EXPECT_EQ(again.number, static_cast<std::int64_t>(i) + 1);
    EXPECT_EQ(lines(again), lines(answers[i]));
    EXPECT_EQ(again.lines, answers[i].lines);
    EXPECT_EQ(again.shortages, answers[i].shortages);
  }
  EXPECT_EQ(stock(log, Lots::all), before);
  EXPECT_EQ(log.info().entries, 9);
}

TEST(Retry, MayComeLater) {
  Log log = ledger();
  NewUse first = use("u", "egret", "", {{mass("a"), 60}});
  book(log, first);
  first.head.at += std::chrono::hours(30);
  first.head.on = testing::day(1);
  first.head.recorded += std::chrono::hours(30);
  EXPECT_TRUE(book(log, first).already);
}

// An old receipt sent again after its lot has been received anew, with another date.
TEST(Retry, KnowsAReceiptThatWasTakenBack) {
  Log log = ledger();
  const NewReceipt first = receipt("r", {{mass("a"), 5, 9, "jug", "", testing::day(30)}});
  book(log, first);
  book(log, reversal("x", 1));
  book(log, receipt("r2", {{mass("a"), 5, 9, "jug", "", testing::day(90)}}));
  EXPECT_TRUE(book(log, first).already);
  EXPECT_EQ(stock(log), "a jug 5@9");
}

TEST(Retry, RefusesATokenThatSaysSomethingElse) {
  Log log = ledger();
  for (const NewEntry& entry : entries()) book(log, entry);
  for (const NewEntry& entry : entries()) {
    EXPECT_EQ(refusal(log, noted(entry, "other")), "entry.token");
  }
  const NewEntry others[] = {
      receipt("r1", {{mass("a"), 100, 100, "", "B 1", testing::day(2)}}),
      receipt("r2", {{mass("a"), 101, 200, "two"}}),
      receipt("r2", {{mass("a"), 100, 201, "two"}}),
      receipt("r2", {{mass("a"), 100, 200, "three"}}),
      receipt("r2", {{mass("b"), 100, 200, "two"}}),
      receipt("r2", {{mass("a"), 100, 200, "two", "B 2"}}),
      receipt("r2", {{mass("a"), 100, 200, "two", "", testing::day(9)}}),
      receipt("r2", {{mass("a"), 100, 200, "two", "", {}, 5}}),
      receipt("r2", {{mass("a"), 100, 200, "two"}, {mass("a"), 100, 200, "three"}}),
      use("u1", "egret", "bottom-lam/wet", {{mass("a"), 150}, {mass("b"), 5}}),
      use("u1", "sandpiper", "deck-lam/wet", {{mass("a"), 150}, {mass("b"), 5}}),
      use("u1", "sandpiper", "bottom-lam/wet", {{mass("a"), 151}, {mass("b"), 5}}),
      use("u1", "sandpiper", "bottom-lam/wet", {{mass("a"), 150}}),
      use("u2", "egret", "", {{mass("a"), 60, "2026-06-01"}, {length("e4"), 10}}),
      waste("u2", {{mass("a"), 60, "two"}, {length("e4"), 10}}),
      waste("w", {{mass("a"), 40}}),
      count("c1", {{mass("a"), 41}, {length("e4"), 900, "roll"}}),
      count("c1", {{mass("a"), 40}}),
      count("c1", {{mass("a"), 40}, {length("e4"), 899, "roll"}}),
      labour("l", "egret", 61, 1500),
      labour("l", "egret", 60, 1501),
      labour("l", "sandpiper", 60, 1500),
      reversal("x", 4),
      reversal("r1", 3),
      labour("x", "egret", 60, 1500),
  };
  int n = 0;
  for (const NewEntry& entry : others) EXPECT_EQ(refusal(log, entry), "entry.token") << n++;
  EXPECT_EQ(log.info().entries, 9);
}

TEST(Foreseen, AreAnsweredAsTheyWillBeBooked) {
  Log log = ledger();
  book(log, entries()[0]);
  std::vector<NewEntry> rest(entries().begin() + 1, entries().end());
  // The last takes back an entry that would only be foreseen.
  EXPECT_EQ(log.foresee_bookings(rest).error()[0].code, "entry.unknown");
  rest.pop_back();
  const auto foreseen = log.foresee_bookings(rest);
  ASSERT_TRUE(foreseen) << foreseen.error()[0].message;
  EXPECT_EQ(log.info().entries, 1);
  EXPECT_EQ(log.info().materials, 2);
  for (std::size_t i = 0; i < rest.size(); ++i) {
    const Booked booked = book(log, rest[i]);
    EXPECT_EQ(foreseen->at(i).number, booked.number);
    EXPECT_EQ(foreseen->at(i).lines, booked.lines) << lines(foreseen->at(i));
    EXPECT_EQ(foreseen->at(i).shortages, booked.shortages);
  }
}

TEST(Foreseen, MayBeOfAJobThatIsStillToBegin) {
  Log log = ledger();
  EXPECT_TRUE(log.foresee_bookings({use("u", "heron", "", {{mass("a"), 5}})}));
  const auto foreseen = log.foresee_bookings(
      {receipt("r", {{mass("a"), 5, 1, "x"}}), receipt("s", {{mass("a"), 5, 1, "x"}})});
  EXPECT_EQ(foreseen.error()[0].code, "lot.taken");
}

TEST(Together, KeepsEverything) {
  const testing::TempFolder folder;
  {
    Log log = Log::open(folder / "log.db", testing::writing());
    log.save_plan(testing::sample_plan(1));
    const auto done = log.together([&]() -> base::Result<void> {
      const auto events = log.record_events(testing::sample_events(1));
      if (!events) return tl::unexpected(events.error());
      book(log, receipt("r", {{mass("a"), 100, 100, "1"}}));
      NewUse used = use("u", "sandpiper", "bottom-lam/wet", {{mass("a"), 40}});
      used.head.event = events->events[0].row.number;
      book(log, used);
      EXPECT_TRUE(book(log, used).already);
      // One within the other, and a reading of what is not yet kept.
      return log.together([&]() -> base::Result<void> {
        book(log, waste("w", {{mass("a"), 10}}));
        EXPECT_EQ(stock(log), "a 1 50@50");
        return {};
      });
    });
    ASSERT_TRUE(done);
    EXPECT_EQ(book(log, waste("w2", {{mass("a"), 10}})).number, 4);
  }
  const Log log = Log::open(folder / "log.db");
  EXPECT_EQ(stock(log), "a 1 40@40");
  EXPECT_EQ(log.entries({.event = 1}).at(0).number, 2);
  EXPECT_EQ(testing::difference(log, testing::sample_events(1)), "");
  EXPECT_TRUE(check(folder / "log.db").empty());
}

TEST(Together, KeepsNothingWhenItFails) {
  Log log = ledger();
  book(log, receipt("r", {{mass("a"), 100, 100, "1"}}));
  const auto failed = log.together([&]() -> base::Result<void> {
    book(log, waste("w", {{mass("a"), 10}}));
    EXPECT_TRUE(log.record_events(testing::sample_events(1)));
    log.save_plan(testing::sample_plan(2));
    const auto refused = log.book(waste("x", {{mass("a"), 10, "2"}}));
    return refused ? base::Result<void>() : tl::unexpected(refused.error());
  });
  ASSERT_FALSE(failed);
  EXPECT_EQ(failed.error()[0].code, "lot.unknown");
  EXPECT_THROW((void)log.together([&]() -> base::Result<void> {
    book(log, waste("w", {{mass("a"), 10}}));
    throw std::runtime_error("as when somebody pulls the plug");
  }),
               std::runtime_error);
  EXPECT_EQ(stock(log), "a 1 100@100");
  EXPECT_EQ(log.info().entries, 1);
  EXPECT_EQ(log.info().events, 0);
  EXPECT_EQ(log.info().plans, 2);
  EXPECT_EQ(book(log, waste("w", {{mass("a"), 10}})).number, 2);
}

// A part that is refused may be done otherwise: the whole goes on from where it was.
TEST(Together, GoesOnAfterAPartThatWasRefused) {
  Log log = ledger();
  ASSERT_TRUE(log.together([&]() -> base::Result<void> {
    book(log, receipt("r", {{mass("a"), 100, 100, "1"}}));
    NewEvents events = testing::sample_events(1, "heron");
    EXPECT_FALSE(log.record_events(events)) << "there is no such job";
    EXPECT_EQ(refusal(log, use("u", "egret", "", {{mass("a"), 30}, {mass("a"), 10, "2"}})),
              "lot.unknown");
    EXPECT_EQ(lines(book(log, use("u", "egret", "", {{mass("a"), 30}}))), "stock>board a/1 30@30");
    return {};
  }));
  EXPECT_EQ(stock(log), "a 1 70@70");
  EXPECT_EQ(log.info().entries, 2);
}

TEST(SplitPrice, IsExactToTheLastCent) {
  using Shares = std::vector<std::int64_t>;
  EXPECT_EQ(split_price(100, {1, 1, 1}), (Shares{34, 33, 33}));
  EXPECT_EQ(split_price(200, {1, 1, 1}), (Shares{67, 67, 66}));
  EXPECT_EQ(split_price(8'100, {4'800, 3'300}), (Shares{4'800, 3'300}));
  // 7.5, 2.5: equal remainders, the first one first; 0.99, 9.01: the larger one.
  EXPECT_EQ(split_price(10, {3, 1}), (Shares{8, 2}));
  EXPECT_EQ(split_price(10, {99, 901}), (Shares{1, 9}));
  EXPECT_EQ(split_price(0, {3, 1}), (Shares{0, 0}));
  EXPECT_EQ(split_price(5, {0, 1, 0}), (Shares{0, 5, 0}));
  EXPECT_EQ(split_price(7, {2}), (Shares{7}));
  EXPECT_EQ(split_price(most_of_a_line, {most_of_a_line, most_of_a_line}),
            (Shares{most_of_a_line / 2, most_of_a_line / 2}));
  EXPECT_THROW(split_price(5, {}), std::logic_error);
  EXPECT_THROW(split_price(5, {0, 0}), std::logic_error);
  EXPECT_THROW(split_price(5, {2, -1}), std::logic_error);
  EXPECT_THROW(split_price(-5, {1}), std::logic_error);
}

}  // namespace
}  // namespace wetout::joblog
