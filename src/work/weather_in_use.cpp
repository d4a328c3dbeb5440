#include "weather_in_use.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

#include "wetout/files/weather_file.hpp"

namespace wetout::work {
namespace {

namespace chrono = std::chrono;

constexpr chrono::days nearly_a_year{360};
// On either side of the year asked for, so that neither New Year's Eve is an end.
constexpr int years_placed = 3;
constexpr int first_placed = 1970, last_placed = 2037;
// By then every guard is at its most.
constexpr chrono::days long_before{366};

// Of a long weather only what reaches the days that are asked for: before them the room settles,
// after them films are open.
constexpr chrono::days settling{4};
constexpr double settling_lags = 10.0;
constexpr chrono::days open_after{21};

int year_of(time::Instant at) {
  const chrono::year_month_day day(chrono::floor<chrono::days>(at));
  return static_cast<int>(day.year());
}

bool is_to_be_placed(const climate::Weather& weather, time::Instant around) {
  return weather.typical_year ||
         (weather.last() - weather.first() >= nearly_a_year && weather.last() < around);
}

}  // namespace

base::Result<WeatherInUse> in_use(climate::Weather weather, time::Instant now,
                                  time::Instant around) {
  if (is_to_be_placed(weather, around)) {
    const int year = std::clamp(year_of(around) - 1, first_placed, last_placed - years_placed + 1);
    auto placed = climate::place(weather, year, years_placed);
    if (!placed) return tl::unexpected(placed.error());
    return WeatherInUse{std::move(*placed), true, around - long_before};
  }
  const time::Instant issued = weather.made.value_or(std::min(weather.first(), now));
  return WeatherInUse{std::move(weather), false, issued};
}

climate::Weather part_of(const climate::Weather& weather, time::Instant from, time::Instant to,
                         units::Duration lag) {
  const auto lags =
      chrono::seconds(static_cast<std::int64_t>(settling_lags * units::in_seconds(lag)));
  const time::Instant begin = from - std::max<chrono::seconds>(settling, lags);
  const time::Instant end = to + open_after;
  climate::Weather part = weather;
  std::erase_if(part.points, [&](const climate::WeatherPoint& point) {
    return point.at < begin || point.at > end;
  });
  // A gap may be longer than what is left around it.
  return part.points.size() < 2 ? weather : part;
}

base::Result<WeatherFile> usual_weather(const std::optional<std::filesystem::path>& named,
                                        const files::ShopFile& shop, const time::Zone& zone,
                                        std::string_view key) {
  if (!named && !shop.weather) {
    return base::fail({.code = "weather.not_named",
                       .message = "neither the command nor the shop file names a weather file",
                       .key = std::string(key),
                       .expected = "a forecast (CSV, EPW, JSON), or weather = \"forecast.csv\" "
                                   "under [shop] in " +
                                   shop.source.name});
  }
  const std::filesystem::path path = named ? *named : *shop.weather;
  const auto read = [&]() -> base::Result<WeatherFile> {
    auto bytes = files::read_weather_bytes(path);
    if (!bytes) return tl::unexpected(bytes.error());
    climate::WeatherOptions options;
    options.zone = zone;
    auto weather = climate::read_weather(*bytes, path.string(), options);
    if (!weather) return tl::unexpected(weather.error());
    return WeatherFile{std::move(*weather), std::move(*bytes)};
  };
  auto weather = read();
  if (weather || named) return weather;
  base::Problems problems = std::move(weather.error());
  for (base::Problem& problem : problems) {
    if (problem.hint.empty()) problem.hint = "it is the weather of " + shop.source.name;
  }
  return base::fail(std::move(problems));
}

}  // namespace wetout::work
