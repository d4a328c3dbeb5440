// What was recorded, into the log and out of it.
#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

#include "record_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::difference;
using testing::sample_events;
using testing::sample_plan;
using units::Milligrams;

Log planned() {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  return log;
}

std::string code(const auto& result) { return result ? "" : result.error().at(0).code; }

TEST(RecordEvents, KeepsEveryFact) {
  Log log = planned();
  NewEvents call = sample_events(1);
  call.events.push_back({.token = "c",
                         .kind = EventKind::conditions,
                         .at = Instant{},
                         .facts = {.air_millikelvin = 295'150, .humidity_ppm = 0}});
  call.events.push_back({.token = "h",
                         .kind = EventKind::conditions,
                         .step = "weigh",
                         .facts = {.humidity_ppm = 1'000'000}});
  call.events.push_back({.token = "m",
                         .kind = EventKind::milestone,
                         .step = "bottom-lam/wet",
                         .facts = {.milestone = "tack_free"}});
  call.events.push_back(
      {.token = "n", .kind = EventKind::note, .facts = {.note = "6' 4\" \xc3\xa9\n"}});
  call.events.push_back({.token = "s", .kind = EventKind::started, .step = "deck-lam/wet"});
  call.events.push_back({.token = "e",
                         .kind = EventKind::spilled,
                         .step = "deck-lam/wet",
                         .facts = {.mass = Milligrams()}});
  call.events.push_back({.token = "x",
                         .kind = EventKind::mixed,
                         .step = "deck-lam/wet",
                         .facts = {.mass = Milligrams(std::numeric_limits<std::int64_t>::max())}});
  const auto recorded = log.record_events(call);
  ASSERT_TRUE(recorded);
  EXPECT_FALSE(recorded->began || recorded->brought_back);
  EXPECT_EQ(difference(log, call), "");
  EXPECT_NE(difference(log, sample_events(2)), "") << "a comparison that cannot fail";
  ASSERT_EQ(recorded->events.size(), call.events.size());
  for (std::size_t i = 0; i < call.events.size(); ++i) {
    EXPECT_EQ(recorded->events[i].row.number, static_cast<std::int64_t>(i) + 1);
    EXPECT_EQ(recorded->events[i].row.token, call.events[i].token);
    EXPECT_EQ(recorded->events[i].row.facts, call.events[i].facts);
    EXPECT_FALSE(recorded->events[i].already);
  }
}

TEST(RecordEvents, CountsInTheWholeLog) {
  Log log = planned();
  log.save_plan(sample_plan(1, "egret"));
  EXPECT_EQ(log.record_events(sample_events(1, "sandpiper"))->events[0].row.number, 1);
  EXPECT_EQ(log.record_events(sample_events(2, "egret"))->events[0].row.number, 4);
  EXPECT_EQ(log.record_events(sample_events(3, "sandpiper"))->events[2].row.number, 9);
  EXPECT_EQ(log.events("egret").size(), 3U);
  EXPECT_EQ(log.event(5)->job_slug, "egret");
  EXPECT_FALSE(log.event(10));
  EXPECT_FALSE(log.event(0));
  EXPECT_TRUE(log.events("heron").empty());
  EXPECT_EQ(log.info().events, 9);
}

TEST(RecordEvents, SentAgainAddNothing) {
  Log log = planned();
  const NewEvents first = sample_events(1);
  ASSERT_TRUE(log.record_events(first));
  NewEvents again = sample_events(1);
  again.recorded += std::chrono::hours(1);
  for (NewEvent& event : again.events) event.at += std::chrono::minutes(1);
  const auto recorded = log.record_events(again);
  ASSERT_TRUE(recorded);
  for (const RecordedEvent& event : recorded->events) {
    EXPECT_TRUE(event.already);
    EXPECT_EQ(event.row.recorded, first.recorded) << "the earlier one is returned";
  }
  EXPECT_EQ(recorded->events[1].row.number, 2);
  EXPECT_EQ(difference(log, first), "");
  EXPECT_EQ(log.info().events, 3);
}

TEST(RecordEvents, AddsWhatIsNewInACallSentAgain) {
  Log log = planned();
  NewEvents call = sample_events(1);
  NewEvents part = call;
  part.events.pop_back();
  ASSERT_TRUE(log.record_events(part));
  const auto recorded = log.record_events(call);
  ASSERT_TRUE(recorded);
  EXPECT_TRUE(recorded->events[0].already && recorded->events[1].already);
  EXPECT_FALSE(recorded->events[2].already);
  EXPECT_EQ(difference(log, call), "");
}

TEST(RecordEvents, RefusesATokenThatSaysSomethingElse) {
  Log log = planned();
  log.save_plan(sample_plan(1, "egret"));
  ASSERT_TRUE(log.record_events(sample_events(1)));
  const auto refused = [&](auto change) {
    NewEvents call = sample_events(1);
    call.events.resize(1);
    change(call);
    call.events.push_back(
        {.token = "new", .kind = EventKind::note, .step = "weigh", .facts = {.note = "x"}});
    EXPECT_EQ(code(log.foresee_events(call)), "event.token");
    EXPECT_EQ(code(log.record_events(call)), "event.token");
  };
  refused([](NewEvents& call) { call.job_slug = "egret"; });
  refused([](NewEvents& call) { call.events[0].step = "deck-lam/wet"; });
  refused([](NewEvents& call) { call.events[0].facts.mass = Milligrams(900'000); });
  refused([](NewEvents& call) { call.events[0].facts.part_a = Milligrams(1); });
  refused([](NewEvents& call) { call.events[0].facts.note = "x"; });
  refused([](NewEvents& call) {
    call.events[0].kind = EventKind::done;
    call.events[0].facts = {};
  });
  EXPECT_EQ(log.info().events, 3) << "nor is what was new with it";
}

TEST(RecordEvents, RefusesAnUnknownJobUnlessItMayBegin) {
  Log log = planned();
  NewEvents call = sample_events(1, "heron");
  EXPECT_EQ(code(log.record_events(call)), "job.unknown");
  EXPECT_EQ(code(log.foresee_events(call)), "job.unknown");
  call.begin_as = "Night heron";
  EXPECT_TRUE(log.foresee_events(call)->began);
  EXPECT_FALSE(log.job("heron"));
  const auto recorded = log.record_events(call);
  ASSERT_TRUE(recorded);
  EXPECT_TRUE(recorded->began);
  const auto job = log.job("heron");
  ASSERT_TRUE(job);
  EXPECT_EQ(job->name, "Night heron");
  EXPECT_EQ(job->created, call.recorded);
  EXPECT_EQ(job->revisions, 0);
  EXPECT_FALSE(job->last_made);
  EXPECT_FALSE(log.plan("heron"));
  EXPECT_EQ(log.jobs().size(), 2U);
  EXPECT_FALSE(log.record_events(call)->began) << "a job begins once";
  NewEvents other = sample_events(2, "heron");
  other.begin_as = "Another name";
  EXPECT_FALSE(log.record_events(other)->began);
  EXPECT_EQ(log.job("heron")->name, "Night heron");
  EXPECT_EQ(log.save_plan(sample_plan(1, "heron")).revision, 1) << "and can be planned later";
  EXPECT_EQ(log.events("heron").size(), 6U);
}

TEST(RecordEvents, BringsAnArchivedJobBack) {
  Log log = planned();
  ASSERT_TRUE(log.archive_job("sandpiper", Instant{}));
  EXPECT_TRUE(log.foresee_events(sample_events(1))->brought_back);
  EXPECT_TRUE(log.jobs().empty());
  EXPECT_TRUE(log.record_events(sample_events(1))->brought_back);
  EXPECT_EQ(log.jobs().size(), 1U);
  EXPECT_FALSE(log.record_events(sample_events(2))->brought_back);
}

TEST(RecordEvents, CallsABrokenPromiseABug) {
  Log log = planned();
  const auto refused = [&](auto spoil) {
    NewEvents call = sample_events(1);
    spoil(call, call.events[0]);
    EXPECT_THROW((void)log.record_events(call), std::logic_error);
    EXPECT_THROW((void)log.foresee_events(call), std::logic_error);
  };
  refused([](NewEvents& call, NewEvent&) { call.job_slug = "Not A Slug"; });
  refused([](NewEvents& call, NewEvent&) { call.begin_as = ""; });
  refused([](NewEvents& call, NewEvent&) { call.events.clear(); });
  refused([](NewEvents& call, NewEvent& event) { event.token = call.events[1].token; });
  refused([](NewEvents&, NewEvent& event) { event.token.clear(); });
  refused([](NewEvents&, NewEvent& event) { event.step.clear(); });
  refused([](NewEvents&, NewEvent& event) { event.kind = EventKind::undo; });
  refused([](NewEvents&, NewEvent& event) { event.kind = EventKind::left; });
  refused([](NewEvents&, NewEvent& event) { event.kind = EventKind::done; });
  refused([](NewEvents&, NewEvent& event) { event.facts.mass.reset(); });
  refused([](NewEvents&, NewEvent& event) { event.facts = {.mass = Milligrams()}; });
  refused([](NewEvents&, NewEvent& event) { event.facts = {.mass = Milligrams(-1)}; });
  refused([](NewEvents&, NewEvent& event) { event.facts.part_a.reset(); });
  refused([](NewEvents&, NewEvent& event) { event.facts.part_a = Milligrams(-1); });
  refused([](NewEvents&, NewEvent& event) { event.facts.part_a = Milligrams(300'000); });
  refused([](NewEvents&, NewEvent& event) { event.facts.milestone = "gel"; });
  refused([](NewEvents&, NewEvent& event) { event.facts.air_millikelvin = 293'000; });
  const auto conditions = [&](Facts facts) {
    refused([&](NewEvents&, NewEvent& event) {
      event.kind = EventKind::conditions;
      event.facts = facts;
    });
  };
  conditions({});
  conditions({.air_millikelvin = 0});
  conditions({.humidity_ppm = -1});
  conditions({.humidity_ppm = 1'000'001});
  refused([](NewEvents&, NewEvent& event) {
    event.kind = EventKind::note;
    event.facts = {};
  });
  refused([](NewEvents&, NewEvent& event) {
    event.kind = EventKind::milestone;
    event.facts = {};
  });
  EXPECT_EQ(log.info().events, 0);
}

NewUndo undo_of(std::int64_t number, const std::string& token = "undo") {
  return {.token = token, .number = number, .recorded = sample_events(9).recorded, .note = "slip"};
}

TEST(UndoEvent, NamesWhatItTakesBack) {
  Log log = planned();
  ASSERT_TRUE(log.record_events(sample_events(1)));
  EXPECT_EQ(log.foresee_undo(undo_of(2))->undo.row.number, 4);
  EXPECT_EQ(log.info().events, 3) << "foreseeing writes nothing";
  const auto recorded = log.undo_event(undo_of(2));
  ASSERT_TRUE(recorded);
  EXPECT_FALSE(recorded->undo.already);
  EXPECT_EQ(recorded->undone.kind, EventKind::left);
  EXPECT_EQ(recorded->undone.undone_by, 4);
  const auto events = log.events("sandpiper");
  ASSERT_EQ(events.size(), 4U);
  EXPECT_FALSE(events[0].undone_by || events[2].undone_by || events[3].undone_by);
  EXPECT_EQ(events[1].undone_by, 4);
  EXPECT_EQ(events[3].kind, EventKind::undo);
  EXPECT_EQ(events[3].undoes, 2);
  EXPECT_EQ(events[3].step, "bottom-lam/wet");
  EXPECT_EQ(events[3].facts, Facts{.note = "slip"});
  EXPECT_EQ(events[3].at, undo_of(2).recorded);
  EXPECT_EQ(recorded->undo.row.number, 4);
}

TEST(UndoEvent, SentAgainAddsNothing) {
  Log log = planned();
  ASSERT_TRUE(log.record_events(sample_events(1)));
  ASSERT_TRUE(log.undo_event(undo_of(2)));
  NewUndo again = undo_of(2);
  again.recorded += std::chrono::hours(1);
  const auto recorded = log.undo_event(again);
  ASSERT_TRUE(recorded);
  EXPECT_TRUE(recorded->undo.already);
  EXPECT_EQ(recorded->undo.row.number, 4);
  EXPECT_EQ(log.info().events, 4);
}

TEST(UndoEvent, RefusesWhatCannotBe) {
  Log log = planned();
  ASSERT_TRUE(log.record_events(sample_events(1)));
  ASSERT_TRUE(log.undo_event(undo_of(2)));
  const auto refused = [&](std::int64_t number, const char* token, const char* expected) {
    EXPECT_EQ(code(log.foresee_undo(undo_of(number, token))), expected) << number;
    EXPECT_EQ(code(log.undo_event(undo_of(number, token))), expected) << number;
  };
  refused(9, "u", "event.unknown");
  refused(0, "u", "event.unknown");
  refused(-1, "u", "event.unknown");
  refused(2, "u", "event.undone");
  refused(4, "u", "event.is_undo");
  refused(1, "undo", "event.token");
  refused(1, "token-sandpiper-1/3", "event.token");
  EXPECT_THROW((void)log.undo_event(undo_of(1, "")), std::logic_error);
  EXPECT_EQ(log.info().events, 4);
}

TEST(UndoEvent, LeavesAnArchivedJobInTheArchive) {
  Log log = planned();
  ASSERT_TRUE(log.record_events(sample_events(1)));
  ASSERT_TRUE(log.archive_job("sandpiper", Instant{}));
  ASSERT_TRUE(log.undo_event(undo_of(1)));
  EXPECT_TRUE(log.jobs().empty());
}

TEST(Events, StayWithARenamedJob) {
  Log log = planned();
  ASSERT_TRUE(log.record_events(sample_events(1)));
  ASSERT_TRUE(log.undo_event(undo_of(1)));
  ASSERT_TRUE(log.rename_job("sandpiper", "red-sandpiper", "Red sandpiper"));
  ASSERT_EQ(log.events("red-sandpiper").size(), 4U);
  EXPECT_EQ(log.events("red-sandpiper")[0].job_slug, "red-sandpiper");
  EXPECT_EQ(log.events("red-sandpiper")[0].undone_by, 4);
  EXPECT_TRUE(log.events("sandpiper").empty());
}

}  // namespace
}  // namespace wetout::joblog
