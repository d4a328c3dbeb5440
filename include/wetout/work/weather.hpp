// `weather`: the coming days, and when a film may be started.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct WeatherRequest {
  using Time = std::function<base::Result<std::optional<time::Instant>>(const time::Zone&)>;

  std::optional<std::filesystem::path> file;  ///< else the shop's
  /// Nothing where it is not named: now, and the weather's end (of a placed year 7 days on). Wall
  /// times are read in the shop's zone.
  Time from, until;
  std::optional<std::string> resin;  ///< of the shop file, as typed; else its first
  std::string guard = "normal";      ///< "none", "normal", "wide"
};

struct WeatherAnswer {
  report::WeatherDocument document;
  units::System units = units::System::us;  ///< of the shop
  time::Zone zone;                          ///< of the shop
};

/// Starts are tried every 5 minutes. Keys of problems are arguments of the command, or lines of the
/// shop file. Problems: "shop.missing", "reference.resin", "reference.ambiguous",
/// "weather.not_named", "weather.outside", "time.order", "word.unknown" (guard), those of files,
/// climate::place(), resin::calibrate() and resin::polyester_times().
base::Result<WeatherAnswer> weather(const Workshop& workshop, const WeatherRequest& request);

}  // namespace wetout::work
