#include "schedule_days.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "phrases.hpp"
#include "resin_text.hpp"
#include "schedule_phrases.hpp"
#include "schedule_slack.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using layout::page_columns;
using layout::plain;
using layout::whole;
using std::chrono::days;
using time::Instant;
using time::WallTime;
using units::System;

constexpr std::size_t clock_columns = 13;  // "18:00-18:25  "
constexpr std::size_t hours_between_numbers = 2;
constexpr std::size_t hour_columns = bar_cells / 24;
constexpr std::size_t least_label = 15, most_label = page_columns - bar_cells - 1;

bool of_coat(const Entry& a, const Entry& b) { return a.job == b.job && a.coat == b.coat; }

}  // namespace

DaysWriter::DaysWriter(const ScheduleView& view, System system, layout::Page& page)
    : view_(view), system_(system), page_(page), course_(view.document) {
  label_columns_ = least_label;
  for (const Entry& entry : view.entries) {
    if (entry.is_wet()) {
      label_columns_ = std::max(label_columns_, layout::columns(plain(view.coat_label(entry))));
    }
  }
  label_columns_ = std::min(label_columns_, most_label);
}

void DaysWriter::legend() {
  if (view_.entries.empty()) return;
  page_.blank();
  const auto sign = [](char each, std::string_view word) {
    return whole(fmt::format("{} {}", each, word));
  };
  std::string text = fmt::format(
      "Bars, {} minutes a character: {}, {}; films {}, {}, {}, {}, then sandable. No dust while {} "
      "or {}.",
      bar_cell_min, sign(bar_hours, "working hours"), sign(bar_work, "at work"),
      sign(bar_wet, "wet"), sign(bar_tacky, "tacky"), sign(bar_firm, "tack-free"),
      sign(bar_hard, "handled"), bar_wet, bar_tacky);
  const auto& series = view_.document.weather.series;
  if (std::any_of(series.begin(), series.end(),
                  [](const ScheduleAir& air) { return air.room_dew_point.has_value(); })) {
    text += " Margin: of the board above the dew point.";
  }
  page_.item("", text);
}

void DaysWriter::days() {
  if (view_.entries.empty()) return;
  std::map<WallTime, std::vector<const Entry*>> by_day;
  for (const Entry& entry : view_.entries) by_day[entry.day].push_back(&entry);
  const WallTime made = view_.wall.day(instant_of(view_.document.made));
  const WallTime last = by_day.rbegin()->first;
  for (WallTime at = by_day.begin()->first; at <= last; at += std::chrono::days(1)) {
    const auto found = by_day.find(at);
    if (found == by_day.end()) {
      if (at >= made) quiet(at);
      continue;
    }
    const auto& entries = found->second;
    const bool over = at < made && std::all_of(entries.begin(), entries.end(),
                                               [](const Entry* entry) { return entry->is_done(); });
    if (over) {
      past(at, entries);
    } else {
      day(at, entries);
    }
  }
}

// --- days

void DaysWriter::past(WallTime day, const std::vector<const Entry*>& entries) {
  page_.blank();
  std::vector<std::string> each;
  for (const Entry* entry : entries) {
    each.push_back(
        whole(view_.wall.clock(entry->start) + " " + plain(view_.step_label(entry->timed->id))));
    printed_.insert(entry);
  }
  page_.item(layout::left(WallClock::date(day), clock_columns), "done: " + joined(each, ", "));
  for (const Entry* entry : entries) {
    if (entry->is_wet() && film_until(*entry) > instant_of(view_.document.made)) {
      film(*entry, plain(view_.coat_label(*entry)) + ": ");
    }
  }
}

void DaysWriter::quiet(WallTime day) {
  std::vector<std::string> each;
  for (const Entry& entry : view_.entries) {
    if (!entry.is_wet()) continue;
    std::vector<std::string> parts;
    for (const auto& [name, word] :
         {std::pair{"gel", "gel"}, std::pair{"tack_free", "tack-free"},
          std::pair{"handle", "handle"}, std::pair{"sandable", "sandable"}}) {
      const auto at = ScheduleView::at(entry, name);
      if (at && view_.wall.day(*at) == day) {
        parts.push_back(whole(std::string(word) + " " + view_.wall.clock(*at)));
      }
    }
    if (!parts.empty()) each.push_back(plain(view_.coat_label(entry)) + " " + joined(parts, ", "));
  }
  std::vector<const ClosingWindow*> windows;
  for (const ClosingWindow& window : view_.closings) {
    if (view_.wall.day(window.at) == day) windows.push_back(&window);
  }
  if (each.empty() && windows.empty()) return;
  page_.blank();
  page_.item(layout::left(WallClock::date(day), clock_columns),
             each.empty() ? "no work" : "no work; " + joined(each, "; "));
  for (const ClosingWindow* window : windows) closing(*window);
}

void DaysWriter::day(WallTime day, const std::vector<const Entry*>& entries) {
  page_.heading(WallClock::date(day), day_aside(day, entries));
  bars(day);
  page_.blank();
  auto window = std::find_if(view_.closings.begin(), view_.closings.end(),
                             [&](const auto& one) { return view_.wall.day(one.at) == day; });
  const auto windows_before = [&](Instant until) {
    for (; window != view_.closings.end() && window->at < until; ++window) {
      if (view_.wall.day(window->at) == day) closing(*window);
    }
  };
  for (const Entry* entry : entries) {
    if (printed_.contains(entry)) continue;
    windows_before(entry->start);
    step(*entry, entries);
  }
  const auto next = view_.wall.instant(day + std::chrono::days(1));
  if (next) windows_before(*next);
}

std::string DaysWriter::day_aside(WallTime day, const std::vector<const Entry*>& entries) const {
  std::vector<std::string> hours;
  std::vector<std::string> seen;
  for (const ScheduleCalendar& calendar : view_.document.calendars) {
    std::vector<std::string> spans;
    for (const TimeSpan& span : calendar.spans) {
      const Instant from = instant_of(span.from), to = instant_of(span.to);
      if (view_.wall.day(from) == day) spans.push_back(view_.wall.span(from, to));
    }
    const std::string text = joined(spans, ", ");
    if (text.empty() || std::find(seen.begin(), seen.end(), text) != seen.end()) continue;
    seen.push_back(text);
    hours.push_back(text);
  }
  std::chrono::seconds work{0};
  for (const Entry* entry : entries) work += entry->until - entry->start;
  const std::string amount =
      units::print(units::seconds(static_cast<double>(work.count())), system_) + " of work";
  // Of several people with their own hours the bars tell.
  return seen.size() == 1 ? hours.front() + ", " + amount : amount;
}

// --- bars

void DaysWriter::bars(WallTime day) {
  const DayBars found = day_bars(view_, course_, day);
  const bool us = system_ == System::us;
  const auto row = [&](std::string_view label, std::string_view cells, std::string_view aside) {
    std::string text = layout::left(plain(label), label_columns_) + " " + std::string(cells);
    text.erase(text.find_last_not_of(' ') + 1);
    // Behind the bar, as far as there is room.
    const bool fits = layout::columns(text) + 1 + layout::columns(aside) <= page_columns;
    if (!aside.empty() && fits) text += " " + std::string(aside);
    page_.line(text);
  };
  const auto numbers = [&](std::string_view label, auto each) {
    std::string cells(bar_cells, ' ');
    bool some = false;
    for (std::size_t hour = 0; hour < 24; hour += hours_between_numbers) {
      const std::optional<std::string> text = each(hour);
      if (!text) continue;
      some = true;
      cells.replace(hour * hour_columns, text->size(), *text);
    }
    if (some) row(label, cells.substr(0, bar_cells), "");
  };
  numbers("", [](std::size_t hour) { return std::optional(std::to_string(hour)); });
  numbers(us ? "room °F" : "room °C", [&](std::size_t hour) -> std::optional<std::string> {
    const auto& at = found.room.at(hour);
    if (!at) return std::nullopt;
    return units::print_number(us ? at->in_fahrenheit() : at->in_celsius(), 0);
  });
  numbers(us ? "margin °F" : "margin °C", [&](std::size_t hour) -> std::optional<std::string> {
    const auto& at = found.margin.at(hour);
    if (!at) return std::nullopt;
    return units::print_number(at->in_kelvin() * (us ? 1.8 : 1.0), 0);
  });
  for (const Bar& bar : found.people) row(bar.label, bar.cells, "");
  for (const Bar& bar : found.films) row(bar.label, bar.cells, bar.aside);
}

// --- steps

std::string DaysWriter::title(const Entry& entry) const {
  std::string text =
      entry.told != nullptr ? plain(entry.told->title) : plain(view_.step_label(entry.timed->id));
  if (entry.is_wet()) text = upper(text);
  if (!view_.one_job()) text = plain(entry.job) + ": " + text;
  if (!view_.one_person() && entry.timed->who) text += ", " + plain(*entry.timed->who);
  if (entry.timed->state != StepState::planned) {
    text += fmt::format(" ({})", to_string(entry.timed->state));
  }
  return text;
}

void DaysWriter::line(const std::string& label, const std::string& text, const std::string& id) {
  const std::string start = layout::left(label, clock_columns);
  if (clock_columns + layout::columns(text) + 2 + layout::columns(id) <= page_columns) {
    page_.line(layout::ends(start + text, id));
  } else {
    page_.item(start, text);
    page_.line(layout::right(id, page_columns));
  }
}

void DaysWriter::below(const std::string& text) {
  page_.item(std::string(clock_columns, ' '), text);
}

void DaysWriter::step(const Entry& entry, const std::vector<const Entry*>& of_day) {
  const auto alike = [&](const Entry* other) {
    return other->is_watch() && of_coat(*other, entry) && !printed_.contains(other) &&
           other->start >= entry.start;
  };
  std::vector<const Entry*> watches;
  if (entry.is_wet() || entry.is_watch()) {
    std::copy_if(of_day.begin(), of_day.end(), std::back_inserter(watches), alike);
  }
  if (entry.is_watch()) return looks(watches, nullptr);
  printed_.insert(&entry);
  // Of the job only where the title says whose it is.
  const std::string id = entry.timed->id.substr(entry.timed->id.find('/') + 1);
  line(view_.wall.span(entry.start, entry.until), title(entry), plain(id));
  if (entry.told != nullptr && !entry.told->how.empty() && !entry.is_done()) {
    below(plain(entry.told->how));
  }
  if (entry.is_wet()) film(entry);
  if (!entry.is_done()) room(entry);
  if (!watches.empty()) looks(watches, &entry);
  cautions(entry);
}

void DaysWriter::film(const Entry& wet, const std::string& of) {
  Spoken spoken(wet.day);
  const auto each = film_phrases(view_, wet, spoken);
  if (!each.empty()) below(of + joined(each, ", "));
}

void DaysWriter::room(const Entry& entry) {
  const TimelineStep& timed = *entry.timed;
  if (entry.is_wet() && timed.room) below(joined(room_phrases(entry, system_), ", "));
  if (const StepSlack* least = tightest(timed)) {
    Spoken spoken(entry.day);
    below("tightest: " + slack_text(view_, *least, system_, spoken));
  }
  if (timed.chance_limits_hold && *timed.chance_limits_hold < surely) {
    below("chance that the weather keeps its limits: " +
          percent_of_chance(*timed.chance_limits_hold));
  }
  for (const StepSlack& slack : timed.slack) {
    if (const auto text = chance_text(view_, slack)) below(*text);
  }
}

// 19:00, 19:15, 19:45 in one line: under their wet, or on their own.
void DaysWriter::looks(const std::vector<const Entry*>& watches, const Entry* wet) {
  std::vector<std::string> clocks;
  for (const Entry* watch : watches) {
    printed_.insert(watch);
    std::string text = view_.wall.clock(watch->start);
    if (!view_.one_person() && wet != nullptr && watch->timed->who &&
        watch->timed->who != wet->timed->who) {
      text += " " + plain(*watch->timed->who);
    }
    if (watch->timed->state != StepState::planned) {
      text += fmt::format(" ({})", to_string(watch->timed->state));
    }
    clocks.push_back(whole(text));
  }
  const ScheduleStep* told = watches.front()->told;
  std::string how = told != nullptr && !told->how.empty() ? ": " + plain(told->how) : "";
  if (wet != nullptr) return below("look " + joined(clocks, ", ") + how);
  const Entry& first = *watches.front();
  std::string name =
      told != nullptr ? plain(told->title) : plain(view_.step_label(first.timed->id));
  if (!view_.one_job()) name = plain(first.job) + ": " + name;
  page_.item(std::string(clock_columns, ' '), name + " " + joined(clocks, ", ") + how);
}

void DaysWriter::closing(const ClosingWindow& window) {
  Spoken spoken(view_.wall.day(window.at));
  const std::string step = view_.step_label(window.step->timed->id);
  page_.item(layout::left(view_.wall.clock(window.at), clock_columns),
             fmt::format("{} window of {} closes; {} is planned for {}",
                         window.trim ? "trim" : "recoat", plain(view_.coat_label(*window.film)),
                         plain(step), whole(view_.wall.when(window.step->start, spoken))));
}

void DaysWriter::cautions(const Entry& entry) {
  for (const laminate::Caution* caution : cautions_at(view_, entry)) {
    if (!said_.insert(caution->text).second) continue;
    page_.item(std::string(clock_columns, ' ') + "! ", plain(caution->text));
  }
}

std::vector<std::string> DaysWriter::cautions_left() const {
  std::vector<std::string> left;
  std::set<std::string> said = said_;
  for (const laminate::Caution& caution : view_.document.cautions) {
    if (said.insert(caution.text).second) left.push_back(caution.text);
  }
  return left;
}

}  // namespace wetout::report
