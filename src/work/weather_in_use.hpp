// The weather that an action goes by: named, or the shop's usual file; on the dates it is asked of.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/files/shop_file.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

struct WeatherInUse {
  climate::Weather weather;
  bool placed = false;   ///< a typical year, or a past one, on the dates around
  time::Instant issued;  ///< since when a forecast's lead counts
};

/// A typical year is placed on the year of `around` and those beside it, and so is a whole year
/// that ends before. A forecast that does not say when it was made counts from its first hour, but
/// not from later than `now`; a placed year is as far from a fact as any forecast can be.
/// Problems: those of climate::place().
base::Result<WeatherInUse> in_use(climate::Weather weather, time::Instant now,
                                  time::Instant around);

/// Of a long weather what reaches the days that are asked for: before them a room with that lag
/// settles, after them films are open.
climate::Weather part_of(const climate::Weather& weather, time::Instant from, time::Instant to,
                         units::Duration lag);

struct WeatherFile {
  climate::Weather weather;
  std::string bytes;
};

/// `named`, else the shop's, read. `key` is that of the problem "weather.not_named". Problems:
/// those of files::read_weather() too.
base::Result<WeatherFile> usual_weather(const std::optional<std::filesystem::path>& named,
                                        const files::ShopFile& shop, const time::Zone& zone,
                                        std::string_view key);

}  // namespace wetout::work
