// One day of a schedule in bars: hours and work of each person, films, the air of the room.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "schedule_view.hpp"
#include "wetout/time/history.hpp"

namespace wetout::report {

inline constexpr int bar_cell_min = 30;
inline constexpr std::size_t bar_cells = 24 * 60 / bar_cell_min;

// Signs of bars. Of a cell that holds several the first of these.
inline constexpr char bar_work = '#';   ///< somebody is at work
inline constexpr char bar_hours = '_';  ///< working hours
inline constexpr char bar_wet = '~';    ///< until gel
inline constexpr char bar_tacky = '=';  ///< until tack-free
inline constexpr char bar_firm = '-';   ///< until it can be handled
inline constexpr char bar_hard = '.';   ///< until it can be sanded

struct Bar {
  std::string label;
  std::string cells = std::string(bar_cells, ' ');
  std::string aside;  ///< the last milestone of the day: "handle 04:51"
};

struct DayBars {
  std::array<std::optional<units::Temperature>, 24> room;  ///< at each hour of the wall
  std::array<std::optional<units::TempDelta>, 24> margin;  ///< of the coldest board
  std::vector<Bar> people;
  std::vector<Bar> films;  ///< those that cannot be sanded yet, in order of their start
};

/// The air and the cores of a document, to look up.
class RoomCourse {
 public:
  explicit RoomCourse(const ScheduleDocument& document);
  [[nodiscard]] std::optional<units::Temperature> room(time::Instant at) const;
  [[nodiscard]] std::optional<units::TempDelta> margin(time::Instant at) const;
  /// Relative, a share of 1.
  [[nodiscard]] std::optional<double> humidity(time::Instant at) const;
  /// In kelvin; null where none is known.
  [[nodiscard]] const time::History* room_history() const { return room_ ? &*room_ : nullptr; }

 private:
  [[nodiscard]] bool knows_damp(time::Instant at) const;
  [[nodiscard]] bool knows(time::Instant at) const;

  std::optional<time::History> room_, dew_point_, coldest_;
};

DayBars day_bars(const ScheduleView& view, const RoomCourse& course, time::WallTime day);

/// Where the film of a wet stops to matter: sandable, or the last it is known to reach before.
time::Instant film_until(const Entry& wet);

}  // namespace wetout::report
