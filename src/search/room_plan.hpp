// Days of a room that is kept in one mode at a time: first what is short (dust), then what lasts
// (an open film), at a fixed share of the working day.
//
// Boards that share such a room stand in each other's way: whoever is put in first leaves the
// others odd hours. Under a plan they do not, so that putting them in one after the other comes
// much nearer to the best. A plan is only a way to a first schedule: what it rules out is not
// forbidden.
#pragma once

#include <vector>

#include "model.hpp"

namespace wetout::search {

class RoomPlanner {
 public:
  explicit RoomPlanner(const Problem& problem);

  /// No room with two modes, or no calendar that all operations share: there is nothing to plan.
  [[nodiscard]] bool empty() const { return rooms_.empty() || days_.empty(); }

  /// What is not to be had: every room is in its lasting mode but for the first `share` of each
  /// working day.
  [[nodiscard]] std::vector<Taken> plan(double share) const;

 private:
  struct Room {
    int place = -1;
    int brief = -1;    ///< mode
    int lasting = -1;  ///< mode
  };
  struct Day {
    Slot first = 0;
    Slot end = 0;
  };

  void find_rooms(const Problem& problem);
  /// Spans that something lasting would join belong to one day.
  void find_days(const Problem& problem);

  std::vector<Room> rooms_;
  std::vector<Day> days_;
  Slot lasts_ = 0;  ///< the least of what is lasting
};

}  // namespace wetout::search
