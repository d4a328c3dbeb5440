#include "wetout/resin/film.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "film_walk.hpp"

namespace wetout::resin {

Film::Film(const Cure& cure, const time::History& air_kelvin)
    : ground_(std::make_shared<const FilmGround>(cure, air_kelvin)),
      first_(air_kelvin.first()),
      last_(air_kelvin.last()) {}

double Film::seconds(time::Instant instant) const {
  return static_cast<double>((instant - first_).count());
}

bool Film::beyond_air(time::Instant start, double after_s) const {
  return last_ > first_ && seconds(start) + after_s > seconds(last_);
}

FilmTimes Film::times(time::Instant start) const {
  ClockPlaces places;
  const ClockTimes clock = clock_times(*ground_, seconds(start), places);
  Floors floors = floors_of(*ground_, clock);
  std::array<Floor, 4> all{floors.trim, floors.handle, floors.sandable, floors.full_cure};
  FilmPath path(*ground_, clock.start);
  walk(path, all, [](const FilmPath& /*path*/) {});
  return together(*ground_, clock, {all[0], all[1], all[2], all[3]});
}

std::vector<FilmState> Film::states(time::Instant start, std::span<const double> after_s) const {
  std::vector<FilmState> states;
  states.reserve(after_s.size());
  const double begin = seconds(start);
  FilmPath path(*ground_, begin);
  path.advance();
  for (const double after : after_s) {
    const double t = begin + after;
    while (path.until() < t) path.advance();
    const double conversion = path.conversion(t);
    states.push_back({after, units::Temperature::kelvin(path.kelvin(t)), conversion,
                      units::Temperature::kelvin(ground_->tg_kelvin(conversion))});
  }
  return states;
}

std::optional<units::Temperature> temperature_reaching(const Cure& cure, Milestone milestone,
                                                       units::Temperature near) {
  const auto reaches = [&](units::Temperature at) {
    const auto time =
        Film(cure, time::History::constant(at.in_kelvin())).times(time::Instant{})[milestone];
    return time && time->reached;
  };
  // Nearest first; above before below.
  const int centre = static_cast<int>(std::lround(2.0 * near.in_celsius()));
  for (int away = 0; away <= 120; ++away) {
    for (const int half : {centre + away, centre - away}) {
      if (half < 0 || half > 120) continue;
      const auto at = units::Temperature::celsius(half / 2.0);
      if (reaches(at)) return at;
      if (away == 0) break;
    }
  }
  return std::nullopt;
}

}  // namespace wetout::resin
