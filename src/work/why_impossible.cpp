// Nothing fits: up to which step it does, and what is in the way of the next.
#include <algorithm>
#include <map>
#include <string>

#include "scheduling.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using schedule::Setting;
using schedule::Slot;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

bool good(search::State state) {
  return state == search::State::proved || state == search::State::feasible;
}

// Of one board the steps up to `last`, as if nothing came after them.
Setting beginning(const Setting& setting, std::size_t board, int last) {
  Setting part = setting;
  part.boards = {setting.boards[board]};
  auto& passed = part.boards.front().passed;
  for (std::size_t i = u(last) + 1; i < passed.size(); ++i) passed[i] = true;
  return part;
}

// What closes most of the working hours in which the step could follow what comes before it.
std::string in_the_way(const Scheduling& s, const Setting& before, int b, int step) {
  const Closing closing(s);
  Slot earliest = s.setting().begin;
  const schedule::Arranging known = schedule::arranging(before);
  for (const search::Bits& starts : search::possible_starts(known.problem)) {
    earliest = std::max(earliest, starts.next(0));
  }
  std::map<std::string, int> reasons;
  bool hours = false;
  for (Slot slot = earliest; slot < s.setting().grid.slots; ++slot) {
    const auto closed = closing.at(b, step, slot);
    if (closed && closed->limit == "hours") continue;
    hours = true;
    if (closed && closed->limit != "order" && closed->limit != "later") ++reasons[closed->reason];
  }
  const std::string until = time::print_wall(s.asked.until, s.asked.zone);
  if (!hours) return "there are no working hours left for it before " + until;
  if (reasons.empty()) return "what it follows leaves no working hours for it before " + until;
  const auto most =
      std::max_element(reasons.begin(), reasons.end(),
                       [](const auto& a, const auto& c) { return a.second < c.second; });
  return "in most of the hours left for it: " + most->first;
}

std::string why(const Scheduling& s, std::size_t b, const search::Limits& limits) {
  const schedule::BoardSetting& board = s.setting().boards[b];
  // The first step with which the beginning does not fit any more.
  int fits = -1, fails = static_cast<int>(board.steps.steps.size()) - 1;
  while (fails - fits > 1) {
    const int middle = (fits + fails) / 2;
    const bool here = good(schedule::fits(beginning(s.setting(), b, middle), limits));
    (here ? fits : fails) = middle;
  }
  // Steps of one option are not what it hangs on.
  int step = fails;
  while (step + 1 < static_cast<int>(board.steps.steps.size()) &&
         board.steps.steps[u(step)].when.group >= 0) {
    ++step;
  }
  const std::string title = board.steps.steps[u(step)].title;
  const std::string up_to =
      fits < 0 ? "" : "it fits up to \"" + board.steps.steps[u(fits)].title + "\"; ";
  const std::string reason =
      fits < 0 ? in_the_way(s, s.setting(), static_cast<int>(b), step)
               : in_the_way(s, beginning(s.setting(), b, fits), static_cast<int>(b), step);
  return up_to + "\"" + title + "\" does not: " + reason;
}

}  // namespace

std::string why_impossible(const Scheduling& s, const search::Limits& limits) {
  const auto& boards = s.setting().boards;
  for (std::size_t b = 0; b < boards.size(); ++b) {
    const int last = static_cast<int>(boards[b].steps.steps.size()) - 1;
    if (boards.size() > 1 && good(schedule::fits(beginning(s.setting(), b, last), limits)))
      continue;
    const std::string text = why(s, b, limits);
    return boards.size() > 1 ? boards[b].job + ": " + text : text;
  }
  return "each board fits alone, but not all of them together before " +
         time::print_wall(s.asked.until, s.asked.zone);
}

}  // namespace wetout::work
