#include "scheduling.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "wetout/time/print.hpp"

namespace wetout::work {

using schedule::Slot;
using time::Instant;

std::string Scheduling::told(Instant at) const { return time::rfc3339(at, asked.zone); }

std::string Scheduling::id(int b, int i) const {
  return board(b).job + "/" + to_string(step(b, i).name);
}

const schedule::PlacedStep* Scheduling::placed(int b, int i) const {
  const auto found =
      std::find_if(arrangement.steps.begin(), arrangement.steps.end(),
                   [&](const schedule::PlacedStep& p) { return p.board == b && p.step == i; });
  return found == arrangement.steps.end() ? nullptr : &*found;
}

schedule::FilmSpans Scheduling::film(const schedule::PlacedStep& wet) const {
  const schedule::BoardSetting& of = board(wet.board);
  const auto& fact = of.facts[static_cast<std::size_t>(wet.step)];
  return schedule::film_of(setting(), of, step(wet.board, wet.step).coat, wet.start,
                           wet.attended_until, fact ? &*fact : nullptr);
}

Instant Scheduling::instant(double seconds) const {
  // Far beyond any horizon, and still a date.
  constexpr double most_s = 3e8;
  return setting().grid.origin + std::chrono::seconds(std::llround(std::min(seconds, most_s)));
}

schedule::OpenFilm Scheduling::open_film(int b, int coat, Slot start) const {
  const schedule::BoardSetting& of = board(b);
  const auto wet = static_cast<std::size_t>(of.steps.wets[static_cast<std::size_t>(coat)]);
  const auto attended =
      std::chrono::seconds(std::llround(units::in_seconds(of.steps.steps[wet].attended)));
  const Instant begun = setting().grid.at(start);
  const Slot end = setting().grid.not_before(begun + attended);
  const auto& film = setting()
                         .films.at(of.resins[static_cast<std::size_t>(coat)])
                         ->at[static_cast<std::size_t>(end)];
  return {begun, begun + attended, instant(film[resin::Milestone::gel]),
          instant(film[resin::Milestone::tack_free])};
}

Instant Scheduling::span_of(Instant end) const {
  Instant found = end;
  const auto& spans = arranging.problem.calendars.front().spans;
  for (const auto& [from, until] : spans) {
    if (setting().grid.at(from) < end) found = setting().grid.at(from);
  }
  return spans.empty() || end <= setting().grid.at(spans.front().first) ? end : found;
}

bool Scheduling::chosen(int b, schedule::When when) const {
  if (when.group < 0) return true;
  return arrangement.chosen[static_cast<std::size_t>(b)][static_cast<std::size_t>(when.group)] ==
         when.option;
}

}  // namespace wetout::work
