// Weather from a file: the bytes are read here, what they mean is for climate to say.
#pragma once

#include <filesystem>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/climate/weather.hpp"

namespace wetout::files {

/// Problems: as below, but for those of climate::read_weather().
base::Result<std::string> read_weather_bytes(const std::filesystem::path& path);

/// Problems: "file.missing", "file.folder", "file.special", "file.too_big" (above 32 MiB),
/// "file.unreadable", those of climate::read_weather().
base::Result<climate::Weather> read_weather(const std::filesystem::path& path,
                                            const climate::WeatherOptions& options = {});

}  // namespace wetout::files
