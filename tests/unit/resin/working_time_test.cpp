#include "wetout/resin/working_time.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "sheets.hpp"

namespace wetout::resin {
namespace {

using sheets::c;
using units::grams;

using sheets::quart;
using sheets::tray;

TEST(WorkingTimes, AnswersWhatBatchesAsk) {
  const WorkingTimes times{Defaults{}};
  const Cup cup = quart();
  const auto time = times.of(sheets::medium(), {grams(300), c(25), c(25), &cup, units::minutes(4)});
  ASSERT_TRUE(time);
  EXPECT_LT(time->use_within, time->gel);
  EXPECT_GT(*time->spread_within, time->use_within);
  EXPECT_TRUE(*time->runs_away);
  EXPECT_FALSE(time->peak);
  const auto late = times.of(sheets::medium(), {grams(300), c(25), c(25), &cup, units::hours(1)});
  EXPECT_FALSE(late->spread_within);
  EXPECT_EQ(late->use_within, time->use_within);
  // More than the cup holds is the caller's to say.
  EXPECT_TRUE(times.of(sheets::medium(), {grams(3000), c(25), c(25), &cup}));
}

TEST(WorkingTimes, FitsEachSheetOnce) {
  const WorkingTimes times{Defaults{}};
  const Product medium_sheet = sheets::medium();
  const auto* first = &times.calibration(medium_sheet);
  EXPECT_EQ(first, &times.calibration(sheets::medium()));
  Product other = medium_sheet;
  other.pot_life[0].time = sheets::minutes(24);
  EXPECT_NE(first, &times.calibration(other));
  EXPECT_EQ(first, &times.calibration(medium_sheet));
}

Product polyester() {
  Product p;
  p.id = "laminating";
  p.chemistry = Chemistry::polyester;
  p.catalyst = {{c(20), 0.015, sheets::minutes(20)}, {c(20), 0.03, sheets::minutes(10)}};
  p.dose_low = 0.01;
  p.dose_high = 0.03;
  return p;
}

TEST(PolyesterWorkingTime, IsAShareOfTheSheetsGel) {
  const Defaults defaults;
  const auto time = polyester_working_time(
      polyester(), 0.015, {grams(300), c(20), c(20), nullptr, units::minutes(3)}, defaults);
  ASSERT_TRUE(time);
  EXPECT_NEAR(units::in_minutes(time->gel), 20.0, 1e-9);
  EXPECT_NEAR(units::in_minutes(time->use_within), 10.0, 1e-9);
  // At one temperature it makes no difference when it leaves the cup.
  EXPECT_NEAR(units::in_minutes(*time->spread_within), 10.0, 1e-9);
  EXPECT_FALSE(time->peak);
  EXPECT_FALSE(time->runs_away);
}

TEST(PolyesterWorkingTime, ColdResinOnAWarmBoardHurriesOnceItIsPoured) {
  const Defaults defaults;
  const auto time = polyester_working_time(
      polyester(), 0.015, {grams(300), c(30), c(20), nullptr, units::minutes(4)}, defaults);
  ASSERT_TRUE(time);
  EXPECT_LT(*time->spread_within, time->use_within);
  EXPECT_GT(*time->spread_within, units::minutes(4));
  const auto late = polyester_working_time(
      polyester(), 0.015, {grams(300), c(30), c(20), nullptr, units::minutes(11)}, defaults);
  EXPECT_FALSE(late->spread_within);
}

TEST(WorkingTimes, ProblemsComeThrough) {
  Product p = sheets::medium();
  p.gel.clear();
  p.tack_free.clear();
  p.pot_life.clear();
  const WorkingTimes times{Defaults{}};
  EXPECT_EQ(times.of(p, {grams(300), c(25), c(25), nullptr}).error().front().code, "resin.no_time");
  EXPECT_EQ(times.of(sheets::medium(), {grams(300), c(55), c(25), nullptr}).error().front().code,
            "cup.beyond_sense");
}

// Moved by a hundredth of its range: a number of the answer moves if and only if it is listed.
TEST(WorkingTimes, AssumedListsExactlyWhatMovesTheAnswer) {
  const Product sheet_usable = [] {
    Product p = sheets::slow();
    p.pot_life_means = PotLifeMeans::usable;
    p.sand.push_back({c(15), sheets::hours(50), {}});
    return p;
  }();
  const Cup cup = tray();
  struct Case {
    Product product;
    Situation situation;
  };
  for (const Case& at :
       {Case{sheets::medium(), {grams(300), c(25), c(25), nullptr, units::minutes(4)}},
        Case{sheets::medium(), {grams(300), c(25), c(22), nullptr}},
        Case{sheets::tropical(), {grams(60), c(12), c(12), &cup}},
        Case{sheet_usable, {grams(200), c(20), c(24), nullptr, units::minutes(4)}}}) {
    const auto base = WorkingTimes{Defaults{}}.of(at.product, at.situation);
    Defaults moved;
    const auto check = [&](auto& value, const char*) {
      const double original = value.value;
      bool moves = false;
      for (const double sign : {-1.0, 1.0}) {
        if (moves) break;
        value.value = original + sign * 0.01 * (value.high - value.low);
        const auto other = WorkingTimes{moved}.of(at.product, at.situation);
        moves = moves || other->use_within != base->use_within || other->gel != base->gel ||
                other->peak != base->peak || other->runs_away != base->runs_away ||
                other->spread_within != base->spread_within || other->notices != base->notices;
      }
      value.value = original;
      const bool listed =
          std::find(base->assumed.begin(), base->assumed.end(), value.name) != base->assumed.end();
      EXPECT_EQ(listed, moves) << at.product.id << " " << value.name;
    };
    visit(moved.cure, check);
    check(moved.energy_kj_mol, "");
    check(moved.tack_free_of_gel, "");
  }
}

}  // namespace
}  // namespace wetout::resin
