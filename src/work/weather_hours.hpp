// Weather, room and core at the whole hours of the wall clock.
#pragma once

#include <vector>

#include "wetout/climate/weather.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/schedule/conditions.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

/// From `from` to `to`, ends included. What lies in a gap is left out.
std::vector<report::WeatherHour> weather_hours(const climate::Weather& weather,
                                               const schedule::Conditions& conditions,
                                               time::Instant from, time::Instant to,
                                               const time::Zone& zone);

}  // namespace wetout::work
