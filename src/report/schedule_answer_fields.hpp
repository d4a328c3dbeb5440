// The keys of what a schedule says: choices, timeline, windows, alternatives, what changed, what
// would have to; in the order of docs/formats/schedule.schema.json.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "fields.hpp"
#include "numbers.hpp"
#include "schedule_fields.hpp"
#include "wetout/report/schedule_document.hpp"

namespace wetout::report {

template <>
struct Words<StepState> {
  using S = StepState;
  static constexpr std::array all = {S::planned, S::fixed, S::done};
  static std::string_view word(StepState state) { return to_string(state); }
};

template <>
struct Fields<ScheduleChoice> {
  static void visit(auto& v, auto& choice) {
    v("group", choice.group);
    v("options", choice.options);
    v("chosen", choice.chosen);
    v("text", choice.text);
  }
};
template <>
struct Fields<ResourceUse> {
  static void visit(auto& v, auto& use) {
    v("id", use.id);
    v("from", use.from);
    v("to", use.to);
  }
};
template <>
struct Fields<FilmMilestone> {
  static void visit(auto& v, auto& milestone) {
    v("name", milestone.name);
    v("time", milestone.time);
    v("beyond_forecast", milestone.beyond_forecast);
  }
};
template <>
struct Fields<StepSlack> {
  static void visit(auto& v, auto& slack) {
    v("limit", slack.limit);
    v("of", slack.of);
    v("value", slack.value, as::Plain{});
    v("bound", slack.bound, as::Plain{});
    v("unit", slack.unit);
    v("time", slack.time);
    v("slack", slack.slack, as::Plain{});
    v("shift_that_breaks_it_c", slack.breaks_at_kelvin, as::Plain{});
    v.later("chance", slack.chance, as::Plain{});
  }
};
template <>
struct Fields<TimelineStep> {
  static void visit(auto& v, auto& step) {
    v("id", step.id);
    v("state", step.state);
    v("start", step.start);
    v("attended_until", step.attended_until);
    v("end", step.end);
    v("who", step.who);
    v("room_c", step.room, as::Celsius{});
    v("dew_margin_c", step.dew_margin, as::Kelvins{});
    v("core_change_c", step.core_change, as::Kelvins{});
    v("uses", step.uses);
    v("milestones", step.milestones);
    v("slack", step.slack);
    v.later("chance_limits_hold", step.chance_limits_hold, as::Plain{});
  }
};
template <>
struct Fields<ScheduleObjective> {
  static void visit(auto& v, auto& objective) {
    v("finish", objective.finish);
    v("slack", objective.tight);
    v("visits", objective.visits);
  }
};
template <>
struct Fields<CoatWindow> {
  static void visit(auto& v, auto& window) {
    v("job", window.job);
    v("coat", window.coat);
    v("step", window.step);
    v("from", window.from);
    v("to", window.to);
    v("ok", window.ok);
    v("limit", window.limit);
    v("reason", window.reason);
  }
};
template <>
struct Fields<StepStart> {
  static void visit(auto& v, auto& step) {
    v("id", step.id);
    v("start", step.start);
  }
};
template <>
struct Fields<Alternative> {
  static void visit(auto& v, auto& alternative) {
    v("what", alternative.what);
    v("finish", alternative.finish);
    v("objective", alternative.objective);
    v("starts", alternative.starts);
  }
};
template <>
struct Fields<ChangedStep> {
  static void visit(auto& v, auto& step) {
    v("id", step.id);
    v("was", step.was);
    v("now", step.now);
    v("why", step.why);
  }
};
template <>
struct Fields<SmallestChange> {
  static void visit(auto& v, auto& change) {
    v("change", change.change);
    v("value", change.value);
    v("text", change.text);
    v("finish", change.finish);
  }
};
template <>
struct Fields<Impossible> {
  static void visit(auto& v, auto& impossible) {
    v("why", impossible.why);
    v("change", impossible.change);
    v("value", impossible.value);
    v("text", impossible.text);
    v("finish", impossible.finish);
    v("others", impossible.others);
  }
};

}  // namespace wetout::report
