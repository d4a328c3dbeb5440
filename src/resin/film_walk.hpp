// The milestones of one start: those of the clock, then the floors on Tg along the path.
#pragma once

#include <limits>
#include <vector>

#include "film_path.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {

/// Absolute times of one start (seconds after the air's first point).
struct ClockTimes {
  double start = 0.0;
  PerMilestone<double> at;  ///< infinite where the sheet prints none
};

/// The places of the last look-ups, one a milestone, for starts in rising order.
struct ClockPlaces {
  Clock::Place start = 0;
  PerMilestone<Clock::Place> at;
};

ClockTimes clock_times(const FilmGround& ground, double start, ClockPlaces& places);

/// Something that Tg has to come up to, looked for from `from` to `limit`.
struct Floor {
  enum class Kind { above_air, fixed } kind = Kind::above_air;
  double kelvin = 0.0;  ///< above the air, or itself
  double from = 0.0;
  double limit = 0.0;
  double found = std::numeric_limits<double>::infinity();
  bool pending = true;
};

/// Walks until no floor is pending. Each stretch is shown to `see(path)`.
template <class See>
void walk(FilmPath& path, std::span<Floor> floors, See&& see);

/// The floors of one start.
struct Floors {
  Floor trim, handle, sandable, full_cure;
};
Floors floors_of(const FilmGround& ground, const ClockTimes& clock);

/// Puts clock and floors together.
FilmTimes together(const FilmGround& ground, const ClockTimes& clock, const Floors& floors);

/// One floor in one stretch of the path.
void look_for(Floor& floor, const FilmPath& path);

template <class See>
void walk(FilmPath& path, std::span<Floor> floors, See&& see) {
  const auto pending = [&] {
    for (const Floor& floor : floors) {
      if (floor.pending) return true;
    }
    return false;
  };
  while (pending()) {
    path.advance();
    for (Floor& floor : floors) {
      if (floor.pending) look_for(floor, path);
    }
    see(path);
  }
}

}  // namespace wetout::resin
