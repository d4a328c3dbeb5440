// The shop's room in the weather of a file.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "one_resin.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/report/cure_document.hpp"
#include "wetout/time/history.hpp"

namespace wetout::work {

struct RoomHistory {
  time::History air_kelvin;  ///< from `start` on
  time::Instant start;
  time::Instant known_until;  ///< after that the last day repeats, or the last value holds
  report::CureWeather about;
  base::Notices notices;
  std::vector<laminate::Assumption> assumptions;
};

/// `start` is that of the film, else now. Problems: those of files::read_weather(),
/// "weather.outside" where it does not cover the start, "cure.beyond_sense" where the room is not
/// at 0 to 40 C then. Where it comes to be so later, its last sensible air is held.
base::Result<RoomHistory> room_air(const OneResin& resin, const std::filesystem::path& file,
                                   std::optional<time::Instant> start);

}  // namespace wetout::work
