#include "wetout/report/calendar.hpp"

#include <algorithm>
#include <chrono>
#include <set>

#include "ical.hpp"
#include "phrases.hpp"
#include "schedule_phrases.hpp"
#include "schedule_slack.hpp"
#include "schedule_view.hpp"
#include "weather_chart.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/sha256.hpp"

namespace wetout::report {
namespace {

using std::chrono::minutes;
using time::Instant;

// A step that begins so long after the one before begins a visit.
constexpr minutes visit_gap{30};
// Time to come to the shop, and to finish what must be finished.
constexpr minutes before_visit{30};
constexpr minutes before_close{60};

// RFC 9562, section 5.8: a UUID of our own making, here the beginning of a digest. It names no
// computer and nobody's board.
std::string uid(const std::string& identity, const std::string& step) {
  std::string hex = base::hex(base::sha256("wetout event\n" + identity + '\n' + step));
  hex[12] = '8';
  hex[16] = "89ab"[static_cast<std::size_t>(hex[16]) % 4];
  return hex.substr(0, 8) + "-" + hex.substr(8, 4) + "-" + hex.substr(12, 4) + "-" +
         hex.substr(16, 4) + "-" + hex.substr(20, 12);
}

class CalendarWriter {
 public:
  CalendarWriter(const ScheduleDocument& document, const CalendarFacts& facts, units::System system,
                 const time::Zone& zone)
      : view_(document, zone), document_(document), facts_(facts), system_(system) {
    for (const Entry& entry : view_.entries) {
      if (begins_visit(entry)) visits_.insert(&entry);
    }
  }

  std::string text() {
    out_.begin("VCALENDAR");
    out_.line("VERSION", "2.0");
    out_.line("PRODID", "-//wetout//" + ical::text(document_.program) + "//EN");
    out_.line("CALSCALE", "GREGORIAN");
    out_.line("NAME", ical::text("Glassing of " + boards()));  // RFC 7986, section 5.1
    for (const Entry& entry : view_.entries) event(entry);
    for (const CancelledStep& step : facts_.cancelled) cancelled(step);
    out_.end("VCALENDAR");
    return out_.written();
  }

 private:
  [[nodiscard]] std::string boards() const {
    std::vector<std::string> names;
    for (const ScheduledJob& job : document_.jobs) names.push_back(job.name);
    return joined(names, ", ");
  }

  [[nodiscard]] std::string board_of(const std::string& job) const {
    for (const ScheduledJob& one : document_.jobs) {
      if (one.id == job) return one.name;
    }
    return job;
  }

  // The person's own visit: others may be at work already.
  [[nodiscard]] bool begins_visit(const Entry& entry) const {
    if (entry.is_done()) return false;
    return std::none_of(view_.entries.begin(), view_.entries.end(), [&](const Entry& other) {
      return &other != &entry && other.timed->who == entry.timed->who &&
             other.start <= entry.start && other.until + visit_gap > entry.start &&
             (other.start < entry.start || &other < &entry);
    });
  }

  // What an event of any kind begins with.
  void head(const std::string& id, Instant start, Instant end) {
    const std::size_t slash = id.find('/');
    const std::string job = id.substr(0, slash);
    const auto known = facts_.identities.find(job);
    out_.begin("VEVENT");
    out_.line("UID", uid(known == facts_.identities.end() ? job : known->second,
                         slash == std::string::npos ? "" : id.substr(slash + 1)));
    out_.line("DTSTAMP", ical::utc(instant_of(document_.made)));
    out_.line("SEQUENCE", std::to_string(document_.number));
    out_.line("DTSTART", ical::utc(start));
    // A DTEND must be later than its DTSTART (3.8.2.2); without one an event ends as it begins.
    if (end > start) out_.line("DTEND", ical::utc(end));
  }

  void event(const Entry& entry) {
    head(entry.timed->id, entry.start, entry.until);
    out_.line("SUMMARY", ical::text(title(entry)));
    out_.line("DESCRIPTION", ical::text(description(entry)));
    out_.line("STATUS", "CONFIRMED");
    if (entry.is_done()) out_.line("TRANSP", "TRANSPARENT");
    if (!entry.is_done()) alarms(entry);
    out_.end("VEVENT");
  }

  void cancelled(const CancelledStep& step) {
    head(step.id, step.start, step.end);
    const auto told = std::find_if(document_.steps.begin(), document_.steps.end(),
                                   [&](const ScheduleStep& one) { return one.id == step.id; });
    const std::string job = step.id.substr(0, step.id.find('/'));
    const std::string what = told != document_.steps.end()
                                 ? told->title
                                 : step.id.substr(std::min(step.id.size(), job.size() + 1));
    out_.line("SUMMARY", ical::text("No more: " + what + " (" + board_of(job) + ")"));
    out_.line("STATUS", "CANCELLED");
    out_.line("TRANSP", "TRANSPARENT");
    out_.end("VEVENT");
  }

  [[nodiscard]] std::string title(const Entry& entry) const {
    std::string text =
        entry.told != nullptr ? entry.told->title : view_.step_label(entry.timed->id);
    text += " (" + board_of(entry.job) + ")";
    if (!view_.one_person() && entry.timed->who) text += ", " + *entry.timed->who;
    return (entry.is_done() ? "Done: " : "") + text;
  }

  [[nodiscard]] std::string description(const Entry& entry) const {
    std::vector<std::string> lines{view_.wall.date(entry.day) + ", " +
                                   view_.wall.span(entry.start, entry.until) +
                                   " on the shop's wall"};
    if (entry.told != nullptr && !entry.told->how.empty() && !entry.is_done()) {
      lines.push_back(entry.told->how);
    }
    Spoken spoken(entry.day);
    if (entry.is_wet()) {
      lines.push_back(joined(film_phrases(view_, entry, spoken), ", "));
      if (!entry.is_done()) lines.push_back(joined(room_phrases(entry, system_), ", "));
    }
    for (const ClosingWindow* window : closings(entry)) {
      Spoken of_day(entry.day);
      lines.push_back(window_text(*window) + " " + view_.wall.when(window->at, of_day));
    }
    const StepSlack* least = entry.is_done() ? nullptr : tightest(*entry.timed);
    if (least != nullptr) {
      Spoken of_day(entry.day);
      lines.push_back("tightest: " + slack_text(view_, *least, system_, of_day));
    }
    for (const laminate::Caution* caution : cautions_at(view_, entry)) {
      lines.push_back("! " + caution->text);
    }
    std::erase(lines, "");
    return joined(lines, "\n");
  }

  [[nodiscard]] std::vector<const ClosingWindow*> closings(const Entry& entry) const {
    std::vector<const ClosingWindow*> found;
    for (const ClosingWindow& window : view_.closings) {
      if (window.step == &entry) found.push_back(&window);
    }
    return found;
  }

  [[nodiscard]] std::string window_text(const ClosingWindow& window) const {
    const Entry& film = *window.film;
    return std::string(window.trim ? "trim window" : "recoat window") + " of " +
           (film.coat.empty() ? film.job : film.coat) + " closes";
  }

  void alarms(const Entry& entry) {
    if (visits_.contains(&entry)) {
      relative(before_visit, "Work begins: " + title(entry));
    } else if (entry.is_watch()) {
      relative(minutes(0), title(entry));
    }
    for (const ClosingWindow* window : closings(entry)) {
      alarm("TRIGGER;VALUE=DATE-TIME", ical::utc(window->at - before_close),
            title(entry) + ": " + window_text(*window) + " " + view_.wall.full(window->at));
    }
  }

  void relative(minutes before, const std::string& text) {
    alarm("TRIGGER", before == minutes(0) ? "PT0M" : "-PT" + std::to_string(before.count()) + "M",
          text);
  }

  void alarm(std::string_view trigger, const std::string& when, const std::string& text) {
    out_.begin("VALARM");
    out_.line("ACTION", "DISPLAY");
    out_.line(trigger, when);
    out_.line("DESCRIPTION", ical::text(text));
    out_.end("VALARM");
  }

  ScheduleView view_;
  const ScheduleDocument& document_;
  const CalendarFacts& facts_;
  units::System system_;
  std::set<const Entry*> visits_;
  ical::Writer out_;
};

}  // namespace

std::string to_calendar(const ScheduleDocument& document, const CalendarFacts& facts,
                        units::System system, const time::Zone& zone) {
  // As it is kept: the same calendar on the day it was made and out of the log.
  const base::Result<ScheduleDocument> kept = read_schedule(to_json(document));
  base::promise(kept.has_value(), "a schedule document that was written can be read");
  return CalendarWriter(*kept, facts, system, zone).text();
}

}  // namespace wetout::report
