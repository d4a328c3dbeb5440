#include "wetout/work/potlife.hpp"

#include <cmath>

#include "potlife_answer.hpp"
#include "support.hpp"
#include "wetout/resin/answer_cache.hpp"

namespace wetout::work {
namespace {

using resin::sheets::c;
using testing::has;
using testing::problem_of;
using units::grams;
using units::minutes;

resin::Cup cup(std::string id, double millilitres, double millimetres) {
  return {std::move(id), units::millilitres(millilitres), units::millimetres(millimetres)};
}

laminate::Shop shop() {
  laminate::Shop shop;
  shop.air = c(21);
  shop.cup = "quart";
  shop.cups = {cup("quart", 900, 105), cup("tray", 3000, 300), cup("pail", 2200, 170)};
  return shop;
}
laminate::Shop shop_without_cups() {
  laminate::Shop bare;
  bare.air = c(25);
  return bare;
}

PotLifeRequest ask(double mass_g = 0.0) {
  PotLifeRequest request;
  if (mass_g > 0.0) request.mass = grams(mass_g);
  return request;
}

base::Result<report::PotLifeDocument> answer(const resin::Product& product,
                                             const PotLifeRequest& request,
                                             const laminate::Shop& in = shop()) {
  return potlife_answer(in, product, request, {}, nullptr);
}

double minutes_of(const std::optional<units::Duration>& time) { return units::in_minutes(*time); }

TEST(PotLife, IsTheSheetsAtItsMassAndTemperature) {  // closure
  for (const resin::Product& product :
       {resin::sheets::medium(), resin::sheets::slow(), resin::sheets::quick()}) {
    const auto told = answer(product, ask(), shop_without_cups());
    ASSERT_TRUE(told);
    const double printed = units::in_minutes(product.pot_life.front().time.low);
    EXPECT_NEAR(minutes_of(told->answer.gel), printed, 0.01 * printed) << product.id;
    EXPECT_LT(*told->answer.use_within, *told->answer.gel);
    ASSERT_EQ(told->sheet.size(), 1U);
    EXPECT_TRUE(told->sheet.front().closure);
  }
}

TEST(PotLife, TakesTheSheetsMassAndSaysSo) {
  const auto told = answer(resin::sheets::medium(), ask());
  ASSERT_TRUE(told);
  EXPECT_EQ(told->answer.mass, units::Milligrams(150'000));
  EXPECT_EQ(told->mass_from, report::MassFrom::sheet);
  EXPECT_TRUE(has(told->notices, "potlife.mass"));
  EXPECT_EQ(told->answer.air, c(21)) << "the shop's";
  EXPECT_EQ(told->answer.resin_temp, c(21));

  resin::Product without = resin::sheets::medium();
  without.pot_life.clear();
  const auto usual = answer(without, ask());
  ASSERT_TRUE(usual);
  EXPECT_EQ(usual->answer.mass, units::Milligrams(200'000));
  EXPECT_EQ(usual->mass_from, report::MassFrom::usual);
  ASSERT_EQ(usual->missing.size(), 1U);
  EXPECT_EQ(usual->missing.front().line, "pot_life");

  const auto given = answer(resin::sheets::medium(), ask(300));
  EXPECT_EQ(given->mass_from, report::MassFrom::given);
  EXPECT_FALSE(has(given->notices, "potlife.mass"));
}

TEST(PotLife, TakesTheUsualCupOrTheSmallestThatHoldsTheBatch) {
  const resin::Product medium = resin::sheets::medium();
  EXPECT_EQ(answer(medium, ask(300))->answer.cup, "quart");
  const auto more = answer(medium, ask(1500));
  EXPECT_EQ(more->answer.cup, "pail");
  EXPECT_TRUE(has(more->notices, "potlife.other_cup"));
  const auto too_much = answer(medium, ask(9000));
  EXPECT_EQ(too_much->answer.cup, std::nullopt);
  EXPECT_TRUE(has(too_much->notices, "potlife.no_cup"));
  EXPECT_EQ(answer(medium, ask(300), shop_without_cups())->answer.cup, std::nullopt);
}

TEST(PotLife, TakesACupByTheBeginningOfItsName) {
  PotLifeRequest request = ask(300);
  request.choices.cup = "Tr";
  EXPECT_EQ(answer(resin::sheets::medium(), request)->answer.cup, "tray");
  request.choices.cup = "bowl";
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(), request)), "reference.cup --cup");
}

TEST(PotLife, RefusesABatchThatDoesNotFitTheNamedCup) {
  PotLifeRequest request = ask(1500);
  request.choices.cup = "quart";
  const auto refused = answer(resin::sheets::medium(), request);
  EXPECT_EQ(problem_of(refused), "cup.too_small --mass");
  EXPECT_EQ(refused.error().front().found, "1500 g");
  EXPECT_EQ(refused.error().front().expected, "at most 990 g");
  EXPECT_EQ(refused.error().front().hint, "it fits: tray, pail");
}

TEST(PotLife, RefusesWhatIsBeyondSense) {
  PotLifeRequest request = ask(200);
  request.choices.air = c(41);
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(), request)), "cup.beyond_sense --air");
  request.choices.air = c(-1);
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(), request)), "cup.beyond_sense --air");
  request.choices.air = c(20);
  request.choices.resin_temp = c(55);
  EXPECT_EQ(problem_of(answer(resin::sheets::medium(), request)), "cup.beyond_sense --resin-temp");
}

TEST(PotLife, SaysWhenTheSheetAllowsNoSuchWarmth) {
  resin::Product product = resin::sheets::medium();
  product.highest_air = c(28);
  PotLifeRequest request = ask(200);
  request.choices.air = c(28);
  EXPECT_FALSE(has(answer(product, request)->notices, "cure.above_highest"));
  request.choices.resin_temp = c(30);
  EXPECT_TRUE(has(answer(product, request)->notices, "cure.above_highest"));
}

TEST(PotLife, TableIsAsEachCupAlone) {
  PotLifeRequest request = ask(150);
  request.table = true;
  const auto told = answer(resin::sheets::medium(), request);
  ASSERT_TRUE(told);
  ASSERT_EQ(told->grid.size(), 25U);
  for (std::size_t i : {0U, 7U, 13U, 24U}) {
    const report::CupAnswer& cell = told->grid[i];
    PotLifeRequest alone = ask(cell.mass->in_grams());
    alone.choices.air = cell.air;
    const auto one = answer(resin::sheets::medium(), alone);
    EXPECT_EQ(cell.use_within, one->answer.use_within);
    EXPECT_EQ(cell.gel, one->answer.gel);
    EXPECT_EQ(cell.runs_away, one->answer.runs_away);
  }
  for (std::size_t i = 1; i < told->grid.size(); ++i) {
    const report::CupAnswer &a = told->grid[i - 1], &b = told->grid[i];
    if (a.mass == b.mass) {
      EXPECT_GT(b.air, a.air);
      EXPECT_LT(*b.use_within, *a.use_within) << "hotter is never slower";
    } else {
      EXPECT_GT(*b.mass, *a.mass);
    }
  }
}

TEST(PotLife, TableKeepsToTheCupAndTheResinsTemperature) {
  laminate::Shop small = shop();
  small.cups = {cup("quart", 250, 80)};
  PotLifeRequest request = ask(150);
  request.table = true;
  request.choices.resin_temp = c(18);
  const auto told = answer(resin::sheets::medium(), request, small);
  ASSERT_TRUE(told);
  EXPECT_EQ(told->grid.size(), 15U) << "50, 100 and 200 g";
  for (const report::CupAnswer& cell : told->grid) EXPECT_EQ(cell.resin_temp, c(18));
}

TEST(PotLife, LargestBatchLastsSoLongAndALittleMoreDoesNot) {
  for (const double wanted : {15.0, 18.0, 20.0, 24.0}) {
    PotLifeRequest request = ask(100);
    request.choices.air = c(25);
    request.workable = minutes(wanted);
    const auto told = answer(resin::sheets::medium(), request);
    ASSERT_TRUE(told && told->workable);
    if (!told->workable->mass) continue;
    const double g = told->workable->mass->in_grams();
    PotLifeRequest of_it = ask(g);
    of_it.choices.air = c(25);
    EXPECT_GE(minutes_of(answer(resin::sheets::medium(), of_it)->answer.use_within), wanted);
    if (told->workable->cup_full) {
      EXPECT_GT(g, 700.0);
      continue;
    }
    of_it.mass = grams(g * 1.04 + 1.0);
    EXPECT_LT(minutes_of(answer(resin::sheets::medium(), of_it)->answer.use_within), wanted)
        << wanted;
  }
}

TEST(PotLife, LargestBatchIsTheFullCupOrNone) {
  PotLifeRequest request = ask(100);
  request.workable = minutes(5);
  const auto full = answer(resin::sheets::medium(), request);
  EXPECT_TRUE(full->workable->cup_full);
  EXPECT_EQ(full->workable->mass, units::Milligrams(790'000)) << "80 % of 900 ml";
  EXPECT_TRUE(testing::lists(full->assumptions, "cup.fill"));
  request.workable = units::hours(9);
  const auto none = answer(resin::sheets::medium(), request);
  EXPECT_FALSE(none->workable->mass);
  EXPECT_FALSE(testing::lists(none->assumptions, "cup.fill"));
}

TEST(PotLife, PouredOutInTimeTheFilmGoesOn) {
  PotLifeRequest request = ask(150);
  request.choices.air = c(25);
  request.pour_after = minutes(10);
  const auto told = answer(resin::sheets::medium(), request);
  ASSERT_TRUE(told && told->poured);
  EXPECT_EQ(told->poured->after, minutes(10));
  EXPECT_GT(told->poured->temperature, c(25));
  EXPECT_GT(told->poured->spread_within, minutes(10));
  EXPECT_LT(told->poured->spread_within, *told->film_open) << "a cup takes from the film's time";
  EXPECT_LT(told->poured->gel, *told->film_gel);
  request.pour_after = minutes(60);
  const auto late = answer(resin::sheets::medium(), request);
  EXPECT_FALSE(late->poured);
  EXPECT_TRUE(has(late->notices, "cup.poured_too_late"));
}

TEST(PotLife, IsTheSameWithACache) {
  PotLifeRequest request = ask();
  request.table = true;
  request.workable = minutes(20);
  resin::MemoryCache cache;
  const auto plain = answer(resin::sheets::medium(), request);
  for (int round = 0; round < 2; ++round) {
    const auto cached = potlife_answer(shop(), resin::sheets::medium(), request, {}, &cache);
    EXPECT_EQ(report::to_json(*cached), report::to_json(*plain));
  }
  EXPECT_GT(cache.size(), 25U);
}

std::string without_assumptions(base::Result<report::PotLifeDocument> told) {
  if (!told) return told.error().front().code;
  told->assumptions.clear();
  return report::to_json(*told);
}

void expect_listed(const resin::Product& product, const PotLifeRequest& request) {
  const auto told = answer(product, request);
  ASSERT_TRUE(told);
  resin::MemoryCache cache;
  testing::expect_listed_if_it_moves(told->assumptions, [&](const resin::Defaults& defaults) {
    return without_assumptions(potlife_answer(shop(), product, request, defaults, &cache));
  });
}

TEST(PotLife, ListsADefaultIfAndOnlyIfItMovesTheAnswer) {
  expect_listed(resin::sheets::medium(), ask());
  PotLifeRequest cold = ask(60);
  cold.choices.air = c(12);
  cold.choices.cup = "tray";
  expect_listed(resin::sheets::slow(), cold);
  resin::Product usable = resin::sheets::quick();
  usable.pot_life_means = resin::PotLifeMeans::usable;
  expect_listed(usable, ask(150));
}

// A polyester of the tests.

resin::Product polyester() {
  resin::Product p;
  p.id = "poly";
  p.chemistry = resin::Chemistry::polyester;
  p.dose_low = 0.01;
  p.dose_high = 0.02;
  p.catalyst = {{c(20), 0.01, resin::sheets::minutes(30)},
                {c(20), 0.02, resin::sheets::minutes(15)},
                {c(30), 0.01, resin::sheets::minutes(18)},
                {c(30), 0.02, resin::sheets::minutes(9)}};
  return p;
}

TEST(PotLifeOfAPolyester, IsTheSheetsFilmByDoseAndNoCup) {
  PotLifeRequest request = ask();
  request.choices.air = c(20);
  const auto told = answer(polyester(), request);
  ASSERT_TRUE(told);
  EXPECT_EQ(told->answer.mass, std::nullopt);
  EXPECT_EQ(told->answer.use_within, std::nullopt);
  EXPECT_EQ(told->answer.runs_away, std::nullopt);
  ASSERT_EQ(told->doses.size(), 2U);
  EXPECT_NEAR(units::in_minutes(told->doses[0].gel), 30.0, 1e-9);
  EXPECT_NEAR(units::in_minutes(told->doses[1].gel), 15.0, 1e-9);
  EXPECT_NEAR(units::in_minutes(told->doses[1].use_within), 7.5, 1e-9);
  EXPECT_TRUE(has(told->notices, "polyester.no_cup"));
  EXPECT_FALSE(has(told->notices, "polyester.not_answered"));
  request.mass = grams(100);
  request.table = true;
  const auto table = answer(polyester(), request);
  EXPECT_EQ(table->doses.size(), 10U);
  EXPECT_TRUE(has(table->notices, "polyester.not_answered"));
}

TEST(PotLifeOfAPolyester, ListsWhatItsTableLacks) {
  expect_listed(polyester(), ask());
  resin::Product one = polyester();
  one.catalyst.resize(1);
  expect_listed(one, ask());
  EXPECT_TRUE(testing::lists(answer(one, ask())->assumptions, "polyester.dose_power"));
  EXPECT_FALSE(testing::lists(answer(polyester(), ask())->assumptions, "polyester.dose_power"));
}

TEST(PotLifeOfAPolyester, RefusesLightCuredOnes) {
  resin::Product light = polyester();
  light.light_cured = true;
  EXPECT_EQ(problem_of(answer(light, ask())), "polyester.light_cured light_cured");
}

}  // namespace
}  // namespace wetout::work
