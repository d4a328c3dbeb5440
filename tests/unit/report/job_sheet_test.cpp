#include "wetout/report/job_sheet.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <string>

#include "job_sheet_parts.hpp"
#include "sample.hpp"
#include "schedule_sample.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using units::System;

DrawnBoard diamond(units::Length length) {
  DrawnBoard board;
  board.outline = {{units::metres(0), units::metres(0)},
                   {0.5 * length, units::metres(0.25)},
                   {length, units::metres(0)},
                   {0.5 * length, units::metres(-0.25)}};
  board.across = {{"wide point", 0.5 * length, units::metres(0.5)}};
  return board;
}

// The plan has the coats of the schedule: those of the sample, by their ids.
JobSheet sheet(ScheduleDocument schedule = sample::schedule()) {
  JobSheet out;
  out.program = "wetout 0.1.0";
  out.made = "2026-06-13T16:15:00Z";
  out.plan = sample::plan();
  out.board = diamond(out.plan.plan.board.length);
  out.cloth = sample::cloth();
  out.plan.job.id = schedule.jobs.front().id;
  std::vector<laminate::CoatNeed> coats;
  for (const ScheduleStep& step : schedule.steps) {
    if (step.step != "wet" || !step.coat || step.job != out.plan.job.id) continue;
    laminate::CoatNeed coat = out.plan.plan.coats[coats.size() % out.plan.plan.coats.size()];
    coat.id = coat.name = *step.coat;
    coats.push_back(std::move(coat));
  }
  out.plan.plan.coats = std::move(coats);
  out.schedule = std::move(schedule);
  return out;
}

std::string page(const JobSheet& of, System system = System::us) {
  return job_sheet(of, system, time::Zone());
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}
std::size_t count(const std::string& text, std::string_view part) {
  std::size_t n = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

TEST(JobSheet, BeginsAsFilesOfItsKindDo) {
  EXPECT_TRUE(page(sheet()).starts_with(job_sheet_begins));
}

TEST(JobSheet, LoadsNothing) {
  const std::string text = page(sheet());
  for (const char* out : {"<link", "<img", "<iframe", "@import", "url(http", " src=", "fetch(",
                          "XMLHttpRequest", "WebSocket", "sendBeacon"}) {
    EXPECT_FALSE(has(text, out)) << out;
  }
  EXPECT_TRUE(has(text, "default-src &#39;none&#39;"));
}

TEST(JobSheet, HoldsNamesAsTexts) {
  JobSheet of = sheet();
  const std::string evil = "<script>alert(1)</script>\"'&";
  of.plan.plan.board.name = evil;
  for (auto& coat : of.plan.plan.coats) coat.name = evil;
  for (auto& step : of.schedule->steps) step.title = step.how = evil;
  for (auto& ply : of.plan.plan.plies) ply.id = ply.cloth = evil;
  for (auto& roll : of.cloth.rolls) {
    roll.name = evil;
    for (auto& piece : roll.pieces) piece.ply = evil;
  }
  of.cloth.cautions = {evil};
  for (auto& caution : of.plan.plan.cautions) caution.text = evil;
  for (auto& notice : of.plan.plan.notices) notice.text = notice.subject = evil;
  for (auto& window : of.schedule->windows) window.reason = evil;
  of.plan.job.id += "\"><script>";
  for (auto& across : of.board.across) across.place = evil;
  const std::string text = page(of);
  // The one that is ours.
  EXPECT_EQ(count(text, "<script"), 1U);
  EXPECT_FALSE(has(text, "alert(1)</script>"));
  of.schedule.reset();
  of.no_schedule = evil;
  EXPECT_EQ(count(page(of), "<script"), 1U);
}

// The first cup is mixed when the wet-out begins, and lasts its minutes: 47 min 35 s are 47.
// Pieces lie on the roll as the document says, to scale: here 1 mm is 0.169 of the picture.
TEST(JobSheet, DrawsTheCutting) {
  JobSheet of = sheet();
  CutFrom roll;
  roll.cloth = roll.name = "e4";
  roll.width = units::metres(0.76);
  roll.take = units::metres(2.0);
  CutPiece piece;
  piece.n = 7;
  piece.ply = "patch";
  piece.length = units::metres(0.5);
  piece.width = units::metres(0.4);
  piece.along = units::metres(1.5);
  piece.edge = units::metres(0.36);
  roll.pieces = {piece};
  of.cloth.rolls = {roll};
  const std::string text = page(of, System::metric);
  EXPECT_TRUE(has(text,
                  "<rect x=\"1.00\" y=\"1.00\" width=\"338.00\" height=\"128.44\" "
                  "class=\"roll\"/>"));
  EXPECT_TRUE(has(text,
                  "<rect x=\"254.50\" y=\"61.84\" width=\"84.50\" height=\"67.60\" "
                  "class=\"piece\"/>"));
  EXPECT_TRUE(
      has(text, "<b>50.0\u00a0cm x 40.0\u00a0cm</b> at 150.0\u00a0cm along, 36.0\u00a0cm from"));
}

TEST(JobSheet, SaysUntilWhenACupIsGood) {
  JobSheet of = sheet();
  auto& coat = of.plan.plan.coats.front();
  coat.batches.resize(1);
  coat.batches.front().use_within = units::seconds(47 * 60 + 35);
  std::string start;
  for (auto& step : of.schedule->timeline) {
    if (step.id != of.plan.job.id + "/" + coat.id + "/wet") continue;
    step.state = StepState::planned;
    step.start = "2026-06-15T18:45:00Z";
    step.attended_until = "2026-06-15T19:05:00Z";
    start = step.start;
  }
  ASSERT_FALSE(start.empty());
  const std::string text = page(of);
  EXPECT_TRUE(has(text, "<b class=\"deadline\">19:32</b>"));
  EXPECT_TRUE(has(text, "if mixed at 18:45</span>; within 47\u00a0min of mixing in any case"));
  EXPECT_TRUE(has(text, "data-use-s=\"2820\""));
  // Without times only how long.
  of.schedule.reset();
  EXPECT_TRUE(has(page(of), "<b class=\"deadline\">47\u00a0min</b>"));
}

TEST(JobSheet, PoursAreThoseOfTheDay) {
  JobSheet of = sheet();
  const auto& planned = of.plan.plan.coats.front();
  MixedCoat hot{planned, {{.code = "x", .text = "hot day", .subject = planned.id}}};
  hot.need.batches.resize(1);
  hot.need.batches.front().pours = {
      {"part-a", units::Milligrams(123000), units::Milligrams(123000), {}, {}},
      {"part-b", units::Milligrams(54000), units::Milligrams(177000), {}, {}}};
  for (auto& step : of.schedule->timeline) {
    if (step.id.ends_with("/" + planned.id + "/wet")) step.state = StepState::planned;
  }
  EXPECT_FALSE(has(page(of), "177\u00a0g"));
  of.mixed.emplace(planned.id, hot);
  const std::string text = page(of);
  EXPECT_TRUE(has(text, "<td class=\"number reads\">177\u00a0g</td>"));
  EXPECT_TRUE(has(text, "hot day"));
}

TEST(JobSheet, WarnsWhereTheCupsAreForOtherAir) {
  JobSheet of = sheet();
  const auto& coat = of.plan.plan.coats.front();
  for (auto& step : of.schedule->timeline) {
    if (step.id.ends_with("/" + coat.id + "/wet")) step.state = StepState::planned;
  }
  const auto with = [&](double celsius) {
    for (auto& one : of.plan.plan.coats) {
      for (auto& batch : one.batches) batch.air = units::Temperature::celsius(celsius);
    }
    return count(page(of), "with --air before you pour");
  };
  EXPECT_GT(with(5.0), 0U);
  for (auto& air : of.schedule->weather.series) air.room = units::Temperature::celsius(21.0);
  EXPECT_EQ(with(21.0), 0U);
}

TEST(JobSheet, SaysWhatTheWeatherMayDo) {
  JobSheet of = sheet();
  const auto with = [&](double chance) {
    for (auto& step : of.schedule->timeline) {
      if (!step.id.ends_with("/wet")) continue;
      step.state = StepState::planned;
      step.chance_limits_hold = chance;
    }
    return count(page(of), "that the weather keeps its limits: 81 %");
  };
  EXPECT_EQ(with(0.812), of.plan.plan.coats.size());
  EXPECT_EQ(with(0.96), 0U);
}

TEST(JobSheet, WithoutAScheduleSaysSo) {
  JobSheet of = sheet();
  of.schedule.reset();
  of.no_schedule = "There is none.";
  const std::string text = page(of);
  EXPECT_EQ(count(text, "There is none."), 2U);
  EXPECT_EQ(count(text, "class=\"card\""), of.plan.plan.coats.size());
  EXPECT_EQ(count(text, "class=\"chart\""), 0U);
}

TEST(JobSheet, NamesAreNotTwice) {
  const std::string text = page(sheet());
  std::set<std::string> ids;
  const std::regex id("<[a-z0-9]+ [^>]*\\bid=\"([^\"]+)\"");
  for (std::sregex_iterator at(text.begin(), text.end(), id), end; at != end; ++at) {
    EXPECT_TRUE(ids.insert((*at)[1]).second) << (*at)[1];
  }
  EXPECT_GT(ids.size(), 10U);
  // Each field is kept under its own name.
  std::set<std::string> names;
  const std::regex name("<input [^>]*\\bname=\"([^\"]+)\"");
  for (std::sregex_iterator at(text.begin(), text.end(), name), end; at != end; ++at) {
    EXPECT_TRUE(names.insert((*at)[1]).second) << (*at)[1];
  }
  EXPECT_GT(names.size(), 10U);
}

TEST(JobSheet, TellsOneBoardOfTwo) {
  const ScheduleDocument two = sample::schedule_of_two();
  ASSERT_EQ(two.jobs.size(), 2U);
  for (const ScheduledJob& job : two.jobs) {
    const ScheduleDocument one = of_one_job(two, job.id);
    ASSERT_EQ(one.jobs.size(), 1U);
    EXPECT_EQ(one.jobs.front().id, job.id);
    EXPECT_FALSE(one.timeline.empty());
    for (const auto& step : one.timeline) EXPECT_TRUE(step.id.starts_with(job.id + "/"));
    for (const auto& step : one.steps) EXPECT_EQ(step.job, job.id);
  }
}

TEST(JobSheet, StandsForEverySample) {
  for (const ScheduleDocument& each : {sample::schedule(), sample::schedule_of_two(),
                                       sample::schedule_impossible(), sample::schedule_bare()}) {
    if (each.jobs.empty()) continue;
    for (const System system : {System::us, System::metric}) {
      EXPECT_TRUE(has(page(sheet(each), system), "</html>"));
    }
  }
  JobSheet bare = sheet();
  bare.plan = sample::bare_plan();
  bare.schedule.reset();
  EXPECT_TRUE(has(page(bare), "</html>"));
}

// --- windows

TEST(StepWindow, OfACoatIsTheOpenTimeAroundItsStart) {
  ScheduleDocument document = sample::schedule();
  const std::string job = document.jobs.front().id;
  TimelineStep* wet = nullptr;
  for (auto& step : document.timeline) {
    if (step.id.ends_with("/wet")) wet = &step;
  }
  ASSERT_NE(wet, nullptr);
  wet->state = StepState::planned;
  wet->start = "2026-06-20T18:00:00Z";
  const std::string coat = wet->id.substr(job.size() + 1, wet->id.size() - job.size() - 5);
  using schedule::State;
  const auto window = [&](const char* from, const char* to, State ok, const char* why) {
    return CoatWindow{job,
                      coat,
                      "wet",
                      std::string("2026-06-20T") + from + ":00Z",
                      std::string("2026-06-20T") + to + ":00Z",
                      ok,
                      {},
                      why};
  };
  document.windows = {window("10:00", "17:00", State::refuse, "too cold"),
                      window("17:00", "17:30", State::good, "good"),
                      window("17:30", "19:00", State::notice, "humid"),
                      window("19:00", "20:00", State::refuse, "too humid"),
                      window("20:00", "21:00", State::good, "good")};
  const time::Zone utc;
  const ScheduleView view(document, utc);
  const StepWindow found = window_of(view, *view.find(wet->id));
  ASSERT_TRUE(found.from && found.until);
  EXPECT_EQ(*found.from, instant_of("2026-06-20T17:00:00Z"));
  EXPECT_EQ(*found.until, instant_of("2026-06-20T19:00:00Z"));
  EXPECT_EQ(found.before, "too cold");
  EXPECT_EQ(found.after, "too humid");
  EXPECT_EQ(found.notice, "humid");
}

}  // namespace
}  // namespace wetout::report
