// What records take from the shelf, and what takes it back.
#include <gtest/gtest.h>

#include <random>

#include "record_shelf.hpp"
#include "support.hpp"

namespace wetout::work {
namespace {

using namespace testing;
using Lines = std::vector<std::string>;

TEST_F(RecordShelf, TakesWhatWasMixedByItsRatioToTheMilligram) {
  fill_shelf();
  RecordRequest mixed = request("bottom-lam");
  mixed.mixed = units::grams(256);
  const auto answer = record(workshop_, mixed);
  ASSERT_TRUE(answer);
  // 100 : 44 by mass, by hand.
  EXPECT_EQ(lines_of(answer->document), (Lines{"kelp-a jug 177778", "kelp-slow-b can 78222"}));
  EXPECT_EQ(on_hand("kelp-a"), 5'000'000 - 177'778);
  EXPECT_EQ(on_hand("kelp-slow-b"), 2'200'000 - 78'222);
  ASSERT_EQ(answer->document.booked.size(), 1U);
  const report::LedgerEntry& entry = answer->document.booked.front();
  EXPECT_EQ(entry.event, answer->document.events.front().number);
  EXPECT_EQ(entry.lines[0].step, "bottom-lam/wet");
  // 79.00 EUR for 5 kg: 177.778 g are 2.8089 EUR; 55.00 EUR for 2.2 kg: 78.222 g are 1.9556 EUR.
  EXPECT_EQ(entry.lines[0].cost, (units::Money{281, "EUR"}));
  EXPECT_EQ(entry.lines[1].cost, (units::Money{196, "EUR"}));
}

TEST_F(RecordShelf, TakesPartsAsWeighed) {
  fill_shelf();
  RecordRequest weighed = request("bottom-lam");
  weighed.part_a = units::grams(20);
  weighed.part_b = units::grams(10);
  const auto answer = record(workshop_, weighed);
  ASSERT_TRUE(answer);
  EXPECT_EQ(lines_of(answer->document), (Lines{"kelp-a jug 20000", "kelp-slow-b can 10000"}));
}

TEST_F(RecordShelf, TakesClothAndInsertsAsPlannedWhenDone) {
  fill_shelf();
  RecordRequest done = request("deck-lam");
  done.done = true;
  const auto deck = record(workshop_, done);
  ASSERT_TRUE(deck);
  const auto stored = log().plan(pico);
  ASSERT_TRUE(stored);
  std::int64_t e4 = 0, e6 = 0;
  for (const report::LedgerEntry& entry : deck->document.booked) {
    for (const report::LedgerLine& line : entry.lines) {
      (line.material == "e4" ? e4 : e6) += line.amount.count;
    }
  }
  EXPECT_GT(e4, 1'000'000) << "patch and inlay";
  EXPECT_GT(e6, 1'500'000) << "the deck";
  EXPECT_TRUE(has(deck->document.notices, "record.as_planned"));

  RecordRequest boxes = request("twin-boxes");
  boxes.done = true;
  const auto twin = record(workshop_, boxes);
  ASSERT_TRUE(twin);
  EXPECT_EQ(lines_of(twin->document), (Lines{"side-box bag 2"}));

  // A second time takes nothing more.
  RecordRequest again = request("twin-boxes");
  again.done = true;
  EXPECT_TRUE(record(workshop_, again)->document.booked.empty());
}

TEST_F(RecordShelf, TakesWhatIsNamedInsteadOfThePlanned) {
  fill_shelf();
  RecordRequest named = request("twin-boxes");
  named.used = {"side-box=3"};
  EXPECT_EQ(lines_of(record(workshop_, named)->document), (Lines{"side-box bag 3"}));
  RecordRequest done = request("twin-boxes");
  done.done = true;
  EXPECT_TRUE(record(workshop_, done)->document.booked.empty()) << "named before";

  RecordRequest bottom = request("bottom-lam");
  bottom.cloth = {"e4=1.9 m", "e4=60 cm"};
  bottom.done = true;
  const auto answer = record(workshop_, bottom);
  EXPECT_EQ(lines_of(answer->document), (Lines{"e4 roll 2500000"}));
  EXPECT_FALSE(has(answer->document.notices, "record.as_planned"));
  EXPECT_EQ(answer->document.events.front().kind, "note");
}

TEST_F(RecordShelf, BooksWorkFromStartToDoneOnce) {
  RecordRequest start = request("bottom-lam");
  start.start = "2026-06-13T14:00:00Z";
  ASSERT_TRUE(record(workshop_, start));
  RecordRequest done = request("bottom-lam");
  done.at = "2026-06-13T14:50:00Z";
  done.done = true;
  const auto answer = record(workshop_, done);
  ASSERT_TRUE(answer);
  EXPECT_EQ(lines_of(answer->document), (Lines{"work - 50"}));
  EXPECT_EQ(answer->document.booked[0].lines[0].cost.minor, 2000) << "24 EUR/h";
  RecordRequest again = request("bottom-lam");
  again.done = true;
  EXPECT_TRUE(record(workshop_, again)->document.booked.empty());

  RecordRequest forgotten = request("deck-lam");
  forgotten.start = "2026-06-10T14:00:00Z";
  forgotten.done = true;
  const auto long_one = record(workshop_, forgotten);
  EXPECT_TRUE(long_one->document.booked.empty());
  EXPECT_TRUE(has(long_one->document.notices, "record.long_work"));
}

TEST_F(RecordShelf, IsQuietWhereNoStockIsKept) {
  RecordRequest all = request("bottom-lam");
  all.mixed = units::grams(256);
  all.cloth = {"e4=1.9 m"};
  all.lots = {"e4=roll"};
  all.done = true;
  const auto answer = record(workshop_, all);
  ASSERT_TRUE(answer);
  EXPECT_TRUE(answer->document.booked.empty());
  EXPECT_TRUE(answer->document.notices.empty());
  EXPECT_EQ(log().info().entries, 0);
  EXPECT_EQ(answer->document.events.size(), 3U) << "mixed, what was cut, done";
}

TEST_F(RecordShelf, SaysWhatIsShortExpiredAndNeverReceived) {
  receive("kelp-a", MaterialUnit::milligram, 100'000, 200, "old", std::chrono::year(2026) / 6 / 1);
  RecordRequest first = request("bottom-lam");
  first.mixed = units::grams(256);
  const auto answer = record(workshop_, first);
  ASSERT_TRUE(answer);
  EXPECT_TRUE(has(answer->document.notices, "stock.overdrawn"));
  EXPECT_TRUE(has(answer->document.notices, "stock.expired"));
  EXPECT_TRUE(has(answer->document.notices, "stock.never_received")) << "the hardener";
  EXPECT_TRUE(answer->document.booked[0].lines[0].expired);
  EXPECT_EQ(answer->document.booked[0].lines[0].overdrawn->count, 77'778);
  EXPECT_EQ(on_hand("kelp-slow-b"), -78'222);

  RecordRequest second = request("bottom-lam");
  second.mixed = units::grams(10);
  const auto more = record(workshop_, second);
  EXPECT_FALSE(has(more->document.notices, "stock.never_received")) << "said once";
}

TEST_F(RecordShelf, TakesFromTheLotThatIsPicked) {
  fill_shelf();
  receive("kelp-a", MaterialUnit::milligram, 1'000'000, 2150, "second");
  RecordRequest picked = request("bottom-lam");
  picked.mixed = units::grams(144);
  picked.lots = {"KELP A=second"};
  EXPECT_EQ(lines_of(record(workshop_, picked)->document),
            (Lines{"kelp-a second 100000", "kelp-slow-b can 44000"}));
  RecordRequest idle = request("bottom-lam");
  idle.mixed = units::grams(144);
  idle.lots = {"e4=roll"};
  EXPECT_EQ(problem_of(record(workshop_, idle)), "goods.lot --lot");
}

TEST_F(RecordShelf, KeepsAPieceOfTheClothAtItsShare) {
  fill_shelf();
  RecordRequest call = request("deck-lam");
  call.cloth = {"e4=2 m"};
  call.remnants = {"e4=60 cm x 15 in"};
  const auto answer = record(workshop_, call);
  ASSERT_TRUE(answer);
  // Half of the width of 30 in: worth 30 cm of roll. 116.00 EUR for 20 m.
  EXPECT_EQ(lines_of(answer->document),
            (Lines{"e4 roll 300000", "e4 remnant 2026-06-13 600000", "e4 roll 1700000"}));
  EXPECT_EQ(answer->document.booked[0].lines[1].cost.minor, 174);
  EXPECT_EQ(answer->document.booked[1].lines[0].cost.minor, 986);
  EXPECT_EQ(on_hand("e4"), 20'000'000 - 2'000'000 + 600'000);

  // It is taken by its name, and not before.
  RecordRequest more = request("deck-lam");
  more.cloth = {"e4=19 m"};
  EXPECT_EQ(lines_of(record(workshop_, more)->document), (Lines{"e4 roll 19000000"}));
  RecordRequest piece = request("bottom-lam");
  piece.cloth = {"e4=50 cm"};
  piece.lots = {"e4=remnant 2026-06-13"};
  EXPECT_EQ(lines_of(record(workshop_, piece)->document), (Lines{"e4 remnant 2026-06-13 500000"}));

  const auto back = undo_record(
      workshop_, {.event = answer->document.events[0].number, .note = {}, .token = "u"});
  ASSERT_TRUE(back);
  EXPECT_EQ(back->document.booked.size(), 2U);
  EXPECT_EQ(on_hand("e4"), 20'000'000 - 19'000'000 - 500'000);
}

TEST_F(RecordShelf, KeepsAPieceOfThePlannedClothToo) {
  fill_shelf();
  RecordRequest call = request("bottom-lam");
  call.remnants = {"e4=30cmx20cm", "e4=20cmx20cm"};
  call.done = true;
  const auto answer = record(workshop_, call);
  ASSERT_TRUE(answer);
  const auto e4 = log().stock_of("e4");
  ASSERT_EQ(e4->lots.size(), 3U);
  EXPECT_EQ(e4->lots[1].label, "remnant 2026-06-13");
  EXPECT_EQ(e4->lots[2].label, "remnant 2026-06-13-2");
  EXPECT_EQ(e4->lots[2].width_um, 200'000);
  EXPECT_EQ(e4->minor + log().job_cost(pico)->goods_minor, 11'600) << "no cent is lost";
}

TEST_F(RecordShelf, RefusesPiecesThatCannotBe) {
  fill_shelf();
  const auto code = [&](const std::string& piece, const std::string& cloth) {
    RecordRequest call = request("deck-lam");
    if (!cloth.empty()) call.cloth = {cloth};
    call.remnants = {piece};
    return problem_of(record(workshop_, call));
  };
  EXPECT_EQ(code("e4=60 cm", "e4=2 m"), "remnant.form --remnant");
  EXPECT_EQ(code("e4=60x40", "e4=2 m"), "remnant.form --remnant");
  EXPECT_EQ(code("e4=60 cm x 1 m", "e4=2 m"), "remnant.large --remnant");
  EXPECT_EQ(code("e4=2 m x 30 in", "e4=2 m"), "remnant.large --remnant");
  EXPECT_EQ(code("e4=20cmx20cm", "e6=2 m"), "remnant.no_cut --remnant");
  EXPECT_EQ(code("side-box=1cmx1cm", ""), "goods.kind --remnant");
  EXPECT_EQ(log().info().entries, 6);
}

// The event is written before the goods are looked for.
TEST_F(RecordShelf, KeepsNeitherFactNorGoodsWhenOneFails) {
  fill_shelf();
  RecordRequest bad = request("bottom-lam");
  bad.mixed = units::grams(144);
  bad.start = "2026-06-13T14:00:00Z";
  bad.lots = {"kelp-a=nowhere"};
  EXPECT_EQ(problem_of(record(workshop_, bad)), "lot.unknown kelp-a");
  EXPECT_TRUE(log().events(pico).empty());
  EXPECT_EQ(log().info().entries, 6) << "the purchases";
  EXPECT_EQ(on_hand("kelp-slow-b"), 2'200'000);
}

TEST_F(RecordShelf, BooksNothingTwiceUnderOneToken) {
  fill_shelf();
  RecordRequest call = request("bottom-lam");
  call.mixed = units::grams(256);
  call.start = "2026-06-13T14:00:00Z";
  call.done = true;
  const auto first = record(workshop_, call);
  const std::int64_t entries = log().info().entries;
  const auto second = record(workshop_, call);
  ASSERT_TRUE(second);
  EXPECT_EQ(log().info().entries, entries);
  EXPECT_EQ(lines_of(second->document), lines_of(first->document));
  for (const report::LedgerEntry& entry : second->document.booked) EXPECT_TRUE(entry.already);
}

TEST_F(RecordShelf, ForeseesOnADryRunWhatIsThenBooked) {
  fill_shelf();
  RecordRequest call = request("deck-lam");
  call.mixed = units::grams(144);
  call.start = "2026-06-13T14:00:00Z";
  call.done = true;
  Workshop dry = workshop_;
  dry.dry_run = true;
  const auto foreseen = record(dry, call);
  ASSERT_TRUE(foreseen);
  EXPECT_EQ(log().info().entries, 6);
  EXPECT_TRUE(log().events(pico).empty());
  const auto kept = record(workshop_, call);
  EXPECT_EQ(lines_of(foreseen->document), lines_of(kept->document));
  EXPECT_EQ(foreseen->document.booked[0].number, kept->document.booked[0].number);

  const auto event = kept->document.events[1].number;
  const auto dry_undo = undo_record(dry, {.event = event, .note = {}, .token = "u"});
  const auto undo = undo_record(workshop_, {.event = event, .note = {}, .token = "u"});
  ASSERT_TRUE(dry_undo);
  ASSERT_TRUE(undo);
  EXPECT_EQ(lines_of(dry_undo->document), lines_of(undo->document));
  EXPECT_EQ(undo->document.booked[0].kind, "undo");
  EXPECT_EQ(undo->document.booked[0].event, undo->document.events[0].number);
  EXPECT_EQ(undo->document.booked[0].lines[0].from, "board");
  const auto again = undo_record(workshop_, {.event = event, .note = {}, .token = "u"});
  EXPECT_EQ(lines_of(again->document), lines_of(undo->document));
  EXPECT_TRUE(again->document.booked[0].already);
}

// Sums of the entries, line by line.
std::int64_t cost_by_entries(const Log& log) {
  std::int64_t minor = 0;
  for (const joblog::EntryRow& entry : log.entries({.job_slug = pico})) {
    for (const joblog::MovementRow& line : entry.lines) {
      if (line.target == joblog::Account::board) minor += line.minor;
      if (line.source == joblog::Account::board) minor -= line.minor;
    }
  }
  return minor;
}

// Records and undos at random; a board costs what its entries say, and when all is taken back the
// shelf is as it was.
TEST_F(RecordShelf, CostsTheSumOfItsEntriesWhateverIsRecordedAndTakenBack) {
  fill_shelf();
  receive("e4", MaterialUnit::micrometre, 50'000'000, 25'001, "second");
  const auto shelf = log().stock(joblog::Lots::all);
  std::mt19937 random(20260613);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  const std::vector<std::string> coats = {"bottom-lam", "deck-lam", "twin-boxes", "bottom-hotcoat"};
  const auto take_back_one = [&] {
    std::vector<std::int64_t> open;
    for (const joblog::EventRow& event : log().events(pico)) {
      if (!event.undone_by && event.kind != joblog::EventKind::undo) open.push_back(event.number);
    }
    if (open.empty()) return false;
    const auto which = open[static_cast<std::size_t>(below(static_cast<int>(open.size())))];
    EXPECT_TRUE(undo_record(
        workshop_, {.event = which, .note = {}, .token = "undo-" + std::to_string(which)}));
    return true;
  };
  const auto expect_sum = [&] {
    const Log log = this->log();
    const auto cost = log.job_cost(pico);
    ASSERT_TRUE(cost);
    EXPECT_EQ(cost->goods_minor + cost->work_minor, cost_by_entries(log));
  };
  for (int round = 0; round < 120; ++round) {
    if (below(3) == 0) {
      take_back_one();
    } else {
      RecordRequest call = request(coats[static_cast<std::size_t>(below(4))]);
      if (below(2) == 0) call.mixed = units::grams(1 + below(900));
      if (below(3) == 0) call.used = {"side-box=" + std::to_string(1 + below(3))};
      if (below(3) == 0) call.cloth = {"e4=" + std::to_string(30 + below(100)) + " cm"};
      if (!call.cloth.empty() && below(2) == 0) call.remnants = {"e4=20cmx30cm"};
      if (below(4) == 0) call.start = "2026-06-13T14:00:00Z";
      call.done = below(3) == 0;
      call.note = "x";
      ASSERT_TRUE(record(workshop_, call));
    }
    expect_sum();
  }
  while (take_back_one()) {
  }
  expect_sum();
  const auto after = log().stock(joblog::Lots::all);
  ASSERT_EQ(after.size(), shelf.size());
  for (std::size_t i = 0; i < shelf.size(); ++i) {
    EXPECT_EQ(after[i].quantity, shelf[i].quantity) << shelf[i].material.slug;
    EXPECT_EQ(after[i].minor, shelf[i].minor) << shelf[i].material.slug;
  }
  EXPECT_EQ(log().job_cost(pico)->goods_minor, 0);
  EXPECT_EQ(log().job_cost(pico)->work_minor, 0);
}

}  // namespace
}  // namespace wetout::work
