// One reader for each layout; read_weather() finds out which.
#pragma once

#include <string_view>

#include "wetout/climate/weather.hpp"

namespace wetout::climate {

base::Result<Weather> read_csv(std::string_view text, std::string_view name,
                               const WeatherOptions& options);
base::Result<Weather> read_epw(std::string_view text, std::string_view name,
                               const WeatherDefaults& defaults = {});
/// Whatever begins like JSON: the forecast, the arrays, or a refusal that says what else it is.
base::Result<Weather> read_json(std::string_view text, std::string_view name,
                                const WeatherDefaults& defaults = {});

}  // namespace wetout::climate
