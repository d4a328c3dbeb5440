#include "schedule_phrases.hpp"

#include <algorithm>

#include "layout.hpp"
#include "weather_chart.hpp"

namespace wetout::report {
namespace {

using layout::whole;

constexpr double least_warming_k = 0.1;

bool of_coat(const Entry& a, const Entry& b) { return a.job == b.job && a.coat == b.coat; }

std::string time_of(const ScheduleView& view, const Entry& wet, std::string_view name,
                    Spoken& spoken) {
  const FilmMilestone* found = ScheduleView::milestone(wet, name);
  if (found == nullptr) return {};
  std::string text = view.wall.when(instant_of(found->time), spoken);
  if (found->beyond_forecast) text += " (past the forecast)";
  return whole(text);
}

bool laps_are_cut(const ScheduleView& view, const Entry& wet) {
  const auto& steps = view.document.steps;
  return std::any_of(steps.begin(), steps.end(), [&](const ScheduleStep& step) {
    return step.job == wet.job && step.coat == wet.coat && step.step == "trim";
  });
}

bool wet_to_come(const ScheduleView& view, const Entry& of) {
  return std::any_of(view.entries.begin(), view.entries.end(), [&](const Entry& entry) {
    return entry.is_wet() && !entry.is_done() && of_coat(entry, of);
  });
}

}  // namespace

std::vector<std::string> film_phrases(const ScheduleView& view, const Entry& wet, Spoken& spoken) {
  std::vector<std::string> each;
  const auto add = [&](std::string_view name, std::string_view word) {
    const std::string at = time_of(view, wet, name, spoken);
    if (!at.empty()) each.push_back(whole(std::string(word)) + std::string(1, layout::glue) + at);
  };
  add("gel", "gel");
  if (laps_are_cut(view, wet)) add("trim_until", "trim until");
  add("tack_free", "tack-free");
  add("handle", "handle");
  const std::string from = time_of(view, wet, "recoat_from", spoken);
  const std::string until = time_of(view, wet, "recoat_until", spoken);
  if (!from.empty()) {
    each.push_back(
        whole(until.empty() ? "recoat from " + from : "recoat " + from + " to " + until));
  }
  add("sandable", "sandable");
  return each;
}

std::vector<std::string> room_phrases(const Entry& wet, units::System system) {
  const TimelineStep& timed = *wet.timed;
  if (!timed.room) return {};
  std::vector<std::string> each{"room " + whole(units::print(*timed.room, system))};
  if (timed.dew_margin) {
    each.push_back("board " + whole(units::print(*timed.dew_margin, system)) +
                   " above the dew point");
  }
  if (timed.core_change && timed.core_change->in_kelvin() >= least_warming_k) {
    each.push_back("core warms " + whole(units::print(*timed.core_change, system)));
  }
  return each;
}

std::vector<const laminate::Caution*> cautions_at(const ScheduleView& view, const Entry& entry) {
  if (entry.is_done() || (!entry.is_wet() && wet_to_come(view, entry))) return {};
  std::vector<const laminate::Caution*> each;
  for (const laminate::Caution& caution : view.document.cautions) {
    if (caution.step.empty()) continue;
    const bool concerns = caution.step == entry.timed->id || caution.step == entry.coat ||
                          caution.step == entry.job + "/" + entry.coat;
    if (concerns) each.push_back(&caution);
  }
  return each;
}

}  // namespace wetout::report
