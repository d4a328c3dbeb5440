// What is worth knowing of a schedule.
#include <algorithm>
#include <cmath>
#include <string>

#include "scheduling.hpp"

namespace wetout::work {
namespace {

// Room air that differs so much from what the plan was made for changes how long cups last.
constexpr double other_air_k = 3.0;

std::string words(std::string code) {
  std::replace(code.begin(), code.end(), '_', ' ');
  return code;
}

void fixed_against(const report::TimelineStep& step, base::Notices& out) {
  if (step.state != report::StepState::fixed) return;
  for (const report::StepSlack& slack : step.slack) {
    if (slack.slack >= 0.0) continue;
    out.push_back({.code = "schedule.fixed_against",
                   .text = "its start is fixed, against the limit of " + words(slack.limit),
                   .subject = step.id,
                   .value = slack.value,
                   .limit = slack.bound,
                   .unit = slack.unit});
  }
}

// Cups were worked out for the plan's air.
void other_air(const Scheduling& s, const schedule::PlacedStep& placed, base::Notices& out) {
  if (placed.state == schedule::PlacedStep::State::done) return;
  if (!s.step(placed.board, placed.step).is_wet()) return;
  const auto b = static_cast<std::size_t>(placed.board);
  const auto room = units::Temperature::kelvin(s.set_up.conditions[b].air.at(placed.start));
  const units::Temperature planned = s.asked.boards[b].work.plan.air;
  if (std::abs((room - planned).in_kelvin()) < other_air_k) return;
  out.push_back({.code = "schedule.other_air",
                 .text = "the plan's cups are for other air than the room will have: mix by "
                         "\"wetout mix\" with --air on the day",
                 .subject = s.id(placed.board, placed.step),
                 .value = room.in_celsius(),
                 .limit = planned.in_celsius(),
                 .unit = "C"});
}

// Enough people at every time, and yet nobody from the start to the end of this step.
void nobody(const Scheduling& s, const schedule::PlacedStep& placed, base::Notices& out) {
  if (placed.state != schedule::PlacedStep::State::planned || placed.person >= 0) return;
  out.push_back({.code = "schedule.nobody",
                 .text = "nobody was found who is there from its start to its end and does nothing "
                         "else meanwhile",
                 .subject = s.id(placed.board, placed.step)});
}

}  // namespace

void tell_notices(const Scheduling& s, const WeatherInUse& use,
                  report::ScheduleDocument& document) {
  base::Notices& out = document.notices;
  const auto add = [&](const base::Notices& more) {
    for (const base::Notice& notice : more) {
      if (std::find(out.begin(), out.end(), notice) == out.end()) out.push_back(notice);
    }
  };
  add(use.weather.notices);
  add(s.set_up.notices);
  const schedule::Conditions& inside = s.set_up.conditions.front();
  if (!inside.dew_point) {
    out.push_back({.code = "schedule.no_humidity",
                   .text = "the weather has no humidity: neither the dew-point margin nor the "
                           "humidity is looked at"});
  }
  if (inside.foul_air) {
    out.push_back({.code = "room.foul_air",
                   .text = "an unvented heater gives water, carbon dioxide and carbon monoxide to "
                           "the room: no film is to be open while it burns"});
  }
  if (s.asked.boards.size() > 1 && s.asked.prefer != schedule::Prefer::finish) {
    out.push_back({.code = "schedule.prefer_one",
                   .text = "what is preferred holds for each board once its finish is found"});
  }
  for (const report::TimelineStep& step : document.timeline) fixed_against(step, out);
  for (const schedule::PlacedStep& placed : s.arrangement.steps) {
    nobody(s, placed, out);
    other_air(s, placed, out);
  }
}

}  // namespace wetout::work
