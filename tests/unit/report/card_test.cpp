#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <regex>

#include "plan_generator.hpp"
#include "sample.hpp"
#include "text_checks.hpp"
#include "wetout/report/mix_document.hpp"
#include "wetout/report/plan_text.hpp"

namespace wetout::report {
namespace {

using units::System;

std::string card(const PlanDocument& document, std::string_view coat, CardOptions options = {}) {
  const auto text = card_text(document, coat, options, System::metric);
  return text ? *text : problems_text(text.error());
}

MixDocument any_mix() {
  MixDocument mix;
  mix.board = any::maybe(any::text);
  mix.revision = any::maybe([] { return *rc::gen::inRange(1, 1000); });
  mix.coat = any::maybe(any::text);
  mix.coat_name = any::maybe(any::text);
  mix.kind = any::maybe([] { return laminate::CoatKind::laminate; });
  mix.face = any::maybe(any::face);
  mix.area = any::maybe(any::area);
  mix.next_coat = any::maybe(any::text);
  mix.resin = any::text();
  mix.ratio = {resin::By::mass, any::number(0.1, 100), any::number(0.1, 100), 0.03};
  mix.batches = any::some(9, any::batch);
  // Also more pours than there are lines.
  if (!mix.batches.empty()) {
    const int pours = *rc::gen::inRange(0, 60);
    for (int i = 0; i < pours; ++i) mix.batches[0].pours.push_back(any::pour());
  }
  for (std::size_t i = 0; i < mix.batches.size(); ++i) {
    if (i > 0 && *rc::gen::arbitrary<bool>()) mix.batches[i] = mix.batches[i - 1];
    mix.batches[i].n = static_cast<int>(i) + 1;
  }
  mix.batch_count = static_cast<int>(mix.batches.size());
  mix.cautions = any::some(8, any::text);
  mix.notices = any::some(3, any::notice);
  return mix;
}

RC_GTEST_PROP(Card, FitsOneScreenWhateverIsOnIt, ()) {
  const MixDocument mix = any_mix();
  const auto now = any::maybe([] { return *rc::gen::inRange(0, 24 * 60); });
  for (const System system : {System::us, System::metric}) {
    const std::string text = to_text(mix, system, now);
    RC_ASSERT(lines_of(text).size() <= 24U);
    RC_ASSERT(unfit_line(text).empty());
  }
}

TEST(Card, ShowsPoursWithRunningTotals) {
  const std::string text = card(sample::plan(), "deck-lam");
  EXPECT_TRUE(std::regex_search(text, std::regex("pour +add +until the scale reads")));
  EXPECT_TRUE(std::regex_search(text, std::regex("resin-a +132 g +132 g\n")));
  EXPECT_TRUE(std::regex_search(text, std::regex("white +4 g +136 g\n")));
  EXPECT_TRUE(std::regex_search(text, std::regex("slow-b +57 g +193 g\n")));
}

TEST(Card, NamesCoatBoardRatioAndWhatIsNext) {
  const std::string text = card(sample::plan(), "deck-lam");
  for (const char* what :
       {"DECK LAM", "Sandpiper 6-4, revision 3", "slow 2 : 1 by volume, part B within 3 %",
        "laminate on the deck, 1.26 m²", "cup quart", "air 22 °C, resin 22 °C", "next: fin boxes",
        "! Wet down the lap's edge."}) {
    EXPECT_NE(text.find(what), std::string::npos) << what;
  }
  EXPECT_NE(card(sample::plan(), "bottom-gloss").find("the last coat"), std::string::npos);
}

TEST(Card, MergesEqualBatchesAndShowsTheDifferingLast) {
  const std::string text = card(sample::plan(), "deck-lam");
  EXPECT_NE(text.find("BATCHES 1-2 OF 3, EACH: 193 g"), std::string::npos);
  EXPECT_NE(text.find("BATCH 3 OF 3: 6.5 g"), std::string::npos);
}

TEST(Card, ShowsOneBatchWhenAsked) {
  const std::string text = card(sample::plan(), "deck-lam", {.batch = 3, .now_clock = {}});
  EXPECT_NE(text.find("BATCH 3 OF 3: 6.5 g"), std::string::npos);
  EXPECT_EQ(text.find("193 g"), std::string::npos);
}

TEST(Card, SaysBeforeWhenIfMixedNow) {
  const auto at = [](int now) { return card(sample::plan(), "deck-lam", {{}, now}); };
  // 17.4 min: whole minutes, rounded down.
  EXPECT_NE(at(14 * 60 + 15).find("use within 17 min, before 14:32 if mixed now"),
            std::string::npos);
  EXPECT_NE(at(23 * 60 + 50).find("before 00:07 if mixed now"), std::string::npos);
  EXPECT_EQ(card(sample::plan(), "deck-lam").find("if mixed now"), std::string::npos);
  // One cup at a time: the clock of the last batch has not begun.
  EXPECT_NE(at(14 * 60 + 15).find("mix it when the cup before is empty"), std::string::npos);
}

TEST(Card, ALesserCautionNeverTakesThePlaceOfAGreater) {
  PlanDocument document = sample::plan();
  document.plan.notices.clear();
  document.plan.cautions = {{"all", std::string(1000, 'x') + " first"}, {"all", "short second"}};
  const std::string text = card(document, "bottom-lam");
  EXPECT_EQ(text.find("short second"), std::string::npos);
  EXPECT_NE(text.find("! cautions: read them in the plan"), std::string::npos);
}

TEST(Card, PointsOnWhenBatchesDoNotFit) {
  PlanDocument document = sample::plan();
  laminate::CoatNeed& coat = document.plan.coats[1];
  const laminate::Batch first = coat.batches[0];
  coat.batches.clear();
  for (int n = 1; n <= 6; ++n) {
    coat.batches.push_back(first);
    coat.batches.back().n = n;
    coat.batches.back().use_within = units::minutes(20 - n);
  }
  const std::string text = card(document, "deck-lam");
  EXPECT_NE(text.find("BATCH 2 OF 6"), std::string::npos);
  EXPECT_TRUE(std::regex_search(text, std::regex("More batches: --batch 3 to --batch 6\n")));
}

TEST(Card, SetsPoursApartWhenThereIsRoom) {
  EXPECT_TRUE(std::regex_search(card(sample::plan(), "bottom-lam"),
                                std::regex("\n\n  resin-a +219 g +219 g\n\n  slow-b ")));
  EXPECT_TRUE(std::regex_search(card(sample::plan(), "deck-lam"),
                                std::regex("\n  resin-a +132 g +132 g\n  white ")));
}

TEST(Card, CountsPoursThatDoNotFit) {
  PlanDocument document = sample::plan();
  auto& batch = document.plan.coats[0].batches[0];
  const laminate::Pour pour = batch.pours[0];
  for (int i = 0; i < 200; ++i) batch.pours.push_back(pour);
  const std::string text = card(document, "bottom-lam");
  EXPECT_LE(lines_of(text).size(), 24U);
  std::smatch found;
  ASSERT_TRUE(std::regex_search(text, found, std::regex("and (\\d+) more: see the\\s+plan")));
  const std::regex shown("(resin-a|slow-b) \\d+ g");
  const auto n = std::distance(std::sregex_iterator(text.begin(), text.end(), shown), {});
  EXPECT_EQ(n + std::stoi(found[1].str()), 202);
}

TEST(Card, SaysThatCautionsAreLeftOut) {
  PlanDocument document = sample::plan();
  for (int i = 0; i < 20; ++i) {
    document.plan.cautions.push_back({"all", "caution number " + std::to_string(i)});
  }
  const std::string text = card(document, "bottom-lam");
  EXPECT_TRUE(text.ends_with("! more cautions stand in the plan\n"));
  EXPECT_LE(lines_of(text).size(), 24U);
}

TEST(Card, SaysWhenNothingIsMixed) {
  PlanDocument document = sample::plan();
  document.plan.coats[0].batches.clear();
  EXPECT_NE(card(document, "bottom-lam").find("Nothing is mixed"), std::string::npos);
}

TEST(MixDocumentOf, FindsCoatsByABeginning) {
  const PlanDocument document = sample::plan();
  EXPECT_EQ(mix_document(document, "Deck Lam")->coat, "deck-lam");
  EXPECT_EQ(mix_document(document, "fin")->coat, "fin-boxes");
  EXPECT_EQ(mix_document(document, "fin")->next_coat, "bottom hotcoat");
  const auto two = mix_document(document, "deck");
  ASSERT_FALSE(two.has_value());
  EXPECT_EQ(two.error()[0].code, "coat.ambiguous");
  EXPECT_EQ(two.error()[0].expected, "one of: deck-lam, deck-hotcoat");
  const auto none = mix_document(document, "deck-lma");
  ASSERT_FALSE(none.has_value());
  EXPECT_EQ(none.error()[0].code, "coat.unknown");
  EXPECT_EQ(none.error()[0].hint, "did you mean deck-lam?");
}

TEST(MixDocumentOf, RefusesABatchThatIsNot) {
  const auto mix = mix_document(sample::plan(), "deck-lam", 4);
  ASSERT_FALSE(mix.has_value());
  EXPECT_EQ(mix.error()[0].code, "batch.unknown");
  EXPECT_EQ(mix.error()[0].expected, "1 to 3");
}

TEST(MixDocumentOf, TakesTheCoatsCautionsFirst) {
  const auto mix = mix_document(sample::plan(), "deck-lam");
  ASSERT_TRUE(mix.has_value());
  ASSERT_EQ(mix->cautions.size(), 4U);
  EXPECT_EQ(mix->cautions[0], "Wet down the lap's edge. Resin rags: spread out, not in a heap.");
}

}  // namespace
}  // namespace wetout::report
