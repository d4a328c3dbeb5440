#include <fmt/format.h>

#include <algorithm>

#include "phrases.hpp"
#include "resin_text.hpp"
#include "schedule_days.hpp"
#include "schedule_fields.hpp"
#include "schedule_slack.hpp"
#include "schedule_tail.hpp"
#include "weather_chart.hpp"
#include "wetout/base/check.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using time::Instant;
using time::WallTime;
using units::System;

class Writer {
 public:
  Writer(const ScheduleDocument& document, System system, const time::Zone& zone)
      : view_(document, zone), document_(document), system_(system) {}

  std::string text() {
    DaysWriter days(view_, system_, page_);
    top();
    summary();
    add_impossible(page_, view_);
    days.legend();
    days.days();
    add_choices(page_, view_);
    add_quality(page_, view_);
    add_alternatives(page_, view_);
    add_changes(page_, view_);
    add_windows(page_, view_);
    notices(days.cautions_left());
    assumptions();
    return page_.text();
  }

 private:
  void top() {
    std::string what = "SCHEDULE OF " + upper(plain(document_.jobs.front().name));
    if (!view_.one_job()) what = fmt::format("SCHEDULE OF {} BOARDS", document_.jobs.size());
    const std::string number =
        document_.number > 0 ? fmt::format("schedule {}", document_.number) : "not saved";
    page_.line(layout::ends(what, number));
    page_.line(layout::ends(view_.wall.full(instant_of(document_.horizon.from)) + " to " +
                                view_.wall.full(instant_of(document_.horizon.until)),
                            "made " + view_.wall.full(instant_of(document_.made))));
    std::string file = plain(document_.weather.source);
    if (!document_.weather.place.empty()) file += " (" + plain(document_.weather.place) + ")";
    beside(file, room());
    page_.line(std::string(layout::page_columns, '-'));
    if (document_.weather.placed) {
      page_.item("", "A typical or past year on these dates: a climate, not a forecast.");
    }
  }

  // Those of steps, room, limits and guard; how films and cores are worked out is a page of its
  // own.
  void assumptions() {
    std::vector<laminate::Assumption> near;
    for (const laminate::Assumption& one : document_.assumptions) {
      const std::string_view name = one.name;
      const std::string_view of = name.substr(0, name.find('.'));
      if (of != "cure" && of != "resin" && of != "film" && of != "core") near.push_back(one);
    }
    add_assumptions(page_, near, system_);
    const std::size_t more = document_.assumptions.size() - near.size();
    if (more > 0) {
      page_.item("", fmt::format("and {} of films and cores: --json has them all", more));
    }
  }

  void beside(const std::string& left, const std::string& right) {
    const bool cut = layout::columns(right) > layout::page_columns * 5 / 8;  // ends() would
    if (!cut && layout::columns(left) + layout::columns(right) + 2 <= layout::page_columns) {
      page_.line(layout::ends(left, right));
    } else {
      page_.item("", left);
      page_.item("", right);
    }
  }

  [[nodiscard]] std::string room() const {
    const WeatherRoom& room = document_.weather.room;
    std::string text = "outdoors in the shade";
    if (room.kind != climate::RoomKind::outdoors) {
      text = fmt::format("{} room, lag {}", Words<climate::RoomKind>::word(room.kind),
                         units::print(room.lag, system_));
    }
    if (room.minimum) text += ", at least " + units::print(*room.minimum, system_);
    return text + fmt::format(", guard {}", climate::to_string(document_.weather.guard.guard));
  }

  // --- at a glance

  // What somebody is at when it is made, else what comes next.
  [[nodiscard]] const Entry* next(const std::optional<std::string>& who) const {
    const Instant made = instant_of(document_.made);
    const Entry* late = nullptr;
    for (const Entry& entry : view_.entries) {
      if (entry.is_done() || (who && entry.timed->who != who)) continue;
      if (entry.until > made) return &entry;
      if (late == nullptr) late = &entry;
    }
    return late;
  }

  void say_next(const std::optional<std::string>& who) {
    const Entry* step = next(who);
    const std::string person = who ? plain(*who) + ": " : "";
    if (step == nullptr) return page_.item("NEXT      ", person + "nothing");
    const bool now = step->start <= instant_of(document_.made);
    std::string what =
        step->told != nullptr ? plain(step->told->title) : plain(view_.step_label(step->timed->id));
    if (!view_.one_job()) what = plain(step->job) + ": " + what;
    page_.item(now ? "NOW       " : "NEXT      ",
               person + whole(view_.wall.full(step->start) + "  ") + what);
    if (step->told != nullptr && !step->told->how.empty()) {
      page_.item("          ", plain(step->told->how));
    }
  }

  void summary() {
    if (view_.entries.empty()) return;
    if (next({}) == nullptr) {
      page_.item("NEXT      ", "nothing: every step is done");
    } else if (view_.one_person()) {
      say_next({});
    } else {
      for (const ScheduleCalendar& person : document_.calendars) say_next(person.id);
    }
    std::chrono::seconds work{0};
    for (const Entry& entry : view_.entries) {
      if (!entry.is_done()) work += entry.until - entry.start;
    }
    if (document_.finish) {
      std::string text = whole(view_.wall.full(instant_of(*document_.finish)));
      if (document_.objective) text += fmt::format(", {} visits", document_.objective->visits);
      text += ", " +
              whole(units::print(units::seconds(static_cast<double>(work.count())), system_)) +
              " of work to come";
      page_.item("Finish    ", text);
    }
    page_.item("Ride      ", ride());
    if (!view_.one_job()) boards();
    tightest_of_all();
  }

  [[nodiscard]] std::string ride() const {
    if (!document_.ride_from) return "not known: not every film is seen to cure fully";
    const Instant from = instant_of(*document_.ride_from);
    const bool known = from <= instant_of(document_.weather.known_until);
    return "from " + whole(view_.wall.full(from)) +
           (known ? "" : " if the weather stays as on its last day");
  }

  void boards() {
    for (const ScheduledJob& job : document_.jobs) {
      std::string text;
      if (job.finish) text = "finish " + whole(view_.wall.full(instant_of(*job.finish)));
      if (job.ride_from) {
        if (!text.empty()) text += ", ";
        text += "ride from " + whole(view_.wall.full(instant_of(*job.ride_from)));
      }
      page_.item("          ", plain(job.id) + ": " + text);
    }
  }

  void tightest_of_all() {
    const Entry* of = nullptr;
    const StepSlack* least = nullptr;
    for (const Entry& entry : view_.entries) {
      const StepSlack* own = entry.is_done() ? nullptr : tightest(*entry.timed);
      if (own == nullptr || (least != nullptr && tightness(*own) >= tightness(*least))) continue;
      of = &entry;
      least = own;
    }
    if (least == nullptr) return;
    Spoken far;
    page_.item("Tightest  ", plain(view_.step_label(of->timed->id)) + ": " +
                                 slack_text(view_, *least, system_, far));
  }

  void notices(const std::vector<std::string>& cautions) {
    if (document_.notices.empty() && cautions.empty()) return;
    page_.heading("Worth knowing", "");
    for (const base::Notice& notice : document_.notices) {
      page_.item("* ", subject_text(notice) + notice_text(notice, system_));
    }
    for (const std::string& caution : cautions) page_.item("! ", plain(caution));
  }

  ScheduleView view_;
  const ScheduleDocument& document_;
  System system_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const ScheduleDocument& document, System system, const time::Zone& zone) {
  // As it is kept: it reads the same on the day it was made and out of the log.
  const base::Result<ScheduleDocument> kept = read_schedule(to_json(document));
  base::promise(kept.has_value(), "a schedule document that was written can be read");
  return Writer(*kept, system, zone).text();
}

}  // namespace wetout::report
