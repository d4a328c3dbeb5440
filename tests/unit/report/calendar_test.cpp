#include "wetout/report/calendar.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "ical.hpp"
#include "schedule_sample.hpp"
#include "schedule_sample_parts.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using sample::june;

std::vector<std::string> content_lines(const std::string& calendar) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while (at < calendar.size()) {
    const std::size_t end = calendar.find("\r\n", at);
    EXPECT_NE(end, std::string::npos);
    if (end == std::string::npos) break;
    EXPECT_LE(end - at, 75U);
    const std::string line = calendar.substr(at, end - at);
    EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos);
    if (line.starts_with(' ')) {
      lines.back() += line.substr(1);
    } else {
      lines.push_back(line);
    }
    at = end + 2;
  }
  return lines;
}

using Event = std::map<std::string, std::vector<std::string>>;

// Properties of events by name, those of their alarms after "ALARM ".
std::vector<Event> events(const std::string& calendar) {
  std::vector<Event> all;
  std::string within;
  for (const std::string& line : content_lines(calendar)) {
    if (line == "BEGIN:VEVENT") {
      all.emplace_back();
    } else if (line == "BEGIN:VALARM") {
      within = "ALARM ";
    } else if (line == "END:VALARM") {
      within.clear();
    } else if (!all.empty()) {
      const std::size_t colon = line.find(':');
      all.back()[within + line.substr(0, colon)].push_back(line.substr(colon + 1));
    }
  }
  return all;
}

const Event* find(const std::vector<Event>& all, std::string_view summary_begins) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Event& event) {
    return event.at("SUMMARY").front().starts_with(summary_begins);
  });
  return found == all.end() ? nullptr : &*found;
}

std::string calendar_of(const ScheduleDocument& document, const CalendarFacts& facts = {}) {
  return to_calendar(document, facts, units::System::metric, {});
}

// RFC 5545, sections 3.3.11 and 3.1: the examples of shared/published-values.md 6.4, worked there
// by hand from the rules.
TEST(ICalendar, EscapesTextAsRfc5545Says) {
  EXPECT_EQ(ical::text("a,b;c\\d\ne:f"), "a\\,b\\;c\\\\d\\ne:f");
  EXPECT_EQ(ical::text("tab\tbell\a"), "tab bell ");
  EXPECT_EQ(ical::text(""), "");
}

TEST(ICalendar, FoldsAtSeventyFiveOctets) {
  const std::string line = "SUMMARY:" + std::string(171, 'x');
  const std::string folded = ical::folded(line);
  std::vector<std::size_t> lengths;
  for (std::size_t at = 0; at < folded.size();) {
    const std::size_t end = folded.find("\r\n", at);
    lengths.push_back(end - at);
    at = end + 2;
  }
  EXPECT_EQ(lengths, (std::vector<std::size_t>{75, 75, 31}));
  EXPECT_EQ(content_lines(folded), std::vector<std::string>{line});
  EXPECT_EQ(ical::folded(std::string(75, 'x')), std::string(75, 'x') + "\r\n");
}

TEST(ICalendar, NeverBreaksACharacter) {
  for (const std::string& character : {std::string("é"), std::string("€"), std::string("😀")}) {
    for (std::size_t before = 0; before < 80; ++before) {
      const std::string line = std::string(before, 'x') + character + character + "end";
      const std::string folded = ical::folded(line);
      EXPECT_EQ(content_lines(folded), std::vector<std::string>{line});
      EXPECT_EQ(folded.find(character.substr(0, 1) + "\r"), std::string::npos);
    }
  }
  // No UTF-8 at all ends too.
  EXPECT_EQ(content_lines(ical::folded(std::string(200, '\x80'))).front().size(), 200U);
}

TEST(Calendar, HasOneEventForEachStepAtItsTime) {
  for (const ScheduleDocument& document : {sample::schedule(), sample::schedule_of_two()}) {
    const auto all = events(calendar_of(document));
    ASSERT_EQ(all.size(), document.timeline.size());
    std::map<std::string, int> uids;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const TimelineStep& step = document.timeline[i];
      EXPECT_EQ(all[i].at("DTSTART").front(), ical::utc(instant_of(step.start)));
      EXPECT_EQ(all[i].at("DTEND").front(), ical::utc(instant_of(step.attended_until)));
      EXPECT_EQ(all[i].at("SEQUENCE").front(), std::to_string(document.number));
      EXPECT_EQ(all[i].at("STATUS").front(), "CONFIRMED");
      EXPECT_EQ(++uids[all[i].at("UID").front()], 1);
    }
  }
}

TEST(Calendar, WarnsBeforeAVisitAtEachLookAndBeforeAWindowCloses) {
  const ScheduleDocument document = sample::schedule_of_two();
  const auto all = events(calendar_of(document));
  const auto triggers = [&](std::string_view summary) {
    const Event* event = find(all, summary);
    if (event == nullptr || !event->contains("ALARM TRIGGER")) return std::vector<std::string>{};
    return event->at("ALARM TRIGGER");
  };
  // Ben comes at 17:40 and wets out at 18:30, 20 minutes after he has prepared.
  EXPECT_EQ(triggers("Prepare bottom lam (Faial 9-0)"), std::vector<std::string>{"-PT30M"});
  EXPECT_TRUE(triggers("Wet out bottom lam (Faial 9-0)").empty());
  EXPECT_EQ(triggers("Watch bottom lam (Faial 9-0)"), std::vector<std::string>{"PT0M"});
  const Event* trim = find(all, "Trim the laps of bottom lam (Faial 9-0)");
  ASSERT_NE(trim, nullptr);
  const auto wet =
      std::find_if(document.timeline.begin(), document.timeline.end(),
                   [](const TimelineStep& step) { return step.id == "faial-9-0/bottom-lam/wet"; });
  const auto closes =
      std::find_if(wet->milestones.begin(), wet->milestones.end(),
                   [](const FilmMilestone& one) { return one.name == "trim_until"; });
  EXPECT_EQ(trim->at("ALARM TRIGGER;VALUE=DATE-TIME").front(),
            ical::utc(instant_of(closes->time) - std::chrono::hours(1)));
}

TEST(Calendar, TellsWhatIsDoneWithoutAlarms) {
  const auto all = events(calendar_of(sample::schedule()));
  const Event* done = find(all, "Done: Spackle");
  ASSERT_NE(done, nullptr);
  EXPECT_EQ(done->at("TRANSP").front(), "TRANSPARENT");
  EXPECT_FALSE(done->contains("ALARM TRIGGER"));
}

TEST(Calendar, KeepsTheNameOfAStepAndCancelsWhatIsGone) {
  ScheduleDocument document = sample::schedule();
  CalendarFacts facts;
  facts.identities["pico-5-4"] = "1 7";
  const auto before = events(calendar_of(document, facts));
  document.number = 9;
  // Renamed, and one step less.
  const std::string gone = document.timeline.back().id;
  document.timeline.pop_back();
  const auto rename = [](std::string& id) { id.replace(0, id.find('/'), "other"); };
  for (ScheduledJob& job : document.jobs) job.id = "other";
  for (ScheduleStep& step : document.steps) rename(step.id);
  for (TimelineStep& step : document.timeline) rename(step.id);
  CalendarFacts later;
  later.identities["other"] = "1 7";
  later.cancelled = {{"other" + gone.substr(gone.find('/')), june(24, 20, 55), june(24, 21)}};
  const auto after = events(calendar_of(document, later));
  ASSERT_EQ(after.size(), before.size());
  for (std::size_t i = 0; i < after.size(); ++i) {
    EXPECT_EQ(after[i].at("UID"), before[i].at("UID"));
    EXPECT_EQ(after[i].at("SEQUENCE").front(), "9");
  }
  EXPECT_EQ(after.back().at("STATUS").front(), "CANCELLED");
  EXPECT_TRUE(after.back().at("SUMMARY").front().starts_with("No more: Weigh the board"));
  EXPECT_FALSE(after.back().contains("ALARM TRIGGER"));
  // Another board of the same id has other names.
  facts.identities["pico-5-4"] = "1 8";
  EXPECT_NE(events(calendar_of(sample::schedule(), facts)).front().at("UID"),
            before.front().at("UID"));
}

TEST(Calendar, IsEmptyWhenNothingFits) {
  const auto lines = content_lines(calendar_of(sample::schedule_impossible()));
  EXPECT_EQ(lines.front(), "BEGIN:VCALENDAR");
  EXPECT_EQ(lines.back(), "END:VCALENDAR");
  EXPECT_EQ(std::count(lines.begin(), lines.end(), "BEGIN:VEVENT"), 0);
}

}  // namespace
}  // namespace wetout::report
