// From when until when: what was asked, as far as the weather reaches.
#pragma once

#include <chrono>
#include <optional>

#include "weather_in_use.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

struct Days {
  time::Instant from, to;  ///< `from` on the grid of starts
  base::Notices notices;
};

/// Where nobody says otherwise: from now, or the beginning of a weather that begins later; as long
/// as is usual, or to its end. Problems: "weather.outside", "time.order".
base::Result<Days> days_asked(const WeatherInUse& use, time::Instant now,
                              std::optional<time::Instant> from, std::optional<time::Instant> until,
                              std::optional<std::chrono::days> usual, const time::Zone& zone);

}  // namespace wetout::work
