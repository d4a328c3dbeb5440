#include "room_plan.hpp"

#include <algorithm>
#include <limits>
#include <map>

namespace wetout::search {
namespace {

/// The least time that a mode is kept for one operation; nothing for what spans operations.
Slot least_kept(const Problem& problem, const RoomMode& mode) {
  if (mode.from.op != mode.to.op) return 0;
  const Operation& op = problem.ops[at(mode.from.op)];
  Slot least = std::numeric_limits<Slot>::max();
  for (Slot s = 0; s < problem.horizon; ++s) {
    if (op.allowed.size() > 0 && !op.allowed.test(s)) continue;
    least =
        std::min(least, time_of(problem, mode.to, s) + mode.after - time_of(problem, mode.from, s));
  }
  return least;
}

}  // namespace

RoomPlanner::RoomPlanner(const Problem& problem) {
  find_rooms(problem);
  if (!rooms_.empty()) find_days(problem);
}

void RoomPlanner::find_rooms(const Problem& problem) {
  std::map<int, std::map<int, Slot>> rooms;  // least time per room and mode
  for (const RoomMode& mode : problem.modes) {
    const Slot least = least_kept(problem, mode);
    const auto [entry, fresh] = rooms[mode.room].try_emplace(mode.mode, least);
    if (!fresh) entry->second = std::min(entry->second, least);
  }
  lasts_ = std::numeric_limits<Slot>::max();
  for (const auto& [room, modes] : rooms) {
    if (modes.size() != 2) continue;
    const auto& [one, one_least] = *modes.begin();
    const auto& [two, two_least] = *std::next(modes.begin());
    const bool second_lasts = two_least > one_least;
    rooms_.push_back(
        {place_of_room(problem, room), second_lasts ? one : two, second_lasts ? two : one});
    lasts_ = std::min(lasts_, std::max(one_least, two_least));
  }
}

void RoomPlanner::find_days(const Problem& problem) {
  const int calendar = problem.ops.front().calendar;
  const bool shared =
      calendar >= 0 && std::all_of(problem.ops.begin(), problem.ops.end(),
                                   [&](const Operation& op) { return op.calendar == calendar; });
  if (!shared) return;
  for (const auto& [first, end] : problem.calendars[at(calendar)].spans) {
    if (!days_.empty() && first - days_.back().end < lasts_) {
      days_.back().end = end;
    } else {
      days_.push_back({first, end});
    }
  }
}

std::vector<Taken> RoomPlanner::plan(double share) const {
  std::vector<Taken> out;
  for (const Room& room : rooms_) {
    Slot since = std::numeric_limits<Slot>::min() / 4;
    for (const Day& day : days_) {
      const Slot turn = day.first + static_cast<Slot>(share * (day.end - day.first));
      out.push_back({room.place, room.lasting, since, day.first});
      out.push_back({room.place, room.brief, day.first, turn});
      since = turn;
    }
    out.push_back({room.place, room.lasting, since, std::numeric_limits<Slot>::max() / 4});
  }
  return out;
}

}  // namespace wetout::search
