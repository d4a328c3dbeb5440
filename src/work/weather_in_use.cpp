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

base::Result<climate::Weather> usual_weather(const std::optional<std::filesystem::path>& named,
                                             const files::ShopFile& shop, const time::Zone& zone,
                                             std::string_view key) {
  climate::WeatherOptions options;
  options.zone = zone;
  if (named) return files::read_weather(*named, options);
  if (!shop.weather) {
    return base::fail({.code = "weather.not_named",
                       .message = "neither the command nor the shop file names a weather file",
                       .key = std::string(key),
                       .expected = "a forecast (CSV, EPW, JSON), or weather = \"forecast.csv\" "
                                   "under [shop] in " +
                                   shop.source.name});
  }
  auto weather = files::read_weather(*shop.weather, options);
  if (weather) return weather;
  base::Problems problems = std::move(weather.error());
  for (base::Problem& problem : problems) {
    if (problem.hint.empty()) problem.hint = "it is the weather of " + shop.source.name;
  }
  return base::fail(std::move(problems));
}

}  // namespace wetout::work
