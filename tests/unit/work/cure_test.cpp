#include "wetout/work/cure.hpp"

#include <cmath>

#include "cure_answer.hpp"
#include "support.hpp"
#include "wetout/time/read.hpp"

namespace wetout::work {
namespace {

using report::CureDocument;
using report::CureMilestone;
using resin::Milestone;
using resin::sheets::c;
using testing::has;
using testing::problem_of;

const time::Instant start = *time::read_instant("2026-06-13T18:00:00Z", time::Zone());

struct Ask {
  double air_c = 25.0;
  bool start_named = false;
  std::optional<WarmBoxChoice> warm_box = {};
  resin::Defaults defaults = {};
};

base::Result<CureDocument> answer(const resin::Product& product, const Ask& ask,
                                  resin::AnswerCache* cache = nullptr) {
  const auto air = time::History::constant(c(ask.air_c).in_kelvin());
  return cure_answer({.product = product,
                      .air_kelvin = air,
                      .start = start,
                      .start_named = ask.start_named,
                      .known_until = std::nullopt,
                      .warm_box = ask.warm_box,
                      .zone = time::Zone()},
                     ask.defaults, cache);
}

const CureMilestone& find(const CureDocument& document, Milestone name) {
  const auto found = std::find_if(document.milestones.begin(), document.milestones.end(),
                                  [&](const CureMilestone& m) { return m.name == name; });
  if (found == document.milestones.end()) throw std::logic_error("no such milestone");
  return *found;
}
double hours(const CureDocument& document, Milestone name) {
  return units::in_hours(*find(document, name).after);
}

TEST(Cure, IsTheSheetsAtItsTemperature) {  // closure
  const auto told = answer(resin::sheets::medium(), {});
  ASSERT_TRUE(told);
  EXPECT_NEAR(hours(*told, Milestone::gel), 160.0 / 60.0, 0.01);
  EXPECT_NEAR(hours(*told, Milestone::tack_free), 5.0, 0.02);
  EXPECT_NEAR(hours(*told, Milestone::recoat_from), 3.5, 0.02);
  EXPECT_NEAR(hours(*told, Milestone::recoat_until), 12.0, 0.05);
  EXPECT_NEAR(hours(*told, Milestone::sandable), 16.0, 0.1);
  EXPECT_NEAR(hours(*told, Milestone::full_cure), 168.0, 1.0);
  EXPECT_NEAR(*find(*told, Milestone::gel).conversion, 0.577, 0.001);
  for (const report::SheetTimeMet& line : told->calibration.residuals) EXPECT_TRUE(line.closure);
}

TEST(Cure, GivesClockTimesOfANamedStartOnly) {
  const auto without = answer(resin::sheets::medium(), {});
  EXPECT_EQ(without->start, std::nullopt);
  for (const CureMilestone& m : without->milestones) EXPECT_EQ(m.time, std::nullopt);
  const auto with = answer(resin::sheets::medium(), {.start_named = true});
  EXPECT_EQ(with->start, "2026-06-13T18:00:00Z");
  EXPECT_EQ(find(*with, Milestone::gel).time, "2026-06-13T20:40:00Z");
}

TEST(Cure, DoesNotClaimFullCureBelowTheSheetsTemperature) {
  const auto told = answer(resin::sheets::medium(), {.air_c = 11.0});
  ASSERT_TRUE(told);
  const CureMilestone& full = find(*told, Milestone::full_cure);
  EXPECT_FALSE(full.reached);
  EXPECT_TRUE(full.extrapolated);
  EXPECT_EQ(full.after, std::nullopt);
  ASSERT_TRUE(full.would_do);
  EXPECT_EQ(told->milestones.back().name, Milestone::full_cure) << "what is not reached is last";
  EXPECT_TRUE(has(told->notices, "cure.below_lowest"));
  const auto there = answer(resin::sheets::medium(), {.air_c = full.would_do->in_celsius()});
  EXPECT_TRUE(find(*there, Milestone::full_cure).reached) << "what would do it does";
}

TEST(Cure, CurveIsCloseUntilTheBrushIsPutAwayThenWide) {
  const auto told = answer(resin::sheets::medium(), {});
  const auto& curve = told->curve;
  ASSERT_GT(curve.size(), 100U);
  EXPECT_EQ(curve.front().after, units::Duration{});
  EXPECT_NEAR(units::in_hours(curve.back().after), hours(*told, Milestone::full_cure), 1e-6);
  std::size_t before_sandable = 0;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    EXPECT_GT(curve[i].after, curve[i - 1].after);
    EXPECT_GE(curve[i].conversion, curve[i - 1].conversion);
    EXPECT_GE(curve[i].tg, curve[i - 1].tg);
    before_sandable += units::in_hours(curve[i].after) <= 16.0 ? 1U : 0U;
  }
  EXPECT_GT(before_sandable, 60U);
}

TEST(Cure, IsFasterInAWarmBox) {
  const auto cool = answer(resin::sheets::medium(), {.air_c = 18.0});
  const auto warm = answer(resin::sheets::medium(),
                           {.air_c = 18.0, .warm_box = WarmBoxChoice{c(40), units::hours(20)}});
  ASSERT_TRUE(cool && warm);
  EXPECT_EQ(hours(*warm, Milestone::tack_free), hours(*cool, Milestone::tack_free));
  EXPECT_LT(hours(*warm, Milestone::full_cure), 0.5 * hours(*cool, Milestone::full_cure));
  EXPECT_EQ(warm->warm_box->hottest, c(50));
  EXPECT_TRUE(has(warm->notices, "box.tenderest"));
  EXPECT_FALSE(find(*warm, Milestone::full_cure).beyond_air);
  EXPECT_TRUE(testing::lists(warm->assumptions, "box.ramp"));
}

TEST(Cure, KeepsAWarmBoxToItsLimits) {
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(),
                              {.warm_box = WarmBoxChoice{c(51), units::hours(20)}})),
            "box.too_hot --warm-box");
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(),
                              {.warm_box = WarmBoxChoice{c(40), units::hours(2)}})),
            "box.too_early --after");
}

TEST(Cure, SaysWhichLinesTheSheetLacks) {
  resin::Product bare = resin::sheets::medium();
  bare.gel.clear();
  bare.tack_free.clear();
  bare.recoat.clear();
  bare.sand.clear();
  bare.full_cure.clear();
  bare.tg.reset();
  const auto told = answer(bare, {});
  ASSERT_TRUE(told);
  std::string lines;
  for (const report::MissingLine& line : told->calibration.missing) {
    EXPECT_FALSE(line.gives.empty());
    lines += line.line + " ";
  }
  EXPECT_EQ(lines, "gel tack_free recoat sand full_cure tg ");
  bare.pot_life.clear();
  EXPECT_EQ(problem_of(answer(bare, {})), "resin.no_time gel");
}

TEST(Cure, SaysWhenTheSheetAllowsNoSuchWarmth) {
  resin::Product product = resin::sheets::medium();
  product.highest_air = c(28);
  EXPECT_FALSE(has(answer(product, {.air_c = 28.0})->notices, "cure.above_highest"));
  EXPECT_TRUE(has(answer(product, {.air_c = 29.0})->notices, "cure.above_highest"));
}

TEST(Cure, LooksAtTheAirUntilTheLastMilestoneOnly) {
  resin::Product product = resin::sheets::medium();
  product.highest_air = c(28);
  const auto warm_after = [&](std::chrono::hours quiet) {
    const auto air =
        *time::History::of({{start, c(25).in_kelvin()},
                            {start + quiet, c(25).in_kelvin()},
                            {start + quiet + std::chrono::hours(1), c(30).in_kelvin()}});
    return cure_answer({.product = product,
                        .air_kelvin = air,
                        .start = start,
                        .start_named = true,
                        .known_until = std::nullopt,
                        .warm_box = std::nullopt,
                        .zone = time::Zone()},
                       {}, nullptr);
  };
  EXPECT_TRUE(has(warm_after(std::chrono::hours(20))->notices, "cure.above_highest"));
  EXPECT_FALSE(has(warm_after(std::chrono::hours(200))->notices, "cure.above_highest"));
}

std::string without_assumptions(base::Result<CureDocument> told) {
  if (!told) return told.error().front().code;
  told->assumptions.clear();
  return report::to_json(*told);
}

void expect_listed(const resin::Product& product, Ask ask) {
  const auto told = answer(product, ask);
  ASSERT_TRUE(told);
  resin::MemoryCache cache;
  testing::expect_listed_if_it_moves(told->assumptions, [&](const resin::Defaults& defaults) {
    ask.defaults = defaults;
    return without_assumptions(answer(product, ask, &cache));
  });
}

TEST(Cure, ListsADefaultIfAndOnlyIfItMovesTheAnswer) {
  expect_listed(resin::sheets::medium(), {});
  expect_listed(resin::sheets::slow(), {.air_c = 8.0});
  expect_listed(resin::sheets::quick(),
                {.air_c = 18.0, .warm_box = WarmBoxChoice{c(45), units::hours(20)}});
}

resin::Product polyester() {
  resin::Product p;
  p.id = "poly";
  p.chemistry = resin::Chemistry::polyester;
  p.dose_low = 0.01;
  p.dose_high = 0.04;
  p.catalyst = {{c(20), 0.01, resin::sheets::minutes(30)},
                {c(20), 0.04, resin::sheets::minutes(10)}};
  p.sand = {{c(20), resin::sheets::hours(4), {}}};
  return p;
}

TEST(CureOfAPolyester, HasMilestonesWithoutConversion) {
  const auto told = answer(polyester(), {.air_c = 20.0, .start_named = true});
  ASSERT_TRUE(told);
  EXPECT_NEAR(*told->dose, 0.02, 1e-12);
  EXPECT_NEAR(hours(*told, Milestone::gel), std::sqrt(300.0) / 60.0, 1e-6);
  EXPECT_NEAR(hours(*told, Milestone::sandable), 4.0, 1e-6);
  for (const CureMilestone& m : told->milestones) {
    EXPECT_EQ(m.conversion, std::nullopt);
    EXPECT_TRUE(m.time);
  }
  EXPECT_TRUE(told->curve.empty());
  EXPECT_EQ(told->calibration.energy_kj_mol, std::nullopt);
  EXPECT_TRUE(has(told->notices, "polyester.no_conversion"));
}

TEST(CureOfAPolyester, HasNoWarmBox) {
  EXPECT_EQ(problem_of(answer(polyester(), {.warm_box = WarmBoxChoice{c(40), units::hours(20)}})),
            "box.polyester --warm-box");
}

TEST(CureOfAPolyester, ListsWhatItsTableLacks) { expect_listed(polyester(), {.air_c = 24.0}); }

}  // namespace
}  // namespace wetout::work
