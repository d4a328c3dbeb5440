// What films do in a shop against their sheets: learned, used by the next plan, given back.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "learned.hpp"
#include "learned_rates.hpp"
#include "learned_use.hpp"
#include "record_shelf.hpp"
#include "stored_plan.hpp"
#include "support.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/work/learn.hpp"
#include "wetout/work/schedule.hpp"

namespace wetout::work {
namespace {

using namespace testing;

class LearningSpeed : public RecordShelf {
 protected:
  // The bottom is laminated until 12:00 of a day, at an air that is read then.
  void film(const std::string& job, int day, std::optional<double> celsius,
            std::vector<std::string> observed) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    now_ = on_day(day + 2);
    RecordRequest request;
    request.job = job;
    request.step = "bottom-lam";
    request.token = job + std::to_string(day);
    request.at = "2026-06-" + std::to_string(day) + " 12:00";
    request.done = true;
    if (celsius) request.air = units::Temperature::celsius(*celsius);
    for (std::string& one : observed) {
      one.insert(one.find('=') + 1, "2026-06-" + std::to_string(day) + " ");
    }
    request.observed = std::move(observed);
    const auto recorded = record(workshop_, request);
    ASSERT_TRUE(recorded) << recorded.error().front().message;
  }

  const LearnedRate* speed(const Learned& learned) const {
    for (const LearnedRate& rate : learned.rates) {
      if (rate.key == "speed.slow") return &rate;
    }
    return nullptr;
  }
};

// The sheet: 5 h at 25 C. Two routes to one record's effect: the precisions added by hand, of a
// belief of 15 % and an error of 10 % of looking beside 1.5 K of a room that was read.
TEST_F(LearningSpeed, OfOneFilmIsWeighedAgainstTheSheet) {
  film("a", 14, 25.0, {"gel=16:10"});
  const Learned learned = learned_from(log());
  const LearnedRate* rate = speed(learned);
  ASSERT_NE(rate, nullptr);
  EXPECT_EQ(rate->records, 1);
  ASSERT_EQ(learned.records.size(), 1U);
  EXPECT_EQ(learned.records[0].of, RecordOf::speed);
  EXPECT_NEAR(learned.records[0].value, 1.2, 1e-6);
  EXPECT_EQ(learned.boards, 1);
  EXPECT_GT(rate->value, 1.08);
  EXPECT_LT(rate->value, 1.14);
  EXPECT_LT(rate->spread, 0.15);
  EXPECT_GT(rate->spread, 0.08);
}

TEST_F(LearningSpeed, OfManyFilmsIsTheirs) {
  for (int n = 0; n < 8; ++n) film("board-" + std::to_string(n), 14 + n, 25.0, {"gel=16:10"});
  const LearnedRate rate = *speed(learned_from(log()));
  EXPECT_EQ(rate.records, 8);
  EXPECT_NEAR(rate.value, 1.2, 0.03);
  EXPECT_LT(rate.spread, 0.06);
}

TEST_F(LearningSpeed, CountsNothingInUnknownAir) {
  film("a", 14, {}, {"gel=16:10"});
  const Learned learned = learned_from(log());
  EXPECT_EQ(speed(learned), nullptr);
  ASSERT_TRUE(has(learned.notices, "learn.air"));
  EXPECT_EQ(learned.notices.front().subject, "a/bottom-lam");
}

// A resin that does as its sheet says in the weather of a schedule teaches nothing new.
TEST_F(LearningSpeed, GoesByTheWeatherOfASchedule) {
  now_ = on_day(13, 16);
  ScheduleRequest asked;
  asked.jobs = {pico};
  const auto answer = schedule(workshop_, asked);
  ASSERT_TRUE(answer) << answer.error().front().message;
  const report::TimelineStep* wet = nullptr;
  for (const auto& step : answer->document.timeline) {
    if (step.id == std::string(pico) + "/bottom-lam/wet") wet = &step;
  }
  ASSERT_NE(wet, nullptr);
  RecordRequest request;
  request.job = pico;
  request.step = "bottom-lam";
  request.token = "seen";
  request.at = wet->attended_until;
  request.done = true;
  for (const report::FilmMilestone& one : wet->milestones) {
    if (one.name == "gel") request.observed = {"gel=" + one.time};
  }
  ASSERT_EQ(request.observed.size(), 1U);
  now_ = on_day(25);
  const auto recorded = record(workshop_, request);
  ASSERT_TRUE(recorded) << recorded.error().front().message;
  const Learned learned = learned_from(log());
  ASSERT_EQ(learned.records.size(), 1U);
  EXPECT_NEAR(learned.records[0].value, 1.0, 0.02);
  EXPECT_FALSE(has(learned.notices, "learn.air"));
}

TEST_F(LearningSpeed, IsPlannedWithUnlessTheShopFileSaysIt) {
  const auto before = plan(workshop_, {.file = folder_ / "pico.toml", .as = "next", .choices = {}});
  ASSERT_TRUE(before);
  for (int n = 0; n < 4; ++n) film("board-" + std::to_string(n), 14 + n, 25.0, {"gel=16:10"});
  const auto after = plan(workshop_, {.file = folder_ / "pico.toml", .as = "next", .choices = {}});
  ASSERT_TRUE(after);
  EXPECT_TRUE(has(after->document.plan.notices, "plan.learned"));
  const auto usable_of = [](const report::PlanDocument& document) {
    return units::in_minutes(document.plan.coats.front().batches.front().use_within);
  };
  EXPECT_LT(usable_of(after->document), usable_of(before->document) - 1.0);
  const auto stored = stored_plan(log(), "next", {});
  ASSERT_TRUE(stored);
  const auto resin_of = [](const JobAndShop& both) { return both.shop.shop.resins.front(); };
  EXPECT_NEAR(resin_of(*files_of(*stored)).speed.value(), 1.16, 0.05);
  EXPECT_FALSE(resin_of(*files_as_written(*stored)).speed);

  auto given = *files_as_written(*stored);
  given.shop.shop.resins.front().speed = 1.0;
  use_learned(given, "speed.slow 1.2\n");
  EXPECT_EQ(given.learned, "");
  EXPECT_EQ(resin_of(given).speed, 1.0);
  use_learned(given, "speed.none 1.2\n");
  EXPECT_EQ(given.learned, "");
}

// What was learned is against the sheet, not against the plan that already used it.
TEST_F(LearningSpeed, StaysWhenPlansUseIt) {
  film("a", 14, 25.0, {"gel=16:10"});
  const double first = speed(learned_from(log()))->value;
  film("b", 15, 25.0, {"gel=16:10"});
  const auto stored = stored_plan(log(), "b", {});
  ASSERT_TRUE(stored);
  ASSERT_NE(stored->learned.find("speed.slow"), std::string::npos);
  const Learned both = learned_from(log());
  for (const WeighedRecord& record : both.records) EXPECT_NEAR(record.value, 1.2, 1e-6);
  EXPECT_GT(speed(both)->value, first);
}

}  // namespace
}  // namespace wetout::work
