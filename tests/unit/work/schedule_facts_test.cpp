// A schedule after some of the work has been done.
#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "schedule_shop.hpp"

namespace wetout::work {
namespace {

using namespace std::chrono_literals;
using report::ScheduleDocument;
using report::StepState;
using testing::find;
using testing::milestone_of;
using testing::ScheduleShop;
using testing::start_of;
using testing::utc;
using testing::why_moved;

// Monday noon before the work begins.
constexpr const char* monday = "2026-06-15 12:00";

RecordRequest done(std::string step, std::string start, std::string at) {
  RecordRequest request;
  request.step = std::move(step);
  if (!start.empty()) request.start = std::move(start);
  request.at = std::move(at);
  request.done = true;
  return request;
}

ScheduleRequest pip() {
  ScheduleRequest request;
  request.jobs = {"pip"};
  return request;
}

class ScheduleFacts : public ::testing::Test {
 protected:
  ScheduleShop shop;
};

TEST_F(ScheduleFacts, OfALamThatIsLateMoveTheRest) {
  const ScheduleDocument planned = shop.document(monday);
  ASSERT_TRUE(planned.finish.has_value());
  // Acclimatise on Monday, two hours later the lam: it is to be poured at 20:10 or so.
  const auto meant = start_of(planned, "pip/bottom-lam/wet");
  EXPECT_GE(meant, utc("2026-06-15 20:10"));
  EXPECT_LT(meant, utc("2026-06-15 21:00"));
  // Two hours late.
  shop.record("2026-06-15 22:50", done("bottom-lam", "2026-06-15 22:20", "2026-06-15 22:45"));
  const ScheduleDocument now = shop.document("2026-06-15 22:50", pip());
  const auto* wet = find(now, "pip/bottom-lam/wet");
  ASSERT_NE(wet, nullptr);
  EXPECT_EQ(wet->state, StepState::done);
  EXPECT_EQ(start_of(now, "pip/bottom-lam/wet"), utc("2026-06-15 22:20"));
  for (const int m : {15, 30, 60}) {
    const std::string look = "pip/bottom-lam/watch-" + std::to_string(m);
    EXPECT_EQ(start_of(now, look), utc("2026-06-15 22:45") + std::chrono::minutes(m));
    EXPECT_EQ(why_moved(now, look), "follows a step that moved");
  }
  for (const report::TimelineStep& step : now.timeline) {
    if (step.state == StepState::done) continue;
    EXPECT_GE(start_of(now, step.id), utc("2026-06-15 22:50")) << step.id;
  }
  EXPECT_GT(milestone_of(now, "pip/bottom-lam/wet", "sandable"),
            milestone_of(planned, "pip/bottom-lam/wet", "sandable") + 90min);
  EXPECT_GE(start_of(now, "pip/bottom-hot/wet"),
            milestone_of(now, "pip/bottom-lam/wet", "recoat_from"));
  EXPECT_EQ(now.changed_since, planned.number);
  EXPECT_EQ(why_moved(now, "pip/bottom-lam/wet"), "done later than planned");
  EXPECT_EQ(why_moved(now, "pip/acclimatise"), "counts as done, as what follows it has been done");
}

TEST_F(ScheduleFacts, OfWarmerAirMakeAFilmFurther) {
  (void)shop.document(monday);
  const auto after = [&](double air_c) {
    RecordRequest lam = done("bottom-lam", "2026-06-15 20:00", "2026-06-15 20:25");
    lam.air = units::Temperature::celsius(air_c);
    const auto first = shop.record("2026-06-15 20:30", lam);
    RecordRequest look = done("bottom-lam/watch-60", "", "2026-06-15 21:30");
    look.air = units::Temperature::celsius(air_c);
    const auto second = shop.record("2026-06-15 21:30", look);
    ScheduleDocument found = shop.document("2026-06-15 22:00", pip());
    for (const auto* document : {&first, &second}) {
      for (const auto& event : document->events) shop.undo("2026-06-15 22:00", event.number);
    }
    return found;
  };
  const ScheduleDocument cold = after(17), warm = after(27);
  for (const char* milestone : {"gel", "handle", "sandable"}) {
    EXPECT_LT(milestone_of(warm, "pip/bottom-lam/wet", milestone) + 20min,
              milestone_of(cold, "pip/bottom-lam/wet", milestone))
        << milestone;
  }
}

TEST_F(ScheduleFacts, ThatWereSeenTakeThePlaceOfWhatWasComputed) {
  (void)shop.document(monday);
  RecordRequest lam = done("bottom-lam", "2026-06-15 20:00", "2026-06-15 20:25");
  shop.record("2026-06-15 20:30", lam);
  RecordRequest seen;
  seen.step = "bottom-lam";
  seen.observed = {"gel=2026-06-15 21:52"};
  shop.record("2026-06-15 21:55", seen);
  const ScheduleDocument found = shop.document("2026-06-15 21:55", pip());
  EXPECT_EQ(milestone_of(found, "pip/bottom-lam/wet", "gel"), utc("2026-06-15 21:52"));
}

TEST_F(ScheduleFacts, StayWhereTheyWere) {
  (void)shop.document(monday);
  shop.record("2026-06-15 18:20", done("acclimatise", "2026-06-15 18:00", "2026-06-15 18:10"));
  shop.record("2026-06-15 20:45", done("bottom-lam", "2026-06-15 20:15", "2026-06-15 20:40"));
  for (const char* now : {"2026-06-15 20:50", "2026-06-16 12:00", "2026-06-18 20:00"}) {
    SCOPED_TRACE(now);
    const ScheduleDocument found = shop.document(now, pip());
    ASSERT_TRUE(found.finish.has_value());
    EXPECT_EQ(start_of(found, "pip/acclimatise"), utc("2026-06-15 18:00"));
    EXPECT_EQ(start_of(found, "pip/bottom-lam/wet"), utc("2026-06-15 20:15"));
    for (const char* id : {"pip/acclimatise", "pip/bottom-lam/wet"}) {
      EXPECT_EQ(find(found, id)->state, StepState::done);
    }
    // A step in between that nobody wrote down is neither done nor to come.
    EXPECT_EQ(find(found, "pip/bottom-lam/prepare"), nullptr);
    // Looks that nobody took in time are over.
    EXPECT_EQ(find(found, "pip/bottom-lam/watch-60") != nullptr, now < std::string("2026-06-16"));
  }
}

TEST_F(ScheduleFacts, AfterAWetThatNobodyWroteDownAskForIt) {
  (void)shop.document(monday);
  shop.record("2026-06-18 19:00", done("bottom-hot/peel", "2026-06-18 18:40", "2026-06-18 18:45"));
  const auto answer = shop.schedule("2026-06-18 19:00", pip());
  ASSERT_FALSE(answer.has_value());
  ASSERT_EQ(answer.error().size(), 2U);
  EXPECT_EQ(answer.error()[0].code, "schedule.wet_unknown");
  EXPECT_EQ(answer.error()[0].key, "pip/bottom-lam");
  EXPECT_EQ(answer.error()[1].key, "pip/bottom-hot");
  // As the hint says.
  shop.record("2026-06-18 19:00", done("bottom-lam", "2026-06-15 20:15", "2026-06-15 20:40"));
  shop.record("2026-06-18 19:00", done("bottom-hot", "2026-06-17 20:15", "2026-06-17 20:30"));
  const ScheduleDocument found = shop.document("2026-06-18 19:00", pip());
  EXPECT_TRUE(found.finish.has_value());
  EXPECT_NE(find(found, "pip/bottom-hot/sand"), nullptr);
  EXPECT_EQ(find(found, "pip/bottom-hot/wash"), nullptr);
}

TEST_F(ScheduleFacts, ThatAreTakenBackLeaveNoTrace) {
  const ScheduleDocument planned = shop.document(monday);
  const auto recorded =
      shop.record("2026-06-15 14:00", done("bottom-lam", "2026-06-15 13:00", "2026-06-15 13:30"));
  const ScheduleDocument moved = shop.document("2026-06-15 14:00", pip());
  EXPECT_NE(start_of(moved, "pip/bottom-lam/wet"), start_of(planned, "pip/bottom-lam/wet"));
  for (const auto& event : recorded.events) shop.undo("2026-06-15 14:05", event.number);
  const ScheduleDocument again = shop.document(monday, pip());
  ASSERT_EQ(again.timeline.size(), planned.timeline.size());
  for (const report::TimelineStep& step : planned.timeline) {
    ASSERT_NE(find(again, step.id), nullptr) << step.id;
    EXPECT_EQ(find(again, step.id)->start, step.start) << step.id;
    EXPECT_EQ(find(again, step.id)->state, step.state) << step.id;
  }
  EXPECT_EQ(again.finish, planned.finish);
}

TEST_F(ScheduleFacts, OfWhatIsGoingOnKeepPeopleAndBoardBusy) {
  (void)shop.document(monday);
  // Begun at 20:10 and not over: mixing and spreading take their time.
  RecordRequest begun;
  begun.step = "bottom-lam";
  begun.start = "2026-06-15 20:10";
  begun.at = "2026-06-15 20:10";
  shop.record("2026-06-15 20:15", begun);
  const ScheduleDocument found = shop.document("2026-06-15 20:15", pip());
  const auto* wet = find(found, "pip/bottom-lam/wet");
  ASSERT_NE(wet, nullptr);
  EXPECT_EQ(wet->state, StepState::done);
  const auto over = utc(wet->attended_until);
  EXPECT_GT(over, utc("2026-06-15 20:20"));
  for (const report::TimelineStep& step : found.timeline) {
    if (step.state == StepState::done) continue;
    EXPECT_GE(start_of(found, step.id), over) << step.id;
  }
}

// --- why a step moved

TEST_F(ScheduleFacts, ThatDidNotHappenAreTold) {
  const ScheduleDocument planned = shop.document(monday);
  const ScheduleDocument late = shop.document("2026-06-16 12:00", pip());
  EXPECT_EQ(why_moved(late, "pip/acclimatise"), "its time is over");
  EXPECT_EQ(why_moved(late, "pip/bottom-lam/wet"), "follows a step that moved");
  EXPECT_EQ(late.changed_since, planned.number);
}

TEST_F(ScheduleFacts, ThatAreFixedAreTold) {
  (void)shop.document(monday);
  ScheduleRequest fixed = pip();
  fixed.fixed = {"bottom-lam=2026-06-16 20:30"};
  const ScheduleDocument found = shop.document(monday, fixed);
  EXPECT_EQ(find(found, "pip/bottom-lam/wet")->state, StepState::fixed);
  EXPECT_EQ(why_moved(found, "pip/bottom-lam/wet"), "fixed");
}

TEST_F(ScheduleFacts, OfTheWeatherAreTold) {
  (void)shop.document(monday);
  // The week turns cold until Thursday, and the room with it.
  const auto warm = shop.air;
  shop.air = [&](double h) { return h < 24 * 5 ? 12.0 : warm(h); };
  shop.dew = [](double) { return 2.0; };
  shop.write();
  const ScheduleDocument found = shop.document(monday, pip());
  ASSERT_TRUE(found.finish.has_value());
  EXPECT_EQ(why_moved(found, "pip/bottom-lam/wet"), "too cold");
  EXPECT_GE(start_of(found, "pip/bottom-lam/wet"), utc("2026-06-17 18:00"));
}

TEST_F(ScheduleFacts, OfHoursAreTold) {
  (void)shop.document(monday);
  ScheduleRequest early = pip();
  early.hours = {"mon 06:00-07:00"};
  const ScheduleDocument found = shop.document(monday, early);
  EXPECT_EQ(why_moved(found, "pip/acclimatise"), "outside working hours");
}

}  // namespace
}  // namespace wetout::work
