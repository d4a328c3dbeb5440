// When each coat could be started, and what closes the other times.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

#include "scheduling.hpp"
#include "start_windows.hpp"

namespace wetout::work {
namespace {

using schedule::Slot;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

}  // namespace

Closing::Closing(const Scheduling& s)
    : s_(s), possible_(search::possible_starts(s.arranging.problem)) {}

std::optional<Closed> Closing::at(int b, int i, Slot slot) const {
  const int op = s_.arranging.op[u(b)][u(i)];
  if (op < 0) return Closed{"order", "done"};
  const schedule::Step& step = s_.step(b, i);
  const auto attended = std::chrono::seconds(std::llround(units::in_seconds(step.attended)));
  const schedule::Setting& setting = s_.setting();
  const time::Instant start = setting.grid.at(slot), end = start + attended;
  const bool somebody =
      std::any_of(setting.people.begin(), setting.people.end(), [&](const auto& person) {
        return std::any_of(person.spans.begin(), person.spans.end(), [&](const auto& span) {
          return span.from <= start && end <= span.until;
        });
      });
  if (!somebody) return Closed{"hours", "outside working hours"};
  if (step.is_wet()) {
    const schedule::Verdict& verdict = s_.arranging.at[u(b)][u(step.coat)][u(slot)];
    if (verdict.state == schedule::State::refuse) {
      return Closed{std::string(to_string(*verdict.limit)),
                    std::string(reason_of(verdict, s_.open_film(b, step.coat, slot),
                                          s_.set_up.conditions[u(b)]))};
    }
  }
  if (possible_.empty()) return std::nullopt;  // nothing fits at all: that is said elsewhere
  const search::Bits& possible = possible_[u(op)];
  if (possible.test(slot)) return std::nullopt;
  const bool early = possible.next(0) < 0 || slot < possible.next(0);
  return early ? Closed{"order", "before what must come first"}
               : Closed{"later", "what follows would not fit"};
}

std::vector<report::CoatWindow> coat_windows(const Scheduling& s) {
  std::vector<report::CoatWindow> windows;
  const Closing closing(s);
  for (int b = 0; b < static_cast<int>(s.setting().boards.size()); ++b) {
    for (int i = 0; i < static_cast<int>(s.board(b).steps.steps.size()); ++i) {
      const schedule::Step& step = s.step(b, i);
      const int op = s.arranging.op[u(b)][u(i)];
      if (!step.is_wet() || op < 0 || s.arranging.of[u(op)].done) continue;
      const std::size_t first = windows.size();
      for (Slot slot = s.setting().begin; slot < s.setting().grid.slots; ++slot) {
        const std::string now = s.told(s.setting().grid.at(slot));
        const auto closed = closing.at(b, i, slot);
        report::CoatWindow window{.job = s.board(b).job,
                                  .coat = step.name.coat,
                                  .step = "wet",
                                  .from = now,
                                  .to = now,
                                  .ok = schedule::State::refuse,
                                  .limit = {},
                                  .reason = {}};
        if (closed) {
          window.limit = closed->limit;
          window.reason = closed->reason;
        } else {
          const auto& verdict = s.arranging.at[u(b)][u(step.coat)][u(slot)];
          window.ok = verdict.state;
          window.reason = std::string(
              reason_of(verdict, s.open_film(b, step.coat, slot), s.set_up.conditions[u(b)]));
          if (verdict.limit) window.limit = std::string(to_string(*verdict.limit));
        }
        const bool goes_on = windows.size() > first && windows.back().ok == window.ok &&
                             windows.back().limit == window.limit &&
                             windows.back().reason == window.reason;
        if (goes_on) continue;
        if (windows.size() > first) windows.back().to = now;
        windows.push_back(std::move(window));
      }
      if (windows.size() > first) {
        windows.back().to = s.told(s.setting().grid.at(s.setting().grid.slots));
      }
    }
  }
  return windows;
}

}  // namespace wetout::work
