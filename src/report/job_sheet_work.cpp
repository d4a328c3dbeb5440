// The steps, day by day.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <map>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "schedule_slack.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using time::WallTime;

// General cautions of the trade (common practice, no source).
std::string_view caution_of(std::string_view word) {
  const std::string_view what = word.substr(0, word.find('-'));
  if (what == "sand" || what == "feather" || what == "scuff" || what == "open" ||
      what == "polish") {
    return "Dust: mask (P2, N95 or better), eyes covered, extraction or wet; epoxy only when it "
           "is cured, for its dust sensitises.";
  }
  if (what == "spackle") return "Foam dust: mask, eyes covered; no solvent on polystyrene.";
  if (what == "artwork") return "Gloves and fresh air; no solvent paint on polystyrene.";
  if (what == "trim") return "Fresh blade, away from your hand; cut glass edges are needles.";
  if (what == "spot") return "Gloves and fresh air as for a coat; a small cup heats as well.";
  return {};
}

}  // namespace

void SheetWriter::work() {
  section("work", "3. Work");
  if (!has_schedule()) {
    page_.put("p", sheet_.no_schedule, {{"class", "missing"}});
    page_.put("h3", "Coats, as they stand in the plan");
    for (const laminate::CoatNeed& coat : plan_.coats) card(coat, nullptr);
    page_.close("section");
    return;
  }
  std::map<WallTime, std::vector<const Entry*>> by_day;
  for (const Entry& entry : view_->entries) by_day[entry.day].push_back(&entry);
  for (const auto& [at, entries] : by_day) day(at, entries);
  page_.close("section");
}

void SheetWriter::day(WallTime day, const std::vector<const Entry*>& entries) {
  std::vector<std::string> hours;
  for (const ScheduleCalendar& calendar : schedule_->calendars) {
    for (const TimeSpan& span : calendar.spans) {
      const auto from = instant_of(span.from), to = instant_of(span.to);
      if (view_->wall.day(from) != day) continue;
      std::string text = view_->wall.span(from, to);
      if (std::find(hours.begin(), hours.end(), text) == hours.end()) {
        hours.push_back(std::move(text));
      }
    }
  }
  page_.open("h3", {{"class", "day"}});
  page_.text(WallClock::date(day));
  if (!hours.empty()) page_.put("span", whole(" open " + joined(hours, ", ")));
  page_.close("h3");
  for (const Entry* entry : entries) {
    // Looks at a film stand on the card of its coat.
    if (entry->is_watch()) continue;
    const auto coat = std::find_if(plan_.coats.begin(), plan_.coats.end(),
                                   [&](const auto& one) { return one.id == entry->coat; });
    if (entry->is_wet() && coat != plan_.coats.end()) {
      card(*coat, entry);
    } else {
      row(*entry);
    }
  }
}

void SheetWriter::row(const Entry& entry) {
  const std::string title =
      entry.told != nullptr ? entry.told->title : view_->step_label(entry.timed->id);
  page_.open("article", {{"class", "step"}});
  page_.open("h4");
  page_.put("span", whole(view_->wall.span(entry.start, entry.until)), {{"class", "clock-time"}});
  page_.text(" ");
  name(title, "span");
  page_.close("h4");
  if (entry.is_done()) {
    page_.put("p", "Done.").close("article");
    return;
  }
  if (entry.told != nullptr && !entry.told->how.empty()) {
    page_.put("p", plain(entry.told->how) + ".", {{"class", "how"}});
  }
  page_.open("p", {{"class", "small"}});
  window(entry);
  air(entry);
  chances(entry);
  page_.close("p");
  if (const auto caution = caution_of(entry.word); !caution.empty()) {
    page_.put("p", caution, {{"class", "caution"}});
  }
  fields(entry.coat, entry.word, &entry, Kind::other, title);
  page_.close("article");
}

void SheetWriter::window(const Entry& entry) {
  const StepWindow found = window_of(*view_, entry);
  Spoken spoken(entry.day);
  const auto because = [](const std::string& why) {
    return why.empty() ? std::string() : " (" + plain(why) + ")";
  };
  std::string text;
  if (found.from) {
    text += "from " + whole(view_->wall.when(*found.from, spoken)) +
            because(entry.is_wet() ? "" : found.before);
  }
  if (found.until) {
    text += (text.empty() ? "before " : ", before ") +
            whole(view_->wall.when(*found.until, spoken)) + because(found.after);
  }
  if (text.empty()) {
    if (entry.timed->state == StepState::fixed) page_.text("Start fixed by hand. ");
    return;
  }
  page_.put("b", "Window");
  page_.text(" " + text);
  if (!found.notice.empty()) page_.text("; mind: " + plain(found.notice));
  page_.text(". ");
}

void SheetWriter::air(const Entry& entry) {
  std::vector<std::string> each;
  if (const auto room = course_->room(entry.start)) {
    each.push_back("room " + whole(units::print(*room, system_)));
  }
  if (const auto humidity = course_->humidity(entry.start)) {
    each.push_back("humidity " + whole(fmt::format("{:.0f} %", 100.0 * *humidity)));
  }
  if (const auto margin = course_->margin(entry.start)) {
    each.push_back("board " + whole(units::print(*margin, system_)) + " above the dew point");
  }
  if (each.empty()) return;
  page_.put("b", "Air then");
  page_.text(" " + joined(each, ", ") + ". ");
}

void SheetWriter::chances(const Entry& entry) {
  const TimelineStep& timed = *entry.timed;
  if (timed.chance_limits_hold && *timed.chance_limits_hold < surely) {
    page_.put("b", "Chance");
    page_.text(" that the weather keeps its limits: " +
               percent_of_chance(*timed.chance_limits_hold) + ". ");
  }
  for (const StepSlack& slack : timed.slack) {
    if (auto text = chance_text(*view_, slack)) {
      text->front() = 'C';
      page_.text(*text + ". ");
    }
  }
}

void SheetWriter::field(const std::string& name, const Field& field, const std::string& value) {
  Attributes attributes{{"type", std::string(field.type)},
                        {"name", name + ":" + std::string(field.fact)},
                        {"data-fact", std::string(field.fact)}};
  if (!field.mode.empty()) attributes.push_back({"inputmode", std::string(field.mode)});
  if (!field.unit.empty()) attributes.push_back({"data-unit", std::string(field.unit)});
  if (!value.empty()) attributes.push_back({"value", value});
  if (field.type != "checkbox" && field.type != "date") {
    attributes.push_back({"autocomplete", "off"});
  }
  page_.open("label", {{"class", "fact " + std::string(field.fact)}});
  if (field.type == "checkbox") {
    page_.single("input", attributes).text(std::string(" ") + std::string(field.label));
  } else {
    page_.put("span", field.label).single("input", attributes);
  }
  page_.close("label");
}

void SheetWriter::fields(std::string_view coat, std::string_view step, const Entry* entry,
                         Kind kind, std::string_view title) {
  const std::string id = (coat.empty() ? "" : std::string(coat) + "/") + std::string(step);
  page_.open("fieldset", {{"data-coat", std::string(coat)},
                          {"data-step", std::string(step)},
                          {"data-title", plain(title)}});
  page_.put("legend", "What was done: " + plain(title));
  field(id, {"done", "done", "checkbox", "", ""});
  field(id, {"date", "day", "date", "", ""},
        entry != nullptr ? entry->timed->start.substr(0, 10) : std::string());
  field(id, {"time", "begun", "time", "", ""});
  field(id, {"minutes", "minutes", "text", "numeric", ""});
  if (kind == Kind::coat) {
    const bool us = system_ == units::System::us;
    field(id, {"air", us ? "room °F" : "room °C", "text", "decimal", us ? "F" : "C"});
    field(id, {"humidity", "humidity %", "text", "decimal", "%"});
    field(id, {"mixed", "mixed g", "text", "decimal", "g"});
    field(id, {"left", "left in cup g", "text", "decimal", "g"});
  }
  field(id, {"note", "note", "text", "", ""});
  page_.close("fieldset");
}

void SheetWriter::record() {
  page_.open("div", {{"class", "screen"}});
  section("record", has_schedule() ? "5. Into the log" : "4. Into the log");
  page_.put("p",
            "What is ticked as done can be taken into the job log of the computer: download the "
            "file and enter it there. A step that was entered is not entered again; one that is "
            "changed afterwards counts as another, so tick a step when it is finished.");
  page_.open("p");
  page_.put("button", "Download what was done", {{"type", "button"}, {"id", "download"}});
  page_.close("p");
  page_.put("p", "", {{"id", "record-said"}, {"role", "status"}});
  page_.open("p").put("code", "wetout record import " + sheet_.plan.job.id + "-done.toml");
  page_.close("p");
  page_.put("p",
            "This browser does not keep what is typed here: it is lost when the page is closed or "
            "loaded again. Download it before.",
            {{"id", "not-kept"}, {"class", "missing"}, {"hidden", "hidden"}});
  page_.put("p", "What is typed stays in this browser on this device and goes nowhere else.",
            {{"class", "small"}});
  page_.close("section").close("div");
  page_.put("footer", fmt::format("{}, page made {}", sheet_.program, when_text(sheet_.made)),
            {{"class", "small"}});
}

}  // namespace wetout::report
