#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "plan_generator.hpp"
#include "sample.hpp"
#include "text_checks.hpp"
#include "wetout/report/plan_text.hpp"

namespace wetout::report {
namespace {

using units::System;

TEST(PlanDiff, SaysWhatChanged) {
  EXPECT_EQ(plan_diff_text(sample::plan(), sample::changed_plan(), System::metric),
            "~ air: 22 °C -> 26 °C\n"
            "- coat bottom-gloss: gloss on the bottom, 155 g\n"
            "~ bottom-lam margin: 23 g -> 35 g\n"
            "~ bottom-lam mix: 314 g -> 326 g\n"
            "~ bottom-lam batches: 314 g -> 163 g + 163 g\n"
            "~ bottom-lam use within: 17 min -> 14 min\n"
            "+ coat deck-gloss: gloss on the deck, 152 g\n"
            "- assumed rail.medium: 2.5\n"
            "~ assumed loss.left_in_cup: 8 g -> 9 g\n"
            "- notice deck-lam: more than one batch: spreading takes longer than the resin\n"
            "  allows - 27 min, limit 17 min\n");
}

TEST(PlanDiff, SeesPliesAndOrder) {
  PlanDocument now = sample::plan();
  now.plan.plies[0].lap = units::inches(3);
  now.plan.plies.erase(now.plan.plies.begin() + 1);
  std::swap(now.plan.coats[3], now.plan.coats[4]);
  EXPECT_EQ(plan_diff_text(sample::plan(), now, System::us),
            "~ order of coats: now bottom-lam, deck-lam, fin-boxes, deck-hotcoat,\n"
            "  bottom-hotcoat, bottom-gloss\n"
            "- ply deck-patch of deck-lam\n"
            "~ ply e4 of bottom-lam lap: 2 in -> 3 in\n");
}

RC_GTEST_PROP(PlanDiff, OfAPlanWithItselfIsEmpty, ()) {
  const PlanDocument document = any::plan();
  RC_ASSERT(plan_diff_text(document, document, System::us) == "no differences\n");
}

TEST(PlanDiff, LeavesOutRevisionAndTime) {
  PlanDocument now = sample::plan();
  now.job.revision = 9;
  now.made = "2027-01-01T00:00:00Z";
  EXPECT_EQ(plan_diff_text(sample::plan(), now, System::us), "no differences\n");
}

TEST(PlanDiff, AdmitsDifferencesTooSmallToPrint) {
  PlanDocument now = sample::plan();
  now.plan.coats[0].kept += units::Milligrams(1);
  EXPECT_EQ(plan_diff_text(sample::plan(), now, System::us),
            "no differences as large as what is printed\n");
}

RC_GTEST_PROP(PlanDiff, FitsTheTerminal, ()) {
  const std::string text = plan_diff_text(any::plan(), any::plan(), System::us);
  RC_ASSERT(unfit_line(text).empty());
}

}  // namespace
}  // namespace wetout::report
