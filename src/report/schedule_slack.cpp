#include "schedule_slack.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "layout.hpp"
#include "weather_chart.hpp"
#include "wetout/schedule/defaults.hpp"
#include "wetout/schedule/step_defaults.hpp"

namespace wetout::report {
namespace {

using layout::whole;
using units::TempDelta;

constexpr std::string_view window = "window";

double scale(const StepSlack& slack) {
  static const schedule::LimitDefaults limits;
  static const schedule::StepDefaults steps;
  if (slack.limit == window) return steps.window_scale.value;
  if (slack.limit == "humidity") return limits.humidity_scale.value;
  if (slack.limit == "core_rise") return limits.core_scale.value.in_kelvin();
  if (slack.limit == "dew_margin") return limits.margin_scale.value.in_kelvin();
  return limits.temperature_scale.value.in_kelvin();
}

std::string amount(const StepSlack& slack, units::System system) {
  const double size = std::abs(slack.slack);
  if (slack.unit == "share") return units::print_percent(std::round(size * 1000.0) / 1000.0);
  if (slack.unit == "min") return units::print(units::minutes(size), system);
  return units::print(TempDelta::kelvin(size), system);
}

// "recoat window of bottom lam"
std::string window_name(const ScheduleView& view, const StepSlack& slack) {
  const auto closing =
      std::find_if(view.closings.begin(), view.closings.end(), [&](const ClosingWindow& one) {
        return one.film->timed->id == slack.of && one.at == instant_of(slack.time);
      });
  std::string which = "window";
  if (closing != view.closings.end()) which = closing->trim ? "trim window" : "recoat window";
  const Entry* film = view.find(slack.of);
  const std::string coat = film != nullptr ? view.coat_label(*film) : view.step_label(slack.of);
  return which + " of " + layout::plain(coat);
}

std::string window_text(const ScheduleView& view, const StepSlack& slack, units::System system,
                        Spoken& spoken) {
  const std::string closes = view.wall.when(instant_of(slack.time), spoken);
  return fmt::format("{} {} the {} closes {}", whole(amount(slack, system)),
                     slack.slack < 0.0 ? "after" : "before", window_name(view, slack),
                     whole(closes));
}

struct Words {
  std::string_view what, turns;
};
Words words(std::string_view limit) {
  if (limit == "dew_margin") return {"dew margin", "the room is {} colder"};
  if (limit == "humidity") return {"humidity", "the room is {} colder"};
  if (limit == "cold") return {"lowest temperature", "the room is {} colder"};
  if (limit == "warm") return {"highest temperature", "the room is {} warmer"};
  if (limit == "core_rise") return {"core warming", "the core warms {} more"};
  return {limit, "the room turns {} the bad way"};
}

}  // namespace

std::optional<std::string> chance_text(const ScheduleView& view, const StepSlack& slack) {
  if (!slack.chance || *slack.chance >= surely) return std::nullopt;
  return "chance that the " + window_name(view, slack) +
         " is still open: " + percent_of_chance(*slack.chance);
}

std::string percent_of_chance(double chance) {
  return units::print_percent(std::round(chance * 100.0) / 100.0);
}

double tightness(const StepSlack& slack) { return slack.slack / scale(slack); }

const StepSlack* tightest(const TimelineStep& step) {
  const auto found = std::min_element(
      step.slack.begin(), step.slack.end(),
      [](const StepSlack& a, const StepSlack& b) { return tightness(a) < tightness(b); });
  return found == step.slack.end() ? nullptr : &*found;
}

std::string slack_text(const ScheduleView& view, const StepSlack& slack, units::System system,
                       Spoken& spoken) {
  if (slack.limit == window) return window_text(view, slack, system, spoken);
  const Words say = words(slack.limit);
  std::string text = fmt::format("{} {} {}", say.what, whole(amount(slack, system)),
                                 slack.slack < 0.0 ? "beyond its limit" : "to spare");
  text += " " + whole(view.wall.when(instant_of(slack.time), spoken));
  if (slack.breaks_at_kelvin && *slack.breaks_at_kelvin >= 0.0) {
    const std::string by = whole(units::print(TempDelta::kelvin(*slack.breaks_at_kelvin), system));
    text += ", breaks if " + fmt::format(fmt::runtime(say.turns), by);
  }
  return text;
}

}  // namespace wetout::report
