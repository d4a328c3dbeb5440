#include "wetout/schedule/hours.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>

namespace wetout::schedule {
namespace {

using std::chrono::minutes;
using time::Instant;

Instant at(const char* rfc3339) { return *time::read_instant(rfc3339, time::Zone()); }
time::Zone zone(const char* name) { return *time::Zone::named(name); }

WeekHours every_day(int from_min, int until_min) {
  WeekHours hours;
  for (auto& day : hours.days) day = {{minutes(from_min), minutes(until_min)}};
  return hours;
}

long worked_minutes(const std::vector<WorkingSpan>& spans) {
  long sum = 0;
  for (const WorkingSpan& span : spans) sum += (span.until - span.from).count() / 60;
  return sum;
}

TEST(WorkingSpans, AreTheWeekdaysOfTheZone) {
  WeekHours hours;
  hours.days[0] = {{minutes(18 * 60), minutes(22 * 60)}};                                // Monday
  hours.days[5] = {{minutes(8 * 60), minutes(12 * 60)}, {minutes(840), minutes(1080)}};  // Saturday
  // 2026-06-15 is a Monday; Los Angeles is seven hours behind.
  const auto spans = working_spans(hours, zone("America/Los_Angeles"), at("2026-06-14T12:00:00Z"),
                                   at("2026-06-21T12:00:00Z"));
  ASSERT_EQ(spans.size(), 3u);
  EXPECT_EQ(spans[0], (WorkingSpan{at("2026-06-16T01:00:00Z"), at("2026-06-16T05:00:00Z")}));
  EXPECT_EQ(spans[1], (WorkingSpan{at("2026-06-20T15:00:00Z"), at("2026-06-20T19:00:00Z")}));
  EXPECT_EQ(spans[2], (WorkingSpan{at("2026-06-20T21:00:00Z"), at("2026-06-21T01:00:00Z")}));
}

TEST(WorkingSpans, DaysOffAreOff) {
  WeekHours hours = every_day(480, 960);
  hours.off = {
      {time::Date(std::chrono::year(2026) / 6 / 16), time::Date(std::chrono::year(2026) / 6 / 17)}};
  const auto spans =
      working_spans(hours, time::Zone(), at("2026-06-15T00:00:00Z"), at("2026-06-19T00:00:00Z"));
  ASSERT_EQ(spans.size(), 2u);
  EXPECT_EQ(spans[1].from, at("2026-06-18T08:00:00Z"));
}

// Clocks in Berlin went forward at 1:00 UTC on 29 March 2026, over 2:00 to 3:00, and go back at
// 1:00 UTC on 25 October, so that 2:00 to 3:00 comes twice (IANA time zone database).
TEST(WorkingSpans, HaveTheLengthTheyReallyHaveWhenClocksChange) {
  const auto minutes_of = [](int from_min, int until_min, const char* day) {
    const Instant midnight = at((std::string(day) + "T00:00:00+01:00").c_str());
    return worked_minutes(working_spans(every_day(from_min, until_min), zone("Europe/Berlin"),
                                        midnight, midnight + std::chrono::hours(22)));
  };
  EXPECT_EQ(minutes_of(60, 240, "2026-03-29"), 120);   // 1:00-4:00, an hour is skipped
  EXPECT_EQ(minutes_of(150, 240, "2026-03-29"), 60);   // from 2:30, which does not exist
  EXPECT_EQ(minutes_of(60, 150, "2026-03-29"), 60);    // until 2:30
  EXPECT_EQ(minutes_of(130, 170, "2026-03-29"), 0);    // all of it skipped
  EXPECT_EQ(minutes_of(60, 240, "2026-10-25"), 240);   // 1:00-4:00, an hour comes twice
  EXPECT_EQ(minutes_of(130, 170, "2026-10-25"), 100);  // 2:10 the first time to 2:50 the second
}

TEST(WorkingSpans, MidnightDoesNotPartThem) {
  WeekHours hours = every_day(0, 24 * 60);
  const auto spans = working_spans(hours, zone("Europe/Berlin"), at("2026-03-27T10:00:00Z"),
                                   at("2026-03-31T10:00:00Z"));
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_EQ(spans[0], (WorkingSpan{at("2026-03-27T10:00:00Z"), at("2026-03-31T10:00:00Z")}));
}

RC_GTEST_PROP(WorkingSpans, AreInOrderApartAndInside, ()) {
  WeekHours hours;
  for (auto& day : hours.days) {
    int from = 0;
    for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
      from += *rc::gen::inRange(0, 300);
      const int until = std::min(1440, from + *rc::gen::inRange(1, 300));
      if (from < until) day.push_back({minutes(from), minutes(until)});
      from = until;
    }
  }
  const Instant from = at("2026-03-01T00:00:00Z") + minutes(*rc::gen::inRange(0, 60 * 24 * 300));
  const Instant until = from + minutes(*rc::gen::inRange(1, 60 * 24 * 40));
  const auto name = *rc::gen::element("UTC", "Europe/Berlin", "America/New_York",
                                      "Australia/Lord_Howe", "Atlantic/Azores");
  const auto spans = working_spans(hours, zone(name), from, until);
  Instant last = from - minutes(1);
  for (const WorkingSpan& span : spans) {
    RC_ASSERT(span.from > last);
    RC_ASSERT(span.from >= from);
    RC_ASSERT(span.from < span.until);
    RC_ASSERT(span.until <= until);
    last = span.until;
  }
}

}  // namespace
}  // namespace wetout::schedule
