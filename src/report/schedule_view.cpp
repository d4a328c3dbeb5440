#include "schedule_view.hpp"

#include <algorithm>
#include <optional>

#include "weather_chart.hpp"
#include "wetout/time/print.hpp"

namespace wetout::report {
namespace {

using std::chrono::days;
using time::Instant;
using time::WallTime;

// As print_wall() names it, at a clock time that needs no zone.
std::string named(WallTime day) {
  const std::chrono::year_month_day date(std::chrono::floor<days>(day));
  return time::print_wall(std::chrono::sys_days(date) + std::chrono::hours(12), time::Zone());
}

Entry entry_of(const TimelineStep& timed, const ScheduleStep* told, const WallClock& wall) {
  Entry entry;
  entry.timed = &timed;
  entry.told = told;
  const std::string& id = timed.id;
  const std::size_t first = id.find('/'), last = id.rfind('/');
  entry.job = id.substr(0, first);
  entry.word = last == std::string::npos ? id : id.substr(last + 1);
  if (first < last) entry.coat = id.substr(first + 1, last - first - 1);
  entry.start = instant_of(timed.start);
  entry.until = instant_of(timed.attended_until);
  entry.day = wall.day(entry.start);
  return entry;
}

}  // namespace

WallTime WallClock::day(Instant at) const { return std::chrono::floor<days>(zone_.wall(at)); }

std::optional<Instant> WallClock::instant(WallTime wall) const {
  const time::WallReading reading = zone_.read(wall);
  if (reading.kind == time::WallReading::Kind::skipped) return std::nullopt;
  return reading.first;
}

std::string WallClock::clock(Instant at) const { return time::clock_time(at, zone_); }

std::string WallClock::span(Instant from, Instant to) const {
  const bool at_midnight = zone_.wall(to) == day(from) + days(1);
  return clock(from) + "-" + (at_midnight ? "24:00" : clock(to));
}

std::string WallClock::date(WallTime day) {
  constexpr std::size_t year_and_clock = 11;
  const std::string text = named(day);
  return text.substr(0, text.size() - year_and_clock);
}

std::string WallClock::full(Instant at) const { return date(day(at)) + " " + clock(at); }

std::string WallClock::when(Instant at, Spoken& spoken) const {
  const WallTime its_day = day(at);
  std::string text = clock(at);
  if (its_day != spoken.now) {
    constexpr std::size_t weekday_columns = 3;
    const bool near = its_day >= spoken.from && its_day < spoken.from + days(7);
    text = (near ? named(its_day).substr(0, weekday_columns) : date(its_day)) + " " + text;
  }
  spoken.now = its_day;
  return text;
}

ScheduleView::ScheduleView(const ScheduleDocument& doc, const time::Zone& zone)
    : document(doc), wall(zone) {
  for (const ScheduleStep& step : doc.steps) told_.emplace(step.id, &step);
  for (const TimelineStep& timed : doc.timeline) {
    const auto told = told_.find(timed.id);
    entries.push_back(entry_of(timed, told == told_.end() ? nullptr : told->second, wall));
  }
  for (const Entry& entry : entries) add_closings(entry);
  std::stable_sort(closings.begin(), closings.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
}

void ScheduleView::add_closings(const Entry& entry) {
  if (entry.told == nullptr || entry.is_done()) return;
  for (const StepAfter& after : entry.told->after) {
    const bool trim = after.event == "trim_until";
    if ((!trim && after.event != "recoat_until") || !after.max_lag || !holds(after)) continue;
    const Entry* film = find(after.id);
    if (film == nullptr) continue;
    const auto closes = at(*film, after.event);
    if (closes) closings.push_back({*closes, trim, film, &entry});
  }
}

bool ScheduleView::holds(const StepAfter& after) const {
  if (!after.group) return true;
  return std::any_of(document.choices.begin(), document.choices.end(), [&](const auto& choice) {
    return choice.group == after.group && choice.chosen == after.option;
  });
}

const Entry* ScheduleView::find(std::string_view id) const {
  const auto found = std::find_if(entries.begin(), entries.end(),
                                  [&](const Entry& entry) { return entry.timed->id == id; });
  return found == entries.end() ? nullptr : &*found;
}

std::string ScheduleView::coat_label(const Entry& entry) const {
  return one_job() ? entry.coat : entry.job + "/" + entry.coat;
}

std::string ScheduleView::step_label(std::string_view id) const {
  const std::size_t slash = id.find('/');
  return std::string(one_job() && slash != std::string_view::npos ? id.substr(slash + 1) : id);
}

const FilmMilestone* ScheduleView::milestone(const Entry& wet, std::string_view name) {
  const auto& all = wet.timed->milestones;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const FilmMilestone& m) { return m.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::optional<Instant> ScheduleView::at(const Entry& wet, std::string_view name) {
  const FilmMilestone* found = milestone(wet, name);
  if (found == nullptr) return std::nullopt;
  return instant_of(found->time);
}

}  // namespace wetout::report
