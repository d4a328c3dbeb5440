#include "wetout/files/weather_file.hpp"

#include "text_file.hpp"

namespace wetout::files {

base::Result<std::string> read_weather_bytes(const std::filesystem::path& path) {
  return read_bytes(path, weather_file);
}

base::Result<climate::Weather> read_weather(const std::filesystem::path& path,
                                            const climate::WeatherOptions& options) {
  const auto bytes = read_weather_bytes(path);
  if (!bytes) return tl::unexpected(bytes.error());
  return climate::read_weather(*bytes, path.string(), options);
}

}  // namespace wetout::files
