#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>

#include "text_checks.hpp"
#include "weather_chart.hpp"
#include "weather_sample.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::report {
namespace {

using schedule::Limit;
using schedule::State;
using units::System;

constexpr std::size_t label = 8;

std::string text(const WeatherDocument& document, System system = System::metric,
                 const time::Zone& zone = {}) {
  std::string out = to_text(document, system, zone);
  EXPECT_EQ(unfit_line(out), "");
  return out;
}
bool says(const std::string& out, std::string_view part) {
  return out.find(part) != std::string::npos;
}
// The lines of one day, from its title to the empty line.
std::vector<std::string> day(const std::string& out, std::string_view title) {
  const auto lines = lines_of(out);
  const auto from = std::find_if(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.starts_with(title) && line.find(":") == std::string::npos;
  });
  return {from, std::find(from, lines.end(), "")};
}
std::string line_of(const std::vector<std::string>& lines, std::string_view begins) {
  const auto found = std::find_if(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.starts_with(begins);
  });
  return found == lines.end() ? "" : *found;
}

TEST(WeatherChart, LineOfStartsShowsTheWorstOfEachTwentyMinutes) {
  const std::string starts = line_of(day(text(sample::weather()), "Sat 24 Oct"), "start");
  // Begins at 7:15; good from 9:05, whose cell begins with a refusal; the notice from 12:00 to
  // 13:35 is followed by damp, warm, the gap, and damp again.
  const std::string expected = std::string(21, ' ') + std::string(7, 'r') + std::string(8, '=') +
                               std::string(4, '~') + std::string(5, 'h') + std::string(4, 'w') +
                               std::string(20, '?') + std::string(3, 'd');
  EXPECT_EQ(starts, "start   " + expected);
}

TEST(WeatherChart, SecondDayGoesOnWithTheWindowOfTheFirst) {
  const std::string starts = line_of(day(text(sample::weather()), "Sun 25 Oct"), "start");
  EXPECT_EQ(starts, "start   " + std::string(12, 'd') + std::string(6, 'c') + std::string(3, '~') +
                        std::string(7, '=') + std::string(2, 'd') + std::string(3, 'f') +
                        std::string(39, 'e'));
}

TEST(WeatherChart, EachLetterIsSaidInWordsWithItsHours) {
  const std::string out = text(sample::weather());
  EXPECT_TRUE(
      says(out, "   r    07:15-09:05 core warming: by up to 2.4 °C before gel, limit 1 °C"));
  EXPECT_TRUE(says(out, "   =    09:05-12:00 good"));
  EXPECT_TRUE(says(out, "   ~    12:00-13:35 humid: up to 61 %, 66 % with the guard,"));
  EXPECT_TRUE(says(out, "notice from 60 %"));
  EXPECT_TRUE(
      says(out, "   h    13:35-15:00 too humid: up to 79 %, 83 % with the guard, limit 80 %"));
  EXPECT_TRUE(says(out, "   ?    16:10-23:00 weather gap: "));
  EXPECT_TRUE(says(out, "   f    10:00-11:00 unvented heater: "));
  EXPECT_TRUE(says(out, "   e    11:00-24:00 weather ends: "));
}

TEST(WeatherChart, OneReasonStandsOnceADayWithItsWorstStart) {
  const std::string out = text(sample::weather());
  // Before midnight the window's value of that day.
  EXPECT_TRUE(says(out, "   d    23:00-24:00 too near the dew point: margin down to 3.9 °C,"));
  EXPECT_TRUE(says(out,
                   "   d    00:00-04:00, 09:20-10:00 too near the dew point: margin down to "
                   "2.1 °C,\n        0.9 °C with the guard, limit 3 °C"));
}

TEST(WeatherChart, BrokenLimitNeverLooksKept) {
  EXPECT_TRUE(says(text(sample::weather()),
                   "   w    15:00-16:10 too warm: up to 33.7 °C, 34.02 °C with the guard,"));
  EXPECT_TRUE(says(text(sample::weather(), System::us), "93.24 °F with the guard"));
}

TEST(WeatherChart, NumbersStandUnderTheirHour) {
  const auto lines = day(text(sample::weather()), "Sun 25 Oct");
  const std::string hours = line_of(lines, "        0"), room = line_of(lines, "room");
  for (int hour = 0; hour < 24; hour += 2) {
    const std::size_t column = label + 3 * static_cast<std::size_t>(hour);
    EXPECT_EQ(hours.substr(column, std::to_string(hour).size()), std::to_string(hour));
    const double expected = 14 + 4 * std::cos((hour - 15) * 0.2617994);
    // "°" takes two bytes.
    EXPECT_EQ(std::stoi(room.substr(column + 1, 3)), std::lround(expected)) << hour;
  }
  // What lies in a gap is left empty.
  const std::string first = line_of(day(text(sample::weather()), "Sat 24 Oct"), "room");
  EXPECT_EQ(first.size(), label + 1 + 3 * 18 + 2);
}

TEST(WeatherText, SaysWhatItIsAbout) {
  const std::string out = text(sample::weather());
  EXPECT_TRUE(says(out, "slow is the shop's first resin"));
  EXPECT_TRUE(says(out, "Next good start: Sat 24 Oct 09:05, until Sat 24 Oct 12:00."));
  EXPECT_TRUE(says(out, "heated room, lag 2 h 30 min, at least 12 °C"));
  EXPECT_TRUE(says(out, "dehumidified to 65 %"));
  EXPECT_TRUE(says(out, "XPS core 60 mm thick"));
  EXPECT_TRUE(says(out, "wind to 5 m/s, sun to 410 W/m²"));
  EXPECT_TRUE(says(text(sample::weather(), System::us), "wind to 10 mph"));
  EXPECT_TRUE(says(out, "guard normal: forecast moved by 0.6 °C to 1 °C"));
  EXPECT_FALSE(says(out, "climate, not a forecast"));
}

TEST(WeatherText, ClimateIsSaidToBeOne) {
  const std::string out = text(sample::bare_weather());
  EXPECT_TRUE(says(out, "A typical or past year on these dates: a climate, not a forecast."));
  EXPECT_FALSE(says(out, "first resin"));
  EXPECT_FALSE(says(out, "margin"));
  EXPECT_TRUE(says(out, "outdoors in the shade"));
}

TEST(WeatherText, NoStartIsSaidSo) {
  WeatherDocument document = sample::bare_weather();
  document.windows.front().ok = State::refuse;
  document.windows.front().limit = Limit::cold;
  document.windows.front().reason = "too cold";
  EXPECT_TRUE(says(text(document), "No start in this time."));
  document.windows.front().ok = State::notice;
  EXPECT_TRUE(says(text(document), "No good start in this time, but some with a notice."));
}

// Lisbon puts its clocks back on 25 October at 2:00, on 29 March forward at 1:00.
TEST(WeatherChart, DaysOfChangedClocksHaveTheirHours) {
  const time::Zone zone = *time::Zone::named("Europe/Lisbon");
  WeatherDocument document = sample::bare_weather();
  const auto chart = [&](std::string from, std::string to) {
    document.windows.front().from = document.from = std::move(from);
    document.windows.front().to = document.to = std::move(to);
    document.series.clear();
    return chart_days(document, zone);
  };
  auto days = chart("2026-10-24T23:00:00Z", "2026-10-26T00:00:00Z");
  ASSERT_EQ(days.size(), 1U);
  EXPECT_EQ(days[0].starts, std::string(chart_cells, '='));
  ASSERT_EQ(days[0].reasons.size(), 1U);
  EXPECT_EQ(days[0].reasons[0].spans[0].to, 24 * 60);
  days = chart("2026-03-29T00:00:00Z", "2026-03-29T23:00:00Z");
  ASSERT_EQ(days.size(), 1U);
  EXPECT_EQ(days[0].starts, "===   " + std::string(chart_cells - 6, '='));
}

int rank(State state) { return static_cast<int>(state); }

// Against the overlap of windows and cells.
RC_GTEST_PROP(WeatherChart, CellsHoldTheWorstStateThatReachesIntoThem, ()) {
  WeatherDocument document = sample::bare_weather();
  document.series.clear();
  document.windows.clear();
  const time::Instant first = *time::read_instant("2026-06-13T00:00:00Z", {});
  const auto at = [&](int step) {
    return time::rfc3339(first + std::chrono::minutes(5 * step), time::Zone());
  };
  struct Span {
    int from, to;
    State state;
  };
  std::vector<Span> spans;
  int now = *rc::gen::inRange(0, 200);
  const int begin = now;
  const int count = *rc::gen::inRange(1, 12);
  for (int i = 0; i < count; ++i) {
    const int next = now + *rc::gen::inRange(1, 150);
    const State state = *rc::gen::element(State::good, State::notice, State::refuse);
    std::optional<Limit> limit;
    if (state != State::good) limit = Limit::cold;
    document.windows.push_back({at(now), at(next), state, limit, "x", {}});
    spans.push_back({now, next, state});
    now = next;
  }
  std::map<int, int> worst;  // by cell, from the first midnight
  for (const Span& span : spans) {
    for (int cell = span.from / 4; cell * 4 < span.to; ++cell) {
      const auto [known, fresh] = worst.try_emplace(cell, rank(span.state));
      if (!fresh) known->second = std::max(known->second, rank(span.state));
    }
  }
  const auto days = chart_days(document, time::Zone());
  const int first_day = begin / 288;
  int cell = first_day * static_cast<int>(chart_cells);
  int minutes = 0;
  for (const ChartDay& one : days) {
    for (const char sign : one.starts) {
      const auto found = worst.find(cell++);
      const char expected = found == worst.end() ? ' ' : "=~c"[found->second];
      RC_ASSERT(sign == expected);
    }
    for (const ChartReason& reason : one.reasons) {
      for (const ChartSpan& span : reason.spans) minutes += span.to - span.from;
    }
  }
  RC_ASSERT(minutes == 5 * (now - begin));
}

}  // namespace
}  // namespace wetout::report
