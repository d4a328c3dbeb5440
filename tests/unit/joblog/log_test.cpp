#include "wetout/joblog/log.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

#include "joblog/migrate.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::difference;
using testing::sample_plan;

Instant at(int seconds) { return Instant(std::chrono::seconds(seconds)); }

TEST(SavePlan, KeepsEveryByte) {
  Log log = Log::in_memory();
  EXPECT_EQ(log.save_plan(sample_plan(1)).revision, 1);
  EXPECT_EQ(log.save_plan(sample_plan(2)).revision, 2);
  EXPECT_EQ(difference(log, 1, 1), "");
  EXPECT_EQ(difference(log, 2, 2), "");
  EXPECT_NE(difference(log, 1, 2), "") << "a comparison that cannot fail";
}

TEST(SavePlan, KeepsZerosEmptyTextsAndBytesThatAreNoText) {
  Log log = Log::in_memory();
  NewPlan plan = sample_plan(1);
  const std::string odd("\0\xff\xfe'\"\n\0", 7);
  plan.result_body = [&](int) { return odd; };
  plan.job_name = "Sandpiper 6' 4\" \xc3\xa9";
  plan.inputs = {{"job", "\xff.toml", "f", ""}, {"shop", "", "f", odd}};
  log.save_plan(plan);
  EXPECT_EQ(log.plan("sandpiper")->body, odd);
  EXPECT_EQ(log.plan("sandpiper")->job_name, plan.job_name);
  const auto inputs = log.inputs("sandpiper", 1);
  ASSERT_EQ(inputs.size(), 2U);
  EXPECT_EQ(inputs[0].name, "\xff.toml");
  EXPECT_EQ(inputs[0].body, "");
  EXPECT_EQ(inputs[1].body, odd);
}

TEST(SavePlan, AddsNothingWhenTheInputsAreTheSame) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  NewPlan again = sample_plan(1);
  again.result_body = [](int) -> std::string { throw std::runtime_error("called"); };
  const Saved saved = log.save_plan(again);
  EXPECT_TRUE(saved.unchanged);
  EXPECT_EQ(saved.revision, 1);
  EXPECT_EQ(log.revisions("sandpiper").size(), 1U);
}

TEST(SavePlan, ComparesWithTheLastRevisionOnly) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  log.save_plan(sample_plan(2));
  const Saved back = log.save_plan(sample_plan(1));
  EXPECT_FALSE(back.unchanged);
  EXPECT_EQ(back.revision, 3);
}

TEST(SavePlan, CountsRevisionsPerJob) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1, "sandpiper"));
  EXPECT_EQ(log.save_plan(sample_plan(1, "egret")).revision, 1);
  EXPECT_EQ(log.save_plan(sample_plan(2, "sandpiper")).revision, 2);
}

TEST(SavePlan, KeepsAnEqualDocumentOnce) {
  Log log = Log::in_memory();
  for (int n = 1; n <= 5; ++n) log.save_plan(sample_plan(n));
  // Of four documents a plan, the shop is the same each time.
  EXPECT_EQ(log.info().documents, 5 * 3 + 1);
}

TEST(SavePlan, KeepsTheSameBytesUnderTwoFormats) {
  Log log = Log::in_memory();
  NewPlan plan = sample_plan(1);
  plan.inputs = {{"job", "a", "wetout.job/1", "x"}, {"shop", "a", "wetout.shop/1", "x"}};
  log.save_plan(plan);
  EXPECT_EQ(log.inputs("sandpiper", 1)[0].format, "wetout.job/1");
  EXPECT_EQ(log.inputs("sandpiper", 1)[1].format, "wetout.shop/1");
}

TEST(SavePlan, IsUndoneAsAWholeByAnException) {
  Log log = Log::in_memory();
  NewPlan plan = sample_plan(1);
  plan.result_body = [](int) -> std::string { throw std::runtime_error("no result"); };
  EXPECT_THROW(log.save_plan(plan), std::runtime_error);
  EXPECT_EQ(log.info().jobs, 0);
  EXPECT_EQ(log.save_plan(sample_plan(1)).revision, 1) << "the connection is still good";
}

TEST(SavePlan, CallsABrokenPromiseABug) {
  Log log = Log::in_memory();
  const auto refused = [&](auto spoil) {
    NewPlan plan = sample_plan(1);
    spoil(plan);
    EXPECT_THROW(log.save_plan(plan), std::logic_error);
  };
  refused([](NewPlan& plan) { plan.job_slug = "Not A Slug"; });
  refused([](NewPlan& plan) { plan.job_name.clear(); });
  refused([](NewPlan& plan) { plan.program.clear(); });
  refused([](NewPlan& plan) { plan.result_format.clear(); });
  refused([](NewPlan& plan) { plan.result_body = nullptr; });
  refused([](NewPlan& plan) { plan.inputs[0].role = "weather"; });
  refused([](NewPlan& plan) { plan.inputs[0].format.clear(); });
  refused([](NewPlan& plan) { plan.inputs.push_back(plan.inputs[0]); });
  EXPECT_EQ(log.info().jobs, 0);
}

TEST(ForeseePlan, SaysWhatSavingWouldSayAndWritesNothing) {
  Log log = Log::in_memory();
  EXPECT_EQ(log.foresee_plan("sandpiper", sample_plan(1).input_key).revision, 1);
  EXPECT_EQ(log.info().jobs, 0);
  log.save_plan(sample_plan(1));
  EXPECT_TRUE(log.foresee_plan("sandpiper", sample_plan(1).input_key).unchanged);
  const Saved next = log.foresee_plan("sandpiper", sample_plan(2).input_key);
  EXPECT_FALSE(next.unchanged);
  EXPECT_EQ(next.revision, 2);
  EXPECT_EQ(log.revisions("sandpiper").size(), 1U);
}

TEST(ReadPlan, TakesTheLastRevisionOrTheOneNamed) {
  Log log = Log::in_memory();
  for (int n = 1; n <= 12; ++n) log.save_plan(sample_plan(n));
  EXPECT_EQ(log.plan("sandpiper")->revision, 12);
  EXPECT_EQ(log.plan("sandpiper", 3)->revision, 3);
  EXPECT_FALSE(log.plan("sandpiper", 13));
  EXPECT_FALSE(log.plan("sandpiper", 0));
  EXPECT_FALSE(log.plan("egret"));
  EXPECT_TRUE(log.inputs("sandpiper", 13).empty());
}

TEST(Revisions, AreListedOldestFirst) {
  Log log = Log::in_memory();
  for (int n = 1; n <= 3; ++n) log.save_plan(sample_plan(n));
  const auto revisions = log.revisions("sandpiper");
  ASSERT_EQ(revisions.size(), 3U);
  EXPECT_EQ(revisions[0].revision, 1);
  EXPECT_EQ(revisions[2].made, sample_plan(3).made);
  EXPECT_EQ(revisions[1].input_key, sample_plan(2).input_key);
  EXPECT_TRUE(log.revisions("egret").empty());
}

TEST(Jobs, AreListedBySlugWithTheirLastRevision) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1, "sandpiper"));
  log.save_plan(sample_plan(2, "sandpiper"));
  log.save_plan(sample_plan(3, "egret"));
  const auto jobs = log.jobs();
  ASSERT_EQ(jobs.size(), 2U);
  EXPECT_EQ(jobs[0].slug, "egret");
  EXPECT_EQ(jobs[0].name, "The egret");
  EXPECT_EQ(jobs[1].revisions, 2);
  EXPECT_EQ(jobs[1].created, sample_plan(1).made);
  EXPECT_EQ(jobs[1].last_made, sample_plan(2).made);
  EXPECT_FALSE(log.job("heron"));
  EXPECT_EQ(log.job("egret")->revisions, 1);
}

TEST(ArchiveJob, HidesAndBringsBack) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  ASSERT_TRUE(log.archive_job("sandpiper", at(2'000'000'000)));
  EXPECT_TRUE(log.jobs().empty());
  ASSERT_EQ(log.jobs(true).size(), 1U);
  EXPECT_EQ(log.jobs(true)[0].archived, at(2'000'000'000));
  EXPECT_TRUE(log.plan("sandpiper")) << "an archived job can still be read";
  ASSERT_TRUE(log.archive_job("sandpiper", std::nullopt));
  EXPECT_EQ(log.jobs().size(), 1U);
  EXPECT_EQ(log.archive_job("egret", at(0)).error()[0].code, "job.unknown");
}

TEST(ArchiveJob, EndsWhenTheJobIsPlannedAgain) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  ASSERT_TRUE(log.archive_job("sandpiper", at(1)));
  EXPECT_TRUE(log.foresee_plan("sandpiper", sample_plan(1).input_key).brought_back);
  const Saved same = log.save_plan(sample_plan(1));
  EXPECT_TRUE(same.unchanged && same.brought_back);
  EXPECT_EQ(log.jobs().size(), 1U);
  EXPECT_FALSE(log.save_plan(sample_plan(2)).brought_back);
}

TEST(RenameJob, KeepsThePlans) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  ASSERT_TRUE(log.rename_job("sandpiper", "red-sandpiper", "Red sandpiper"));
  EXPECT_FALSE(log.job("sandpiper"));
  EXPECT_EQ(log.job("red-sandpiper")->name, "Red sandpiper");
  EXPECT_EQ(log.job("red-sandpiper")->created, sample_plan(1).made);
  EXPECT_EQ(log.plan("red-sandpiper")->revision, 1);
  EXPECT_EQ(log.inputs("red-sandpiper", 1).size(), 3U);
  ASSERT_TRUE(log.rename_job("red-sandpiper", "red-sandpiper", "Only the name"));
  EXPECT_EQ(log.job("red-sandpiper")->name, "Only the name");
}

TEST(RenameJob, RefusesWhatCannotBe) {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1, "sandpiper"));
  log.save_plan(sample_plan(1, "egret"));
  ASSERT_TRUE(log.archive_job("egret", at(1)));
  EXPECT_EQ(log.rename_job("heron", "x", "X").error()[0].code, "job.unknown");
  EXPECT_EQ(log.rename_job("sandpiper", "egret", "X").error()[0].code, "job.taken");
  EXPECT_EQ(log.rename_job("sandpiper", "A b", "X").error()[0].code, "job.slug");
  EXPECT_EQ(log.rename_job("sandpiper", "x", "").error()[0].code, "job.name");
  EXPECT_EQ(log.jobs(true).size(), 2U);
  EXPECT_TRUE(log.job("sandpiper"));
}

TEST(Info, Counts) {
  const testing::TempFolder folder;
  Log log = Log::open(folder / "log.db", testing::writing());
  for (int n = 1; n <= 3; ++n) log.save_plan(sample_plan(n));
  log.save_plan(sample_plan(1, "egret"));
  ASSERT_TRUE(log.archive_job("egret", at(1)));
  const Info info = log.info();
  EXPECT_EQ(info.jobs, 2);
  EXPECT_EQ(info.archived_jobs, 1);
  EXPECT_EQ(info.plans, 4);
  EXPECT_EQ(info.journal_mode, "wal");
  EXPECT_EQ(info.schema_version, latest(migrations()));
  EXPECT_EQ(info.file_bytes, std::filesystem::file_size(folder / "log.db"));
  EXPECT_GT(info.wal_bytes, 0U);
  EXPECT_GT(info.document_bytes, 4 * 3000);
  EXPECT_FALSE(info.sqlite_version.empty());
}

}  // namespace
}  // namespace wetout::joblog
