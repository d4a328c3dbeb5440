#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "plan_generator.hpp"
#include "resin_sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using units::System;

// The sample's offset is that of the Azores in winter; any zone shows the axis by its own clock.
time::Zone zone() { return *time::Zone::named("Atlantic/Cape_Verde"); }

std::string text(const CureDocument& document, System system = System::metric) {
  std::string out = to_text(document, system, zone());
  EXPECT_EQ(unfit_line(out), "");
  return out;
}
bool says(const std::string& out, std::string_view part) {
  return out.find(part) != std::string::npos;
}
// The lines from "conversion" to the empty line after the marks.
std::vector<std::string> plot(const CureDocument& document) {
  const auto lines = lines_of(text(document));
  const auto from = std::find(lines.begin(), lines.end(), "conversion");
  return {from, std::find(from, lines.end(), "")};
}
// The height of the curve in a column: percent, to the third of a line.
double height(const std::vector<std::string>& lines, std::size_t column) {
  for (std::size_t row = 1; row <= 11; ++row) {
    const char mark = lines[row].size() > column ? lines[row][column] : ' ';
    const double middle = 100.0 - 10.0 * (static_cast<double>(row) - 1.0);
    if (mark == '.') return middle - 10.0 / 3.0;
    if (mark == '-') return middle;
    if (mark == '\'') return middle + 10.0 / 3.0;
  }
  return -1.0;
}

TEST(CurePlot, ShowsTheCurveToAThirdOfALine) {
  const CureDocument document = sample::cure();
  const auto lines = plot(document);
  // The last milestone before full cure is at 28 h, the next round tick at 30 h.
  const double end_h = 30.0;
  int shown = 0;
  for (std::size_t column = 7; column < 7 + 64; ++column) {
    const double hours = end_h * static_cast<double>(column - 6) / 64.0;
    const double share = 95.0 * (1.0 - std::exp(-hours / 9.0));
    const double at = height(lines, column);
    ASSERT_GE(at, 0.0) << "column " << column;
    EXPECT_NEAR(at, share, 10.0 / 6.0 + 1.2) << "column " << column;
    ++shown;
  }
  EXPECT_EQ(shown, 64);
}

TEST(CurePlot, IsPlainAscii) {
  for (const std::string& line : plot(sample::cure())) {
    for (const char ch : line) EXPECT_TRUE(ch >= ' ' && ch <= '~') << line;
  }
}

TEST(CurePlot, HasHoursAndTheClockUnderIt) {
  const auto lines = plot(sample::cure());
  EXPECT_EQ(lines[12].substr(0, 9), "      +--");
  EXPECT_EQ(lines[13],
            "      0 h          6 h          12 h        18 h         24 h         30 h");
  EXPECT_EQ(lines[14],
            "      Sat 18:00    Sun 00:00    06:00       12:00        18:00        Mon 00:00");
  CureDocument without = sample::cure();
  without.start.reset();
  EXPECT_FALSE(says(plot(without)[14], ":"));
}

TEST(CurePlot, PutsEachMilestoneUnderItsHour) {
  const auto lines = plot(sample::cure());
  // Two at one time stand one under the other; what comes after the end is at the end.
  EXPECT_EQ(lines[15], "                        G              T                          r   F>");
  EXPECT_EQ(lines[16], "                        R");
}

TEST(CurePlot, IsDrawnForMinutesAndForWeeks) {
  for (const double factor : {0.01, 0.1, 1.0, 5.0, 12.0}) {
    CureDocument document = sample::cure();
    for (CureMilestone& m : document.milestones) {
      if (m.after) m.after = *m.after * factor;
    }
    for (CurvePoint& point : document.curve) point.after = point.after * factor;
    const auto lines = plot(document);
    EXPECT_GE(lines.size(), 16U);
    EXPECT_LT(height(lines, 7), 10.0) << "begins at nothing";
    EXPECT_GE(height(lines, 7), 0.0);
  }
}

TEST(CureText, SaysWhereTheAirComesFrom) {
  const std::string out = text(sample::cure());
  EXPECT_TRUE(says(out, "a film spread Sat 13 Jun 18:00"));
  EXPECT_TRUE(says(out, "unheated room, forecast.csv"));
  EXPECT_TRUE(says(out, "into a warm box of 40 °C after 24 h; the core takes 50 °C"));
  EXPECT_TRUE(says(text(sample::cure_of_polyester()), "air 20 °C"));
}

TEST(CureText, ListsTheMilestones) {
  const std::string out = text(sample::cure());
  EXPECT_TRUE(says(
      out, "G gel, trim from      8 h 24 min    Sun 14 Jun 02:24     18 °C    58 %    7.7 °C\n"))
      << out;
  EXPECT_TRUE(says(out, "T tack-free          15 h 36 min*"));
  EXPECT_TRUE(says(out, "* colder than the data sheet allows: reckoned beyond it"));
  EXPECT_TRUE(says(out, "F full cure         12 days 12 h~"));
  EXPECT_TRUE(says(out, "~ after the end of the weather"));
  EXPECT_TRUE(says(out, "S sandable            not reached in this air; 21 °C would do it"));
}

TEST(CureText, SaysWhenNothingWouldReachAMilestone) {
  CureDocument document = sample::cure();
  document.milestones.back().would_do.reset();
  EXPECT_TRUE(says(text(document), "and no constant temperature"));
  document.milestones.back().extrapolated = true;
  EXPECT_TRUE(says(text(document), "not claimed: colder than the data sheet allows"));
}

TEST(CureText, ShowsHowTheSheetIsMet) {
  const std::string out = text(sample::cure());
  EXPECT_TRUE(says(out, "activation energy 54.1 kJ/mol"));
  EXPECT_TRUE(says(out, "The sheet's temperatures alone say 48.5 kJ/mol."));
  EXPECT_TRUE(says(out, "5 h         5 h  fitted to it"));
  EXPECT_TRUE(says(out, "8 h  8 h 27 min  6 % later"));
  EXPECT_TRUE(says(out, "1 h      24 min  not met\n"));
  EXPECT_TRUE(says(out, "* cup times are rough"));
  EXPECT_FALSE(says(out, "in the table")) << "what the tables say is not said again";
}

TEST(CureText, OfAPolyesterHasNoConversion) {
  const std::string out = text(sample::cure_of_polyester());
  EXPECT_FALSE(says(out, "conversion"));
  EXPECT_FALSE(says(out, "Tg"));
  EXPECT_TRUE(says(out, "with 1.4 % catalyst"));
  EXPECT_TRUE(says(out, "G gel, trim from          31 min"));
}

CureMilestone any_milestone() {
  CureMilestone m;
  m.name = *rc::gen::elementOf(
      std::vector<resin::Milestone>(resin::milestones.begin(), resin::milestones.end()));
  m.reached = *rc::gen::arbitrary<bool>();
  if (m.reached) m.after = any::minutes();
  m.time = any::maybe([] { return std::string("2026-06-14T02:24:00-01:00"); });
  m.conversion = any::maybe([] { return any::number(0, 1); });
  m.tg = any::maybe(any::air);
  m.air = any::maybe(any::air);
  m.extrapolated = *rc::gen::arbitrary<bool>();
  m.beyond_air = *rc::gen::arbitrary<bool>();
  m.would_do = any::maybe(any::air);
  return m;
}

RC_GTEST_PROP(CureText, KeepsToThePageWhateverIsOnIt, ()) {
  CureDocument document = sample::cure();
  document.resin = any::text();
  document.name = any::text();
  if (*rc::gen::arbitrary<bool>()) document.start.reset();
  document.air = any::maybe(any::air);
  document.weather->source = any::text();
  if (*rc::gen::arbitrary<bool>()) document.weather.reset();
  document.dose = any::maybe([] { return any::number(0.001, 0.1); });
  document.milestones = any::some(8, any_milestone);
  document.curve.clear();
  units::Duration after;
  for (int n = *rc::gen::inRange(0, 30); n > 0; --n) {
    document.curve.push_back({after, any::air(), any::number(0, 1), any::air()});
    after = after + units::minutes(1.0) + any::minutes();
  }
  document.calibration.residuals = any::some(4, [] {
    return SheetTimeMet{any::text(),    any::maybe(any::mass),
                        any::air(),     units::minutes(any::number(1, 20000)),
                        any::minutes(), *rc::gen::arbitrary<bool>()};
  });
  document.notices = any::some(2, any::notice);
  for (const System system : {System::us, System::metric}) {
    RC_ASSERT(unfit_line(to_text(document, system, zone())) == "");
  }
}

}  // namespace
}  // namespace wetout::report
