#include <gtest/gtest.h>

#include <algorithm>

#include "schedule_sample.hpp"
#include "schedule_sample_parts.hpp"
#include "text_checks.hpp"
#include "wetout/time/print.hpp"

namespace wetout::report {
namespace {

using units::System;

constexpr std::size_t label = 16;  // columns before the bars

std::string text_of(const ScheduleDocument& document, System system = System::metric,
                    const time::Zone& zone = {}) {
  std::string out = to_text(document, system, zone);
  EXPECT_EQ(unfit_line(out), "");
  return out;
}
bool says(const std::string& out, std::string_view part) {
  return out.find(part) != std::string::npos;
}
// With its line breaks and indents as single spaces.
std::string flowing(const std::string& out) {
  std::string text;
  for (const char c : out) {
    const char each = c == '\n' ? ' ' : c;
    if (each != ' ' || text.empty() || text.back() != ' ') text += each;
  }
  return text;
}
// The lines of one day, up to the next one.
std::vector<std::string> day(const std::string& out, std::string_view date) {
  const auto lines = lines_of(out);
  auto from = lines.begin();
  while (from != lines.end() &&
         !(from->starts_with(date) && from != lines.begin() && std::prev(from)->empty())) {
    ++from;
  }
  if (from == lines.end()) return {};
  auto to = std::next(from);
  const auto next_block = [&](const std::string& line) {
    return std::next(from) != to && std::prev(to)->empty() && !line.empty() && line[0] != ' ' &&
           !(line[0] >= '0' && line[0] <= '9');
  };
  while (to != lines.end() && !next_block(*to)) ++to;
  return {from, to};
}
std::string line_of(const std::vector<std::string>& lines, std::string_view begins) {
  const auto found = std::find_if(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.starts_with(begins);
  });
  return found == lines.end() ? "" : *found;
}
// The cells of a bar, without what stands behind it.
std::string bar(const std::vector<std::string>& lines, std::string_view name) {
  const std::string line = line_of(lines, name);
  return line.size() <= label ? "" : line.substr(label, 48);
}

std::vector<ScheduleDocument> samples() {
  return {sample::schedule(), sample::schedule_of_two(), sample::schedule_impossible(),
          sample::schedule_bare()};
}

TEST(ScheduleText, FitsThePageAndReadsTheSameOutOfTheLog) {
  for (const ScheduleDocument& document : samples()) {
    for (const System system : {System::us, System::metric}) {
      const std::string out = text_of(document, system);
      EXPECT_EQ(out, text_of(*read_schedule(to_json(document)), system));
      EXPECT_FALSE(says(out, "  \n"));
    }
  }
}

TEST(ScheduleText, ShowsEveryStepOnItsDayAtItsTime) {
  for (const ScheduleDocument& document : {sample::schedule(), sample::schedule_of_two()}) {
    const std::string out = text_of(document);
    for (const TimelineStep& step : document.timeline) {
      const time::Instant start = *time::read_instant(step.start, time::Zone());
      const std::string wall = time::print_wall(start, time::Zone());
      const auto lines = day(out, wall.substr(0, wall.size() - 11));
      const std::string name = step.id.substr(step.id.find('/') + 1);
      const std::string clock = time::clock_time(start, time::Zone());
      const bool watch = name.find("/watch") != std::string::npos;
      EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return says(line, clock) && (watch ? says(line, "look") : true);
      })) << step.id;
      if (watch) continue;
      EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return says(line, name);
      })) << step.id;
    }
  }
}

TEST(ScheduleText, BeginsWithTheNextStep) {
  ScheduleDocument document = sample::schedule();
  const auto fifth = lines_of(text_of(document))[4];
  EXPECT_EQ(fifth, "NEXT      Mon 15 Jun 18:00  Prepare bottom lam");
  document.made = sample::text(sample::june(15, 18, 5));
  EXPECT_TRUE(says(text_of(document), "NOW       Mon 15 Jun 18:00  Prepare bottom lam"));
  document.made = sample::text(sample::june(15, 18, 50));
  EXPECT_TRUE(says(text_of(document), "NEXT      Mon 15 Jun 19:00  Watch bottom lam"));
  for (TimelineStep& step : document.timeline) step.state = StepState::done;
  EXPECT_TRUE(says(text_of(document), "NEXT      nothing: every step is done"));
}

TEST(ScheduleText, TellsEachPersonTheNextStep) {
  const std::string out = text_of(sample::schedule_of_two());
  EXPECT_TRUE(says(out, "NEXT      ana: Sat 13 Jun 14:00  pico-5-4: Bring board"));
  EXPECT_TRUE(says(out, "NEXT      ben: Mon 15 Jun 17:40  faial-9-0: Prepare bottom lam"));
}

TEST(ScheduleText, SaysWhenItIsFinishedAndRidden) {
  const std::string out = text_of(sample::schedule());
  EXPECT_TRUE(says(out, "Finish    Wed 24 Jun 21:00, 7 visits, 9 h 30 min of work to come"));
  EXPECT_TRUE(says(out, "Ride      from Wed 1 Jul 16:55 if the weather stays as on its last day"));
  EXPECT_TRUE(says(text_of(sample::schedule_bare()), "Ride      not known"));
  const std::string two = text_of(sample::schedule_of_two());
  EXPECT_TRUE(says(two, "faial-9-0: finish Mon 22 Jun 19:30, ride from Tue 30 Jun 11:00"));
}

TEST(ScheduleText, BarsStandUnderTheirHours) {
  const std::string out = text_of(sample::schedule());
  const auto monday = day(out, "Mon 15 Jun");
  EXPECT_EQ(line_of(monday, "                0"),
            std::string(label, ' ') + "0   2   4   6   8   10  12  14  16  18  20  22");
  // Worked 18:00 to 18:45, looked at 19:00, 19:15 and 19:45, free until 22:00.
  EXPECT_EQ(bar(monday, "work "), std::string(36, ' ') + "####____");
  // Wet from 18:25 to the gel at 00:57 of the next day.
  EXPECT_EQ(bar(monday, "bottom-lam "), std::string(36, ' ') + std::string(12, '~'));
  const auto saturday = day(out, "Sat 20 Jun");
  // Gel 21:42, tack-free after midnight: a cell shows the least cured.
  EXPECT_EQ(line_of(saturday, "bottom-hotcoat "),
            "bottom-hotcoat  " + std::string(30, ' ') + std::string(14, '~') + "==== gel 21:42");
  EXPECT_EQ(bar(saturday, "work "), std::string(16, ' ') + std::string(9, '_') + "   ######____");
  // Sandable at 8:15: the film stops to matter.
  EXPECT_EQ(line_of(day(out, "Wed 17 Jun"), "bottom-lam "),
            "bottom-lam      " + std::string(17, '.') + " sandable 08:15");
}

TEST(ScheduleText, NumbersAreThoseOfTheRoom) {
  const auto lines = day(text_of(sample::schedule()), "Mon 15 Jun");
  const std::string room = line_of(lines, "room"), margin = line_of(lines, "margin");
  for (int hour = 0; hour < 24; hour += 2) {
    const auto column = label + 1 + 2 * static_cast<std::size_t>(hour);  // "°" takes two bytes
    const double air = sample::room_at(sample::june(15, hour));
    EXPECT_EQ(std::stoi(room.substr(column, 4)), std::lround(air)) << hour;
    // The core follows the room; at its slowest hours they are alike.
    EXPECT_NEAR(std::stoi(margin.substr(column, 4)), air - sample::dew_point_c, 1.0) << hour;
  }
  const std::string bare = text_of(sample::schedule_bare());
  EXPECT_FALSE(says(bare, "margin"));
  EXPECT_FALSE(says(bare, "Margin"));
}

TEST(ScheduleText, FilmTellsItsMilestonesDayByDay) {
  const std::string out = text_of(sample::schedule());
  EXPECT_TRUE(says(flowing(out),
                   "gel Tue 00:57, trim until 03:31, tack-free 04:27, handle 04:51, "
                   "recoat 00:57 to 13:55, sandable Wed 08:15"));
  // No laps to cut: no window to cut them in.
  EXPECT_TRUE(says(flowing(out), "gel Thu 02:02, tack-free 05:32"));
  EXPECT_TRUE(says(out, "Tue 16 Jun   no work; bottom-lam gel 00:57, tack-free 04:27, handle"));
  ScheduleDocument late = sample::schedule();
  for (TimelineStep& step : late.timeline) {
    for (FilmMilestone& each : step.milestones) each.beyond_forecast = each.name == "sandable";
  }
  EXPECT_TRUE(says(flowing(text_of(late)), "sandable Wed 08:15 (past the forecast)"));
}

TEST(ScheduleText, LooksShareALineUnderTheirWet) {
  const std::string out = text_of(sample::schedule());
  EXPECT_TRUE(says(out, "look 19:00, 19:15, 19:45: drips, dry cloth, bubbles, lifted edges\n"));
  EXPECT_FALSE(says(out, "watch-15"));
  // After a wet that is not told they stand by themselves.
  ScheduleDocument document = sample::schedule();
  std::erase_if(document.timeline,
                [](const TimelineStep& step) { return step.id == "pico-5-4/deck-lam/wet"; });
  EXPECT_TRUE(says(text_of(document), "Watch deck lam 20:05, 20:20, 20:50: drips"));
}

TEST(ScheduleText, StatesAreWords) {
  ScheduleDocument document = sample::schedule();
  EXPECT_TRUE(says(text_of(document), "19:20-19:50  WET OUT DECK LAM (fixed)"));
  EXPECT_TRUE(says(text_of(document), "Sat 13 Jun   done: 14:00 acclimatise, 14:10 spackle"));
  document.made = sample::text(sample::june(15, 19, 5));
  for (TimelineStep& step : document.timeline) {
    if (step.start < document.made) step.state = StepState::done;
  }
  const std::string out = text_of(document);
  EXPECT_TRUE(says(out, "18:25-18:45  WET OUT BOTTOM LAM (done)"));
  EXPECT_TRUE(says(out, "look 19:00 (done), 19:15, 19:45"));
  // Days later the film still cures.
  document.made = sample::text(sample::june(16, 10));
  for (TimelineStep& step : document.timeline) {
    if (step.start < document.made) step.state = StepState::done;
  }
  EXPECT_TRUE(says(flowing(text_of(document)), "bottom-lam: gel Tue 00:57"));
}

TEST(ScheduleText, TightestIsMeasuredByItsScale) {
  // 0.35 of 3 K of margin is tighter than 0.07 of 0.10 of humidity.
  const std::string out = text_of(sample::schedule());
  EXPECT_TRUE(says(flowing(out),
                   "tightest: dew margin 0.3 °C to spare Tue 04:10, breaks if the "
                   "room is 1.1 °C colder"));
  EXPECT_TRUE(says(flowing(out),
                   "tightest: humidity 2 % to spare 15:20, breaks if the room is "
                   "0.6 °C colder"));
  EXPECT_TRUE(says(flowing(text_of(sample::schedule(), System::us)),
                   "Tightest deck-lam/wet: dew margin 0.1 °F to spare Thu 18 Jun 04:00"));
  ScheduleDocument broken = sample::schedule();
  for (TimelineStep& step : broken.timeline) {
    for (StepSlack& slack : step.slack) slack.slack = -1.0;
  }
  EXPECT_TRUE(says(flowing(text_of(broken)), "core warming 1 °C beyond its limit"));
}

TEST(ScheduleText, WindowsThatCloseAreEventsOfTheirDay) {
  const std::string out = text_of(sample::schedule_of_two());
  const auto tuesday = day(out, "Tue 16 Jun");
  EXPECT_EQ(line_of(tuesday, "03:36"), "03:36        trim window of faial-9-0/bottom-lam closes;");
  EXPECT_TRUE(says(flowing(out), "faial-9-0/bottom-lam/trim is planned for 02:00"));
  EXPECT_TRUE(says(flowing(out), "tightest: 1 h 35 min before the"));
  EXPECT_TRUE(says(flowing(out), "is still open: 62 %"));
  // Of an option that was not chosen nothing closes.
  ScheduleDocument window = sample::schedule();
  window.choices.push_back(
      {"pico-5-4/bottom-hotcoat/ground", {"window", "scuffed"}, "scuffed", ""});
  EXPECT_FALSE(says(text_of(window), "window of bottom-hotcoat closes"));
  window.choices.back().chosen = "window";
  EXPECT_TRUE(says(flowing(text_of(window)),
                   "Sun 21 Jun no work; bottom-hotcoat tack-free 01:12, handle 01:36 10:50 recoat "
                   "window of bottom-hotcoat closes; deck-hotcoat/wet is planned for Mon 19:15"));
}

TEST(ScheduleText, BoardsInterleaveAndPeopleAreNamed) {
  const auto monday = day(text_of(sample::schedule_of_two()), "Mon 15 Jun");
  std::vector<std::string> order;
  for (const std::string& line : monday) {
    if (line.size() > 5 && line[2] == ':' && line[5] == '-') order.push_back(line.substr(13, 9));
  }
  EXPECT_EQ(order, (std::vector<std::string>{"faial-9-0", "pico-5-4:", "pico-5-4:", "faial-9-0"}));
  EXPECT_NE(line_of(monday, "18:25-18:45  pico-5-4: WET OUT BOTTOM LAM, ana"), "");
  EXPECT_NE(line_of(monday, "ben "), "");
}

TEST(ScheduleText, SaysWhatIsProved) {
  EXPECT_TRUE(says(flowing(text_of(sample::schedule())),
                   "Proved: no schedule of this model is better. Compared were the finish, then "
                   "room to spare, then visits."));
  const std::string two = flowing(text_of(sample::schedule_of_two()));
  EXPECT_TRUE(says(two,
                   "Not proved the best. Compared were room to spare, then the finish, then "
                   "visits. The time for the search was up. Nothing finishes in working "
                   "hours before those of Wed 24 Jun 18:00."));
  EXPECT_TRUE(says(two,
                   "at most 4.6 % above what is possible. The bound leaves out: people, "
                   "clean and dusty hours of the room."));
}

TEST(ScheduleText, ShowsWhatElseThereIsAndWhatMoved) {
  const std::string out = flowing(text_of(sample::schedule()));
  EXPECT_TRUE(says(out,
                   "deck lam on Fri 19 Jun instead: finished Wed 24 Jun 21:00, 4 tight items "
                   "instead of 3, 6 visits instead of 7; deck-lam/wet Fri 19 Jun 18:40"));
  EXPECT_TRUE(says(out, "Since schedule 3"));
  EXPECT_TRUE(says(out, "- fixed: deck-lam/wet Wed 17 Jun 18:40 -> 19:20"));
  EXPECT_TRUE(says(out,
                   "- laps are ground instead: bottom-lam/trim (was Mon 15 Jun 21:40), "
                   "bottom-lam/feather Wed 17 Jun 18:00"));
  ScheduleDocument document = sample::schedule();
  document.changed.clear();
  EXPECT_TRUE(says(text_of(document), "Nothing has moved."));
  for (int i = 0; i < 20; ++i) {
    document.changed.push_back({"pico-5-4/deck-lam/wet", document.made, {}, "not needed any more"});
  }
  EXPECT_TRUE(says(text_of(document), "Further steps moved: --json has them all."));
}

TEST(ScheduleText, WindowsLeaveOutNightsAndWhatMustWait) {
  const std::string out = text_of(sample::schedule());
  EXPECT_TRUE(says(out,
                   "deck-lam        Wed 17 Jun  18:50-21:00 good (planned 19:20), 21:00-22:00 "
                   "humid\n"
                   "                Fri 19 Jun  18:00-20:40 good, 20:40-22:00 too near the "
                   "dew point\n"));
  EXPECT_FALSE(says(out, "outside working hours"));
  EXPECT_TRUE(says(out, "Further days: --json has them all."));
}

TEST(ScheduleText, WhatDoesNotFitIsToldWithWhatToType) {
  const std::string out = text_of(sample::schedule_impossible());
  EXPECT_TRUE(says(out, "NOTHING FITS from Sat 13 Jun 13:40 until Sat 27 Jun 00:00."));
  EXPECT_TRUE(says(out,
                   "Smallest  Work until 22:45 on Mon 15 Jun, 45 min longer\n"
                   "          --hours \"2026-06-15 18:00-22:45\"\n"
                   "          then finished Wed 24 Jun 21:00\n"));
  EXPECT_TRUE(says(out, "          heater = { kind = \"electric\", minimum = \"18.5 C\" }\n"));
  EXPECT_TRUE(says(out, "          resin = \"quick\"\n"));
  EXPECT_TRUE(says(out, "          --until \"2026-07-04 00:00\"\n"));
  EXPECT_FALSE(says(out, "NEXT"));
  ScheduleDocument with_offset = sample::schedule_impossible();
  with_offset.impossible->others[2].value = "2026-07-04T02:30:00+02:30";
  EXPECT_EQ(text_of(with_offset), out);
  EXPECT_TRUE(says(text_of(sample::schedule_bare()), "no single change of hours"));
}

TEST(ScheduleText, NothingFoundIsNotNothingFits) {
  ScheduleDocument document = sample::schedule_impossible();
  document.impossible.reset();
  document.stopped = "time";
  const std::string out = text_of(document);
  EXPECT_TRUE(says(out, "NOTHING FOUND from Sat 13 Jun 13:40 until Sat 27 Jun 00:00."));
  EXPECT_TRUE(says(out, "Why       the time for the search was up\n"));
  EXPECT_FALSE(says(out, "FITS"));
  document.stopped = "interrupted";
  EXPECT_TRUE(says(text_of(document), "Why       the search was interrupted\n"));
}

TEST(ScheduleText, EveryCautionIsSaidOnce) {
  const ScheduleDocument document = sample::schedule();
  const std::string out = flowing(text_of(document));
  for (const laminate::Caution& caution : document.cautions) {
    const std::string words = caution.text.substr(0, 40);
    const std::size_t first = out.find(words);
    ASSERT_NE(first, std::string::npos) << words;
    EXPECT_EQ(out.find(words, first + 1), std::string::npos) << words;
  }
}

TEST(ScheduleText, OddNamesSurvive) {
  ScheduleDocument document = sample::schedule();
  const std::string odd = "\xe6\xb3\xa2 r\xc3\xa9sine \"5'10\" \x1b[31m\xff" + std::string(90, 'x');
  document.jobs[0].name = odd;
  document.weather.source = odd;
  document.weather.place = odd;
  for (ScheduleStep& step : document.steps) step.title = odd;
  for (ScheduleStep& step : document.steps) step.how = odd;
  for (TimelineStep& step : document.timeline) step.who = odd;
  for (ScheduleChoice& choice : document.choices) choice.text = odd;
  for (CoatWindow& window : document.windows) window.reason = odd;
  for (ChangedStep& step : document.changed) step.why = odd;
  for (Alternative& other : document.alternatives) other.what = odd;
  document.bound_leaves_out = odd;
  document.optimal = false;
  document.calendars[0].id = odd;
  document.calendars.push_back(document.calendars[0]);
  const std::string out = text_of(document);
  EXPECT_TRUE(says(out, "\xe6\xb3\xa2 r\xc3\xa9sine \"5'10\""));
  EXPECT_TRUE(says(out, "\xe6\xb3\xa2 R\xc3\xa9SINE"));
}

TEST(ScheduleText, DaysAreThoseOfTheWall) {
  const auto zone = time::Zone::named("Pacific/Auckland");
  ASSERT_TRUE(zone);
  // 18:00 UTC is 6:00 of the next day there.
  const std::string out = text_of(sample::schedule(), System::metric, *zone);
  EXPECT_TRUE(says(out, "NEXT      Tue 16 Jun 06:00  Prepare bottom lam"));
  const auto tuesday = day(out, "Tue 16 Jun");
  EXPECT_EQ(bar(tuesday, "work "), std::string(12, ' ') + "####____");
  EXPECT_TRUE(says(line_of(tuesday, "Tue 16 Jun"), "06:00-10:00, 1 h of work"));
}

}  // namespace
}  // namespace wetout::report
