#include "schedule_sample_parts.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string_view>

#include "wetout/time/print.hpp"

namespace wetout::report::sample {

using schedule::Limit;
using schedule::State;
using std::chrono::hours;
using std::chrono::minutes;
using time::Instant;
using units::TempDelta;
using units::Temperature;

// `day` of June 2026, or beyond its end.
Instant june(int day, int hour, int minute) {
  using namespace std::chrono;
  return sys_days(2026y / 6 / 1) + days(day - 1) + hours(hour) + minutes(minute);
}
std::string text(Instant at) { return time::rfc3339(at, time::Zone()); }

double room_at(Instant at) {
  const double hour = units::in_hours(
      units::seconds(static_cast<double>((at - june(13, 0)) / std::chrono::seconds(1))));
  return 21.5 + 2.5 * std::cos((hour - 17.0) * 0.2617994) + 0.8 * std::sin(hour * 0.05);
}

namespace {

FilmMilestone milestone(const char* name, Instant from, double after_h) {
  const Instant at = from + minutes(std::lround(after_h * 60.0));
  return {name, text(at), at > june(27, 0)};
}

std::vector<FilmMilestone> film(Instant start, Instant wet_out, const Curing& cure) {
  std::vector<FilmMilestone> all = {milestone("gel", wet_out, cure.gel),
                                    milestone("trim_until", start, cure.trim_until),
                                    milestone("recoat_from", wet_out, cure.recoat_from),
                                    milestone("tack_free", wet_out, cure.tack_free),
                                    milestone("handle", wet_out, cure.handle),
                                    milestone("sandable", wet_out, cure.sandable),
                                    milestone("recoat_until", start, cure.recoat_until),
                                    milestone("full_cure", wet_out, cure.full_cure)};
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.time < b.time; });
  return all;
}

std::string id_of(const std::string& job, const std::string& coat, const std::string& step) {
  return coat.empty() ? job + "/" + step : job + "/" + coat + "/" + step;
}

const char* face_of(std::string_view coat) { return coat.starts_with("deck") ? "deck" : "bottom"; }

std::string time_of(const TimelineStep& step, std::string_view name) {
  const auto found = std::find_if(step.milestones.begin(), step.milestones.end(),
                                  [&](const FilmMilestone& m) { return m.name == name; });
  return found->time;
}

}  // namespace

void Board::step(const Row& row, StepState state) {
  ScheduleStep step = described(row);
  if (!before_.empty()) {
    step.after.push_back({before_, "end", "start", units::minutes(0), {}, {}, {}, false});
  }
  document_.steps.push_back(step);
  add_time(row, step.id, state);
  before_ = step.id;
}

void Board::wet(const Row& row, const Curing& cure, std::vector<StepSlack> slack, StepState state) {
  step(row, state);
  ScheduleStep& step = document_.steps.back();
  step.resin = cure.resin;
  step.resources.push_back({"stand", 1, "handle"});
  step.limits = {{Limit::dew_margin, "K", 3.0, {}, "start", "tack_free", {}},
                 {Limit::humidity, "share", {}, 0.75, "start", "tack_free", units::hours(1)}};
  step.room = StepRoom{"clean", "tack_free", {}};
  TimelineStep& time = document_.timeline.back();
  time.milestones = film(row.start, row.start + minutes(row.attended_min), cure);
  time.end = time_of(time, "tack_free");
  time.core_change = TempDelta::kelvin(-0.35);
  time.slack = std::move(slack);
  time.chance_limits_hold = 0.931;
  time.uses.push_back({"stand", time.start, time_of(time, "handle")});
}

void Board::watch(const char* coat, const char* name, Instant from) {
  const std::string wet = id_of(job_, coat, "wet");
  for (const int after : {15, 30, 60}) {
    const std::string word = "watch-" + std::to_string(after);
    const std::string title = std::string("Watch ") + name;
    step({coat, word.c_str(), title.c_str(), "drips, dry cloth, bubbles, lifted edges",
          from + minutes(after), 5});
    document_.steps.back().after = {
        {wet, "end", "start", units::minutes(after), units::minutes(after + 10), {}, {}, false}};
  }
}

void Board::optional(const Row& row, const char* group, const char* option) {
  ScheduleStep step = described(row);
  step.optional = true;
  step.group = id_of(job_, row.coat, group);
  step.option = option;
  step.after.push_back({id_of(job_, row.coat, "wet"),
                        "trim_until",
                        "end",
                        {},
                        units::minutes(0),
                        step.group,
                        step.option,
                        true});
  document_.steps.push_back(std::move(step));
}

void Board::inside_window(const char* of, const char* group) {
  document_.steps.back().after.push_back({id_of(job_, of, "wet"),
                                          "recoat_until",
                                          "start",
                                          {},
                                          units::minutes(0),
                                          id_of(job_, of, group),
                                          "window",
                                          true});
}

ScheduleStep Board::described(const Row& row) const {
  ScheduleStep step;
  step.id = id_of(job_, row.coat, row.step);
  step.job = job_;
  if (*row.coat != '\0') {
    step.coat = row.coat;
    step.face = face_of(row.coat);
  }
  step.step = row.step;
  step.title = row.title;
  step.how = row.how;
  step.attended = units::minutes(row.attended_min);
  step.resources = {{who_, 1, "end"}, {"board:" + job_, 1, "end"}};
  const std::string_view word = row.step;
  if (word.starts_with("sand") || word.starts_with("scuff") || word.starts_with("feather")) {
    step.room = StepRoom{"dusty", "end", units::minutes(30)};
  }
  return step;
}

void Board::add_time(const Row& row, const std::string& id, StepState state) {
  TimelineStep time;
  time.id = id;
  time.state = state;
  time.start = text(row.start);
  time.attended_until = text(row.start + minutes(row.attended_min));
  time.end = time.attended_until;
  time.who = who_;
  time.room = Temperature::celsius(room_at(row.start));
  time.dew_margin = TempDelta::kelvin(room_at(row.start) - dew_point_c);
  time.uses = {{who_, time.start, time.attended_until}};
  document_.timeline.push_back(std::move(time));
}

StepSlack slack(const char* limit, double value, double bound, const char* unit, Instant at,
                double left, std::optional<double> breaks, const char* of) {
  const bool is_window = std::string_view(limit) == "window";
  return {limit, of,     value,
          bound, unit,   text(at),
          left,  breaks, is_window ? std::optional(0.62) : std::nullopt};
}

}  // namespace wetout::report::sample
