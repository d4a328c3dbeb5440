#include "wetout/report/plan_text.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <regex>

#include "plan_generator.hpp"
#include "sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using units::System;

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

RC_GTEST_PROP(PlanText, FitsTheTerminalWhateverTheNames, ()) {
  const PlanDocument document = any::plan();
  for (const System system : {System::us, System::metric}) {
    const std::string text = plan_text(document, system);
    RC_ASSERT(unfit_line(text).empty());
    RC_ASSERT(text.ends_with('\n'));
  }
}

RC_GTEST_PROP(PlanText, IsTheSameOutOfTheLog, ()) {
  const PlanDocument document = any::plan();
  const auto kept = read_plan(to_json(document));
  RC_ASSERT(kept.has_value());
  for (const System system : {System::us, System::metric}) {
    RC_ASSERT(plan_text(*kept, system) == plan_text(document, system));
  }
}

TEST(PlanText, IsPlainAsciiButForSquaresAndDegrees) {
  for (const System system : {System::us, System::metric}) {
    std::string text = plan_text(sample::plan(), system);
    text = std::regex_replace(text, std::regex("²|³|°"), "");
    for (const char c : text) ASSERT_LT(static_cast<unsigned char>(c), 0x80U);
  }
}

TEST(PlanText, ShowsPoursAsTheScaleReadsThem) {
  const std::string text = plan_text(sample::plan(), System::metric);
  EXPECT_TRUE(std::regex_search(text, std::regex("resin-a +132 g +132 g")));
  EXPECT_TRUE(std::regex_search(text, std::regex("white +4 g +136 g")));
  EXPECT_TRUE(std::regex_search(text, std::regex("slow-b +57 g +193 g")));
  // A finer scale: one number of decimals in a batch.
  EXPECT_TRUE(std::regex_search(text, std::regex("resin-a +4\\.0 g +4\\.0 g")));
  EXPECT_TRUE(std::regex_search(text, std::regex("white +0\\.5 g +4\\.5 g")));
}

TEST(PlanText, MergesBatchesThatAreMixedAlike) {
  const std::string text = plan_text(sample::plan(), System::metric);
  EXPECT_EQ(count(text, "Batches 1-2 of 3, each: 193 g in cup quart, use within 17 min"), 1U);
  EXPECT_EQ(count(text, "Batch 3 of 3: 6.5 g"), 1U);
  EXPECT_EQ(count(text, "One batch: "), 5U);
}

TEST(PlanText, RoundsUseWithinDown) {
  PlanDocument document = sample::plan();
  document.plan.coats[0].batches[0].use_within = units::minutes(17.96);
  EXPECT_EQ(count(plan_text(document, System::metric), "use within 17 min"), 3U);
  document.plan.coats[0].batches[0].use_within = units::seconds(45);
  EXPECT_EQ(count(plan_text(document, System::metric), "use within 45 s"), 1U);
}

// The shares of a mix as printed add up to it as printed.
RC_GTEST_PROP(PlanText, PrintsSharesThatAddUp, ()) {
  PlanDocument document = sample::plan();
  laminate::CoatNeed& coat = document.plan.coats[0];
  const auto mg = [] { return units::Milligrams(*rc::gen::inRange<std::int64_t>(0, 400'000)); };
  coat.kept = mg();
  coat.losses = mg();
  coat.margin = mg();
  coat.mix = units::Milligrams((coat.kept + coat.losses + coat.margin).count() / 500 * 500 + 500);
  coat.rounding = coat.mix - coat.kept - coat.losses - coat.margin;
  const std::string text = plan_text(document, System::metric);
  const std::string part = text.substr(text.find("1. bottom lam", text.find("For every coat")));
  std::smatch found;
  const std::regex shares(
      "on board +([0-9.]+) g[^\n]*\n +lost +([0-9.]+) g[^\n]*\n +margin +([0-9.]+) g\n"
      " +rounding +([0-9.]+) g\n +mix +([0-9.]+) g");
  RC_ASSERT(std::regex_search(part, found, shares));
  double sum = 0.0;
  for (std::size_t i = 1; i <= 4; ++i) sum += std::stod(found[i].str());
  RC_ASSERT(std::abs(sum - std::stod(found[5].str())) < 1e-9);
}

TEST(PlanText, SaysACautionOnceAndPointsBack) {
  const std::string text = plan_text(sample::plan(), System::metric);
  EXPECT_EQ(count(text, "Sand only when cured"), 1U);
  EXPECT_EQ(count(text, "Nitrile gloves"), 1U);
  EXPECT_EQ(count(text, "! also the cautions of coat 4 (bottom hotcoat)"), 2U);
  EXPECT_LT(text.find("Nitrile gloves"), text.find("on board"));
}

TEST(PlanText, SaysANoticeOnceAndThenItsNumbers) {
  PlanDocument document = sample::plan();
  base::Notice again = document.plan.notices[1];
  again.subject = "bottom-hotcoat";
  again.value = 20;
  document.plan.notices.push_back(again);
  const std::string text = plan_text(document, System::metric);
  EXPECT_EQ(count(text, "* more than one batch"), 1U);
  EXPECT_EQ(count(text, "   * as noted at coat 2 (deck lam): 20 min, limit 17 min\n"), 1U);
}

TEST(PlanText, TellsAValueFromItsLimit) {
  PlanDocument document = sample::plan();
  document.plan.notices[1].text = "two batches";
  document.plan.notices[1].value = 17.4;
  document.plan.notices[1].limit = 17.1;
  EXPECT_EQ(count(plan_text(document, System::us), "* two batches - 17.4 min, limit 17.1 min\n"),
            1U);
}

TEST(PlanText, LosesNoCautionAndNoNotice) {
  PlanDocument document = sample::plan();
  document.plan.cautions.push_back({"a-coat-of-another-plan", "Mind the step."});
  document.plan.notices.push_back({"x", "something odd", "nobody", {}, {}, ""});
  const std::string text = plan_text(document, System::metric);
  EXPECT_EQ(count(text, "! Mind the step.\n"), 1U);
  EXPECT_EQ(count(text, "* nobody: something odd\n"), 1U);
}

TEST(PlanText, PutsNoticesWhereTheyBelong) {
  const std::string text = plan_text(sample::plan(), System::us);
  const std::size_t coat_2 = text.find("2. deck lam", text.find("For every coat"));
  const std::size_t coat_3 = text.find("3. fin boxes", coat_2);
  const std::size_t ply = text.find("* e4-2: the roll does not reach");
  EXPECT_LT(coat_2, ply);
  EXPECT_LT(ply, coat_3);
  EXPECT_LT(text.find("Worth knowing"), text.find("* slow: parts by volume"));
}

TEST(PlanText, PrintsInTheReadersUnits) {
  const std::string us = plan_text(sample::plan(), System::us);
  const std::string metric = plan_text(sample::plan(), System::metric);
  EXPECT_EQ(count(us, "6 ft 4 in long"), 1U);
  EXPECT_EQ(count(metric, "193.0 cm long"), 1U);
  EXPECT_EQ(count(us, "planform 10.0 ft²"), 1U);
  EXPECT_EQ(count(metric, "planform 0.93 m²"), 1U);
  EXPECT_EQ(count(us, " - 30 3/4 in, limit 30 in\n"), 1U);
  EXPECT_EQ(count(metric, " - 78.1 cm, limit 76.2 cm\n"), 1U);
  EXPECT_EQ(count(us, "0.17 mm"), 4U);
  EXPECT_EQ(count(metric, "0.17 mm"), 4U);
  EXPECT_TRUE(std::regex_search(us, std::regex("film.hotcoat +0.18 mm +assumed")));
  EXPECT_TRUE(std::regex_search(us, std::regex("laminate.trim_allowance +1 1/2 in +assumed")));
  EXPECT_TRUE(std::regex_search(metric, std::regex("uptake.eps +60 g/m² +assumed")));
  EXPECT_EQ(count(us, "Air    72 °F"), 1U);
  EXPECT_EQ(count(metric, "Air    22 °C"), 1U);
}

TEST(PlanText, SaysWhichAssumptionsServeEveryCoat) {
  const std::string text = plan_text(sample::plan(), System::metric);
  EXPECT_TRUE(std::regex_search(text, std::regex("mix.margin +8 % +assumed +every coat\n")));
  EXPECT_TRUE(std::regex_search(text, std::regex("rail.medium +2.5 +assumed +board\n")));
}

TEST(PlanText, ListsWhatTheBoardWeighsByParts) {
  const std::string text = plan_text(sample::plan(), System::metric);
  // 1126.8 + 410.038 + 1217.566 + 60 - 186.5 = 2627.904 g, by hand from the sample.
  EXPECT_TRUE(std::regex_search(text, std::regex("boxes and plugs +60 g\n")));
  EXPECT_TRUE(std::regex_search(text, std::regex("board +2628 g\n")));
}

TEST(PlanText, SaysWhatIsNotKnown) {
  const std::string text = plan_text(sample::bare_plan(), System::metric);
  EXPECT_EQ(count(text, "not saved"), 1U);
  EXPECT_EQ(count(text, "core weight not given"), 1U);
  EXPECT_EQ(count(text, "finished weight: not known"), 1U);
  EXPECT_EQ(count(text, "in the cup"), 0U);
  EXPECT_EQ(count(text, "no price"), 5U);
}

TEST(PlanText, CarriesNoEscapesOfATerminal) {
  PlanDocument document = sample::plan();
  document.plan.board.name = "\x1b[2Jboard\r\n\a";
  document.plan.coats[0].name = "lam\x9b\x31m";
  const std::string text = plan_text(document, System::us);
  EXPECT_EQ(unfit_line(text), "");
  EXPECT_EQ(text.find('\r'), std::string::npos);
}

}  // namespace
}  // namespace wetout::report
