// Schedules into the log and out of it.
#include <gtest/gtest.h>

#include <stdexcept>

#include "record_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::difference;
using testing::sample_plan;
using testing::sample_schedule;
using Jobs = std::vector<ScheduledJob>;
using Numbers = std::vector<std::int64_t>;

const Jobs both = {{"sandpiper", 2}, {"egret", 1}};
const Jobs sandpiper = {{"sandpiper", 2}};
const Jobs egret = {{"egret", 1}};

Log planned() {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1, "sandpiper"));
  log.save_plan(sample_plan(2, "sandpiper"));
  log.save_plan(sample_plan(1, "egret"));
  return log;
}

Numbers numbers(const std::vector<ScheduleHead>& heads) {
  Numbers all;
  for (const ScheduleHead& head : heads) all.push_back(head.number);
  return all;
}

TEST(SaveSchedule, KeepsEveryByte) {
  Log log = planned();
  const NewSchedule first = sample_schedule(1, both);
  NewSchedule second = sample_schedule(2, sandpiper);
  second.weather.reset();
  second.steps.clear();
  EXPECT_EQ(log.save_schedule(first)->number, 1);
  EXPECT_EQ(log.save_schedule(second)->number, 2);
  EXPECT_EQ(difference(log, 1, first), "");
  EXPECT_EQ(difference(log, 2, second), "");
  EXPECT_NE(difference(log, 2, first), "") << "a comparison that cannot fail";
  EXPECT_FALSE(log.schedule_weather(2));
  EXPECT_FALSE(log.schedule(3));
  EXPECT_TRUE(log.schedule_steps(3).empty());
  EXPECT_FALSE(log.schedule_weather(3));
}

TEST(SaveSchedule, KeepsTheForecastOnce) {
  Log log = planned();
  const auto before = log.info().documents;
  for (int n = 1; n <= 4; ++n) {
    NewSchedule schedule = sample_schedule(n, sandpiper);
    schedule.weather->body = "the same";
    ASSERT_TRUE(log.save_schedule(schedule));
  }
  EXPECT_EQ(log.info().documents, before + 4 + 1);
}

TEST(SaveSchedule, AddsNothingWhenNothingHasChanged) {
  Log log = planned();
  EXPECT_FALSE(log.save_schedule(sample_schedule(1, both))->unchanged);
  NewSchedule again = sample_schedule(1, both);
  again.result_body = [](std::int64_t) -> std::string { throw std::runtime_error("called"); };
  const auto saved = log.save_schedule(again);
  ASSERT_TRUE(saved);
  EXPECT_TRUE(saved->unchanged);
  EXPECT_EQ(saved->number, 1);
  EXPECT_FALSE(saved->replaces);
  EXPECT_EQ(log.schedules().size(), 1U);
  // The order in which the jobs were named does not count.
  std::swap(again.jobs[0], again.jobs[1]);
  EXPECT_TRUE(log.save_schedule(again)->unchanged);
}

TEST(SaveSchedule, ComparesWithTheLastOneOnly) {
  Log log = planned();
  ASSERT_TRUE(log.save_schedule(sample_schedule(1, sandpiper)));
  ASSERT_TRUE(log.save_schedule(sample_schedule(2, sandpiper)));
  const auto back = log.save_schedule(sample_schedule(1, sandpiper));
  EXPECT_FALSE(back->unchanged);
  EXPECT_EQ(back->number, 3);
  EXPECT_EQ(back->replaces, 2);
}

// Otherwise the boards would go on by the schedule that came between.
TEST(SaveSchedule, IsAnotherOneWhenABoardWasScheduledAloneSince) {
  Log log = planned();
  ASSERT_TRUE(log.save_schedule(sample_schedule(1, both)));
  ASSERT_TRUE(log.save_schedule(sample_schedule(2, sandpiper)));
  EXPECT_FALSE(log.save_schedule(sample_schedule(1, both))->unchanged);
  EXPECT_EQ(log.last_schedule("sandpiper")->number, 3);
  EXPECT_EQ(log.last_schedule("egret")->number, 3);
}

TEST(SaveSchedule, OfOtherJobsIsAnotherOneWhateverItsKey) {
  Log log = planned();
  ASSERT_TRUE(log.save_schedule(sample_schedule(1, both)));
  NewSchedule part = sample_schedule(1, sandpiper);
  part.input_key = sample_schedule(1, both).input_key;
  EXPECT_FALSE(log.save_schedule(part)->unchanged);
  EXPECT_EQ(log.last_schedule("sandpiper")->number, 2);
  EXPECT_EQ(log.last_schedule("egret")->number, 1);
  NewSchedule whole = sample_schedule(1, both);
  EXPECT_FALSE(log.save_schedule(whole)->unchanged);
}

TEST(SaveSchedule, NamesTheOneItFollows) {
  Log log = planned();
  EXPECT_FALSE(log.save_schedule(sample_schedule(1, both))->replaces);
  EXPECT_EQ(log.save_schedule(sample_schedule(2, sandpiper))->replaces, 1);
  EXPECT_EQ(log.save_schedule(sample_schedule(3, egret))->replaces, 1) << "both follow the first";
  const auto last = log.save_schedule(sample_schedule(4, both));
  EXPECT_EQ(last->replaces, 3) << "the last that holds any of them";
  const auto again = log.save_schedule(sample_schedule(4, both));
  EXPECT_TRUE(again->unchanged);
  EXPECT_EQ(again->replaces, 3);
  EXPECT_EQ(log.schedule(4)->replaces, 3);
  EXPECT_FALSE(log.schedule(1)->replaces);
}

TEST(SaveSchedule, BringsArchivedJobsBack) {
  Log log = planned();
  ASSERT_TRUE(log.archive_job("egret", Instant{}));
  const NewSchedule schedule = sample_schedule(1, both);
  const auto brought = std::vector<std::string>{"egret"};
  EXPECT_EQ(log.foresee_schedule({"sandpiper", "egret"}, schedule.input_key).brought_back, brought);
  EXPECT_EQ(log.jobs().size(), 1U) << "foreseeing writes nothing";
  EXPECT_EQ(log.save_schedule(schedule)->brought_back, brought);
  EXPECT_EQ(log.jobs().size(), 2U);
  ASSERT_TRUE(log.archive_job("sandpiper", Instant{}));
  const auto same = log.save_schedule(schedule);
  EXPECT_TRUE(same->unchanged);
  EXPECT_EQ(same->brought_back, std::vector<std::string>{"sandpiper"});
  EXPECT_EQ(log.jobs().size(), 2U);
}

TEST(SaveSchedule, RefusesWhatWasNeverPlannedAndSavesNothing) {
  Log log = planned();
  ASSERT_TRUE(log.archive_job("egret", Instant{}));
  const auto saved =
      log.save_schedule(sample_schedule(1, {{"egret", 2}, {"heron", 1}, {"sandpiper", 0}}));
  ASSERT_FALSE(saved);
  std::vector<std::string> codes;
  for (const base::Problem& problem : saved.error()) codes.push_back(problem.code);
  EXPECT_EQ(codes, (std::vector<std::string>{"plan.unknown", "job.unknown", "plan.unknown"}));
  EXPECT_TRUE(log.schedules().empty());
  EXPECT_EQ(log.jobs().size(), 1U) << "nor is a job brought back";
}

TEST(SaveSchedule, IsUndoneAsAWholeByAnException) {
  Log log = planned();
  NewSchedule schedule = sample_schedule(1, both);
  schedule.result_body = [](std::int64_t) -> std::string { throw std::runtime_error("none"); };
  EXPECT_THROW((void)log.save_schedule(schedule), std::runtime_error);
  EXPECT_EQ(log.info().schedules, 0);
  EXPECT_EQ(log.save_schedule(sample_schedule(1, both))->number, 1) << "still good";
}

TEST(SaveSchedule, CallsABrokenPromiseABug) {
  Log log = planned();
  const auto refused = [&](auto spoil) {
    NewSchedule schedule = sample_schedule(1, both);
    spoil(schedule);
    EXPECT_THROW((void)log.save_schedule(schedule), std::logic_error);
  };
  refused([](NewSchedule& schedule) { schedule.program.clear(); });
  refused([](NewSchedule& schedule) { schedule.result_format.clear(); });
  refused([](NewSchedule& schedule) { schedule.result_body = nullptr; });
  refused([](NewSchedule& schedule) { schedule.weather->format.clear(); });
  refused([](NewSchedule& schedule) { schedule.jobs.clear(); });
  refused([](NewSchedule& schedule) { schedule.jobs.push_back(schedule.jobs[0]); });
  refused([](NewSchedule& schedule) { schedule.steps[0].job = "heron"; });
  refused([](NewSchedule& schedule) { schedule.steps[0].step.clear(); });
  refused([](NewSchedule& schedule) { schedule.steps.push_back(schedule.steps[0]); });
  refused([](NewSchedule& schedule) {
    schedule.steps[0].finish = schedule.steps[0].start - std::chrono::seconds(1);
  });
  EXPECT_EQ(log.info().schedules, 0);
  EXPECT_THROW((void)log.foresee_schedule({}, Digest{}), std::logic_error);
}

TEST(ForeseeSchedule, SaysWhatSavingWouldSay) {
  Log log = planned();
  const std::vector<std::string> slugs = {"sandpiper", "egret"};
  const NewSchedule schedule = sample_schedule(1, both);
  const auto compare = [&](const NewSchedule& next, const std::vector<std::string>& names) {
    const SavedSchedule foreseen = log.foresee_schedule(names, next.input_key);
    const auto saved = log.save_schedule(next);
    EXPECT_EQ(foreseen.number, saved->number);
    EXPECT_EQ(foreseen.unchanged, saved->unchanged);
    EXPECT_EQ(foreseen.replaces, saved->replaces);
  };
  compare(schedule, slugs);
  compare(schedule, slugs);
  compare(sample_schedule(2, sandpiper), {"sandpiper"});
  compare(schedule, slugs);
}

TEST(ForeseeSchedule, KnowsJobsThatAreNotSavedYet) {
  Log log = planned();
  const NewSchedule schedule = sample_schedule(1, sandpiper);
  ASSERT_TRUE(log.save_schedule(schedule));
  const SavedSchedule foreseen = log.foresee_schedule({"heron"}, schedule.input_key);
  EXPECT_EQ(foreseen.number, 2);
  EXPECT_FALSE(foreseen.unchanged);
  EXPECT_FALSE(foreseen.replaces);
  const SavedSchedule mixed = log.foresee_schedule({"heron", "sandpiper"}, schedule.input_key);
  EXPECT_FALSE(mixed.unchanged);
  EXPECT_EQ(mixed.replaces, 1);
}

TEST(Schedules, AreFoundByJob) {
  Log log = planned();
  EXPECT_FALSE(log.last_schedule("sandpiper"));
  EXPECT_FALSE(log.last_schedule("heron"));
  ASSERT_TRUE(log.save_schedule(sample_schedule(1, both)));
  ASSERT_TRUE(log.save_schedule(sample_schedule(2, sandpiper)));
  ASSERT_TRUE(log.save_schedule(sample_schedule(3, egret)));
  EXPECT_EQ(numbers(log.schedules()), (Numbers{1, 2, 3}));
  EXPECT_EQ(numbers(log.schedules("egret")), (Numbers{1, 3}));
  EXPECT_EQ(numbers(log.schedules("heron")), Numbers{});
  EXPECT_EQ(log.schedules()[0].jobs, (Jobs{{"egret", 1}, {"sandpiper", 2}}));
  EXPECT_EQ(log.schedules()[2].replaces, 1);
  EXPECT_EQ(log.schedules()[1].made, sample_schedule(2).made);
  EXPECT_EQ(log.last_schedule("sandpiper")->number, 2);
  EXPECT_EQ(log.info().schedules, 3);
}

TEST(Schedules, StayWithARenamedJob) {
  Log log = planned();
  ASSERT_TRUE(log.save_schedule(sample_schedule(1, both)));
  ASSERT_TRUE(log.rename_job("egret", "little-egret", "Little egret"));
  EXPECT_EQ(log.last_schedule("little-egret")->jobs, (Jobs{{"little-egret", 1}, {"sandpiper", 2}}));
  EXPECT_EQ(log.schedule_steps(1)[0].job, "little-egret");
}

TEST(Schedules, WhoseBytesHaveChangedAreReported) {
  const testing::TempFolder folder;
  {
    Log log = Log::open(folder / "log.db", testing::writing());
    log.save_plan(sample_plan(1));
    ASSERT_TRUE(log.save_schedule(sample_schedule(1)));
  }
  std::string bytes = testing::read_bytes(folder / "log.db");
  const std::size_t at = bytes.find("schedule 1 number 1");
  ASSERT_NE(at, std::string::npos);
  bytes[at] = 'S';
  testing::write_bytes(folder / "log.db", bytes);
  const Log log = Log::open(folder / "log.db", testing::reading());
  EXPECT_EQ(testing::outcome([&] { log.schedule(1); }), "damaged");
  EXPECT_EQ(testing::outcome([&] { log.last_schedule("sandpiper"); }), "damaged");
  EXPECT_EQ(testing::outcome([&] { log.schedule_weather(1); }), "ok");
}

}  // namespace
}  // namespace wetout::joblog
