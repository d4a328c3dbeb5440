#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "plan_generator.hpp"
#include "resin_sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using units::System;

std::string text(const PotLifeDocument& document, System system = System::metric,
                 std::optional<int> clock = 14 * 60 + 15) {
  std::string out = to_text(document, system, clock);
  EXPECT_EQ(unfit_line(out), "");
  return out;
}
bool says(const std::string& out, std::string_view part) {
  return out.find(part) != std::string::npos;
}

TEST(PotLifeText, SaysTheCupFirst) {
  const std::string out = text(sample::potlife());
  const auto lines = lines_of(out);
  EXPECT_TRUE(says(lines[0], "POT LIFE OF SLOW"));
  EXPECT_TRUE(says(lines[1], "200 g in the cup quart")) << lines[1];
  EXPECT_TRUE(says(lines[1], "air and resin 25 °C")) << lines[1];
  EXPECT_EQ(lines[3], "use within     37 min, before 14:52 if mixed now");
}

TEST(PotLifeText, NamesTheResinsTemperatureWhereItIsAnother) {
  PotLifeDocument document = sample::potlife();
  document.answer.resin_temp = units::Temperature::celsius(20);
  EXPECT_TRUE(says(text(document), "air 25 °C, resin 20 °C"));
  EXPECT_TRUE(says(text(document, System::us), "air 77 °F, resin 68 °F"));
}

TEST(PotLifeText, RoundsUseDownSoThatNobodyIsToldTooLong) {
  PotLifeDocument document = sample::potlife();
  document.answer.use_within = units::minutes(37.97);
  EXPECT_TRUE(says(text(document), "use within     37 min, before 14:52"));
  document.answer.use_within = units::seconds(50);
  EXPECT_TRUE(says(text(document), "use within     50 s"));
}

TEST(PotLifeText, NamesNoClockWithoutOneOrBeyondADay) {
  EXPECT_FALSE(says(text(sample::potlife(), System::metric, std::nullopt), "if mixed now"));
  PotLifeDocument slow = sample::potlife();
  slow.answer.use_within = units::hours(25);
  EXPECT_FALSE(says(text(slow), "if mixed now"));
}

TEST(PotLifeText, PrintsAPeakNoBetterThanItIsKnown) {
  PotLifeDocument document = sample::potlife();
  EXPECT_TRUE(says(text(document), "about 130 °C, give or take 40 °C"));
  EXPECT_TRUE(says(text(document, System::us), "about 260 °F, give or take 72 °F"));
  document.answer.peak = units::Temperature::celsius(29);
  EXPECT_TRUE(says(text(document), "it gets no warmer than 29 °C"));
  document.answer.peak.reset();
  document.answer.runs_away = true;
  EXPECT_TRUE(says(text(document), "it runs away"));
}

TEST(PotLifeText, MarksInTheTableWhatRunsAway) {
  const std::string out = text(sample::potlife());
  EXPECT_TRUE(says(
      out, "  50 g                  40 min      30 min      24 min      20 min      17 min\n"));
  EXPECT_TRUE(says(out, "12 min!")) << out;
  EXPECT_TRUE(says(out, "  ! left standing it runs away"));
  PotLifeDocument without = sample::potlife();
  without.grid.resize(5);
  EXPECT_FALSE(says(text(without), "! left standing it runs away"));
  without.grid.clear();
  EXPECT_FALSE(says(text(without), "by mass and air"));
}

TEST(PotLifeText, DoesNotRepeatWhatTheLinesSay) {
  const std::string out = text(sample::potlife());
  EXPECT_FALSE(says(out, "said already"));
  EXPECT_TRUE(says(out, "* no mass was named"));
}

TEST(PotLifeText, SaysWhatTheModelIsFittedTo) {
  const std::string out = text(sample::potlife());
  EXPECT_TRUE(says(out, "150 g at 25 °C: the sheet prints 42 min, the model says 42 min"));
  EXPECT_TRUE(says(out, "(fitted to it)"));
  EXPECT_TRUE(says(out, "(10 % sooner)")) << "what is not fitted is a check";
}

TEST(PotLifeText, SaysTheLargestBatch) {
  PotLifeDocument document = sample::potlife();
  EXPECT_TRUE(says(text(document), "largest batch  385 g can be worked for 30 min\n"));
  document.workable->cup_full = true;
  EXPECT_TRUE(says(text(document), "385 g can be worked for 30 min; the cup holds no more"));
  document.workable->mass.reset();
  EXPECT_TRUE(says(text(document), "none: even a small one goes off before 30 min"));
}

TEST(PotLifeText, OfAPolyesterIsATableOfDoses) {
  const std::string out = text(sample::potlife_of_polyester());
  EXPECT_TRUE(says(out, "the sheet allows 1 % to 2.5 % of the resin"));
  EXPECT_TRUE(says(out, "  1 %             27 min      20 min\n")) << out;
  EXPECT_TRUE(says(out, "  2.5 %           11 min       8 min\n"));
  EXPECT_TRUE(says(out, "Use it within 50 % of that."));
  EXPECT_FALSE(says(out, "left standing"));
}

CupAnswer any_cup() {
  CupAnswer cup;
  cup.resin = any::text();
  cup.mass = any::maybe(any::mass);
  cup.air = any::air();
  cup.resin_temp = any::air();
  cup.cup = any::maybe(any::text);
  cup.gel = any::maybe(any::minutes);
  cup.use_within = any::maybe(any::minutes);
  cup.peak = any::maybe(any::air);
  cup.runs_away = any::maybe([] { return *rc::gen::arbitrary<bool>(); });
  return cup;
}

RC_GTEST_PROP(PotLifeText, KeepsToThePageWhateverIsOnIt, ()) {
  PotLifeDocument document;
  document.name = any::text();
  document.answer = any_cup();
  document.film_open = any::maybe(any::minutes);
  document.film_gel = any::maybe(any::minutes);
  document.poured = any::maybe([] {
    return PouredOut{any::minutes(), any::number(0, 1), any::air(), any::minutes(), any::minutes()};
  });
  document.workable = any::maybe([] {
    return WorkableBatch{any::minutes(), any::maybe(any::mass), *rc::gen::arbitrary<bool>()};
  });
  document.dose_low = any::maybe([] { return any::number(0.001, 0.1); });
  document.dose_high = any::maybe([] { return any::number(0.001, 0.1); });
  document.doses = any::some(7, [] {
    return DosedFilm{any::number(0.001, 0.1), any::air(), units::minutes(any::number(1, 5000)),
                     any::minutes()};
  });
  document.sheet = any::some(2, [] {
    return SheetPotLife{any::mass(), any::air(), units::minutes(any::number(1, 5000)),
                        any::minutes(), *rc::gen::arbitrary<bool>()};
  });
  document.grid = any::some(8, any_cup);
  document.missing = any::some(2, [] { return MissingLine{any::text(), any::text()}; });
  document.cautions = any::some(2, any::text);
  document.notices = any::some(2, any::notice);
  for (const System system : {System::us, System::metric}) {
    RC_ASSERT(unfit_line(to_text(document, system, *rc::gen::inRange(0, 1440))) == "");
  }
}

TEST(PotLifeText, KeepsToThePageWhateverTheNames) {
  PotLifeDocument document = sample::potlife();
  document.name = std::string(120, 'n') + "\x1b[31m";
  document.answer.resin = std::string(64, 'r');
  document.answer.cup = std::string(64, 'c');
  document.answer.mass = units::Milligrams(99'999'999);
  text(document, System::us);
}

}  // namespace
}  // namespace wetout::report
