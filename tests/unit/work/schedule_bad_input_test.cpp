// What is wrong with the question: named by file, key, what was found and what was expected.
#include <gtest/gtest.h>

#include <fstream>
#include <string>
#include <vector>

#include "schedule_shop.hpp"
#include "support.hpp"

namespace wetout::work {
namespace {

using testing::problem_of;
using testing::ScheduleShop;

constexpr const char* monday = "2026-06-15 12:00";

class BadSchedule : public ::testing::Test {
 protected:
  ScheduleShop shop;

  // "code key" of the only problem; whatever is wrong, nothing is kept of it.
  std::string asked(const ScheduleRequest& request, const char* now = monday) {
    const auto answer = shop.schedule(now, request);
    if (answer) return "none";
    for (const base::Problem& problem : answer.error()) {
      EXPECT_FALSE(problem.message.empty());
      const bool helps = !problem.expected.empty() || !problem.hint.empty();
      EXPECT_TRUE(helps || problem.code == "file.missing") << problem.code;
    }
    return problem_of(answer);
  }
  std::string asked(void (*change)(ScheduleRequest&), const char* now = monday) {
    ScheduleRequest request;
    change(request);
    return asked(request, now);
  }
};

TEST_F(BadSchedule, Words) {
  EXPECT_EQ(asked([](auto& r) { r.guard = "some"; }), "word.unknown --guard");
  EXPECT_EQ(asked([](auto& r) { r.prefer = "speed"; }), "word.unknown --prefer");
}

TEST_F(BadSchedule, Jobs) {
  EXPECT_EQ(asked([](auto& r) { r.jobs = {"nobody"}; }), "log.none ");
  const std::string file = (shop.folder() / "board.toml").string();
  ScheduleRequest twice;
  twice.jobs = {file, file};
  EXPECT_EQ(asked(twice), "schedule.job_twice JOB");
  // Now there is a log: the job was planned twice.
  EXPECT_EQ(asked([](auto& r) { r.jobs = {"nobody"}; }), "job.unknown ");
  ScheduleRequest missing;
  missing.jobs = {(shop.folder() / "none.toml").string()};
  EXPECT_EQ(asked(missing).substr(0, 5), "file.");
}

TEST_F(BadSchedule, ShopsThatDiffer) {
  ScheduleRequest pip, both;
  pip.jobs = {(shop.folder() / "board.toml").string()};
  ASSERT_TRUE(shop.schedule(monday, pip).has_value());
  shop.hours += "sun = [\"10:00-12:00\"]\n";
  shop.write();
  both.jobs = {"pip", (shop.folder() / "another.toml").string()};
  EXPECT_EQ(asked(both), "schedule.shops_differ JOB");
}

TEST_F(BadSchedule, FixedStarts) {
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom-lam"}; }), "fix.bad --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"=2026-06-16 18:00"}; }), "fix.bad --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom-lma=2026-06-16 18:00"}; }),
            "step.unknown --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom-lam/sand=2026-06-16 18:00"}; }),
            "step.unknown --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom=2026-06-16 18:00"}; }), "step.ambiguous --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom-lam=2026-06-15 11:00"}; }), "fix.outside --fix");
  EXPECT_EQ(asked([](auto& r) { r.fixed = {"bottom-lam=2027-06-15 11:00"}; }), "fix.outside --fix");
  const auto time = asked([](auto& r) { r.fixed = {"bottom-lam=tomorrow"}; });
  EXPECT_EQ(time.substr(time.find(' ')), " --fix");
  EXPECT_NE(time.substr(0, time.find(' ')), "none");
}

TEST_F(BadSchedule, FixedStartsOfWhatIsDone) {
  ASSERT_TRUE(shop.schedule(monday).has_value());
  RecordRequest lam;
  lam.step = "bottom-lam";
  lam.start = "2026-06-15 20:00";
  lam.at = "2026-06-15 20:25";
  lam.done = true;
  shop.record("2026-06-15 20:30", lam);
  ScheduleRequest again;
  again.jobs = {"pip"};
  again.fixed = {"bottom-lam=2026-06-16 18:00"};
  EXPECT_EQ(asked(again, "2026-06-15 20:30").substr(0, 9), "step.done");
}

TEST_F(BadSchedule, Hours) {
  EXPECT_EQ(asked([](auto& r) { r.hours = {"monday"}; }), "hours.bad --hours");
  EXPECT_EQ(asked([](auto& r) { r.hours = {""}; }), "hours.bad --hours");
  EXPECT_EQ(asked([](auto& r) { r.hours = {"18:00-17:00"}; }), "span.bad --hours");
  EXPECT_EQ(asked([](auto& r) { r.hours = {"mon 18:00-20:00 19:00-21:00"}; }),
            "span.overlap --hours");
  EXPECT_EQ(asked([](auto& r) { r.hours = {"2026-02-30 18:00-20:00"}; }), "date.bad --hours");
  shop.hours = "mon = []\n";
  shop.write();
  EXPECT_EQ(asked(ScheduleRequest{}), "shop.no_hours hours");
  EXPECT_EQ(asked([](auto& r) { r.hours = {"18:00-22:00"}; }), "none");
}

TEST_F(BadSchedule, Days) {
  EXPECT_EQ(asked([](auto& r) { r.until = "2026-06-14 12:00"; }), "time.order --until");
  EXPECT_EQ(asked([](auto& r) {
              r.from = "2026-06-18 12:00";
              r.until = "2026-06-18 12:00";
            }),
            "time.order --until");
  EXPECT_EQ(asked([](auto& r) { r.from = "2026-08-01 12:00"; }), "weather.outside --from");
  EXPECT_EQ(asked(ScheduleRequest{}, "2026-08-01 12:00"), "weather.outside ");
  const auto from = asked([](auto& r) { r.from = "soon"; });
  EXPECT_EQ(from.substr(from.find(' ')), " --from");
}

TEST_F(BadSchedule, Weather) {
  ScheduleRequest request;
  request.weather = shop.folder() / "nowhere.csv";
  EXPECT_EQ(asked(request).substr(0, 12), "file.missing");
  std::ofstream(shop.folder() / "bad.csv") << "time,rain\n";
  request.weather = shop.folder() / "bad.csv";
  EXPECT_EQ(asked(request).substr(0, 8), "weather.");
}

// The document tells why; nothing is saved.
TEST_F(BadSchedule, NothingFitsIsNoProblemButKeepsNothing) {
  ScheduleRequest request;
  request.until = "2026-06-16 12:00";
  const auto document = shop.document(monday, request);
  ASSERT_TRUE(document.impossible.has_value());
  EXPECT_FALSE(document.impossible->why.empty());
  EXPECT_FALSE(document.saved);
  EXPECT_TRUE(document.timeline.empty());
  EXPECT_EQ(shop.document(monday).number, 1);
}

// What is told as the smallest change helps where it is typed or written.
TEST_F(BadSchedule, WhereNothingFitsWhatIsToldHelps) {
  ScheduleRequest request;
  request.until = "2026-06-18 20:00";
  shop.air = [](double) { return 14.0; };
  shop.dew = [](double) { return 3.0; };
  shop.hours =
      "mon = [\"18:00-20:45\"]\ntue = [\"18:00-22:00\"]\nwed = [\"18:00-22:00\"]\n"
      "thu = [\"18:00-22:00\"]\n";
  shop.write();
  const auto document = shop.document(monday, request);
  ASSERT_TRUE(document.impossible.has_value());
  const report::Impossible& told = *document.impossible;
  std::vector<report::SmallestChange> changes = told.others;
  if (told.change) changes.push_back({*told.change, *told.value, *told.text, *told.finish});
  ASSERT_GE(changes.size(), 2U);
  for (const report::SmallestChange& change : changes) {
    SCOPED_TRACE(change.text);
    ScheduleRequest with = request;
    const std::string room = shop.room;
    if (change.change == "hours") {
      with.hours = {change.value};
    } else if (change.change == "until") {
      with.until = change.value;
    } else {
      ASSERT_EQ(change.change, "heater");
      shop.room = "kind = \"heated\"\nlag = \"2 h\"\nheater = { kind = \"electric\", minimum = \"" +
                  change.value + "\" }\n";
      shop.write();
    }
    const auto fits = shop.document(monday, with);
    EXPECT_FALSE(fits.impossible.has_value());
    EXPECT_EQ(fits.finish, change.finish);
    shop.room = room;
    shop.write();
  }
}

}  // namespace
}  // namespace wetout::work
