// Outdoor weather from the bytes of a file: CSV, EPW, the US National Weather Service's hourly
// forecast, hourly JSON of parallel arrays. What each looks like, its units, what is refused and
// what is reported: docs/formats/weather.md.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/climate/weather_defaults.hpp"
#include "wetout/time/history.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::climate {

/// The air at one instant, as it was given: nothing is derived, so that either of humidity and dew
/// point may be missing, or both. A dew point that rounding left above the air is the air's.
struct WeatherPoint {
  time::Instant at;
  units::Temperature air;
  std::optional<units::Temperature> dew_point = {};
  std::optional<double> relative_humidity = {};  ///< share of 1, 0.001 to 1.1
  std::optional<double> wind_m_s = {};
  std::optional<double> sun_w_m2 = {};  ///< on a level surface

  friend bool operator==(const WeatherPoint&, const WeatherPoint&) = default;
};

/// Nothing is known between these instants, for longer than 90 min and than 1.5 times the usual
/// spacing, or for longer than 6 h (WeatherDefaults). At both ends the value is known, or the
/// weather begins or ends there.
struct Gap {
  time::Instant from;
  time::Instant until;

  friend bool operator==(const Gap&, const Gap&) = default;
};

enum class WeatherKind {
  table,         ///< CSV in our own layout
  epw,           ///< EnergyPlus weather
  nws,           ///< US National Weather Service, hourly forecast
  hourly_arrays  ///< JSON with one array per quantity
};

std::string_view to_string(WeatherKind kind);  // "csv", "epw", "nws", "hourly-arrays"

/// Of the readers' making: at least two points, instants rising.
struct Weather {
  std::string source = {};  ///< the name that came with the bytes
  WeatherKind kind = WeatherKind::table;
  std::string place = {};  ///< as the file names it; may be empty
  /// Its months were taken from different years, so that its dates are those of no year: place()
  /// it.
  bool typical_year = false;
  /// The offset from UTC of the days that the file counts: EPW's standard time, a CSV's fixed
  /// offset.
  std::chrono::seconds day_offset{0};
  std::optional<time::Instant> made = {};  ///< when a forecast was made, if it says
  std::vector<WeatherPoint> points = {};
  /// A span without a value longer than this is a gap; from the usual spacing of the file's rows.
  std::chrono::seconds gap_over{0};
  std::chrono::seconds smooth_step{0};  ///< length of the straight lines of a smoothed course
  std::vector<Gap> gaps = {};           ///< of the air
  std::vector<Gap> humidity_gaps = {};  ///< of the humidity, be it given as such or as dew point
  /// Given in whole degrees: air_history() and dew_point_history() smooth it.
  bool whole_degree_air = false;
  bool whole_degree_dew_point = false;
  base::Notices notices = {};

  [[nodiscard]] time::Instant first() const { return points.front().at; }
  [[nodiscard]] time::Instant last() const { return points.back().at; }
};

struct WeatherOptions {
  WeatherDefaults defaults = {};
  /// Of the wall times of a CSV whose header names no zone.
  std::optional<time::Zone> zone = {};
};

/// Recognises the layout by its content, never by `name`, which only appears in problems. At most
/// 32 MiB (JSON 8 MiB) and 600 000 rows (a year of minutes).
/// Problems carry line and field (CSV, EPW) or the JSON path as key; no more than 20, then
/// "weather.more". Codes: docs/formats/weather.md.
base::Result<Weather> read_weather(std::string_view bytes, std::string_view name,
                                   const WeatherOptions& options = {});

/// The same days on the dates of `first_year` and the `years` - 1 after it, for a typical year or
/// any weather of no more than a year; days and hours are those of `day_offset`. 29 February: left
/// out where the year has none; where the file has none, the 28th again, with a notice.
/// `years` 1 to 10, dates within 1970 to 2037 ("weather.bad_year"); "weather.more_than_a_year".
base::Result<Weather> place(const Weather& weather, int first_year, int years = 1);

struct Extended {
  Weather weather;
  /// From here on the last 24 h repeat; the weather's own end when nothing was added.
  time::Instant repeated_from;
};

/// Goes on to `until` or just after with the last 24 h again and again, gaps included, and says so
/// in a notice. "weather.too_short" when less than 24 h are known, "weather.too_far" when more than
/// a year would have to be made up.
base::Result<Extended> extended(const Weather& weather, time::Instant until);

/// Air in kelvin. Whole degrees are smoothed by a monotone cubic through the values (never beyond
/// neighbouring values), as straight lines of smooth_step; nothing is smoothed across gaps, over
/// which the history is straight: whoever must not use them asks for weather.gaps.
time::History air_history(const Weather& weather);

/// Dew point in kelvin, from the dew point where given, else from the humidity. Nothing when the
/// weather has no humidity at all; otherwise humidity_gaps say where it is not known.
std::optional<time::History> dew_point_history(const Weather& weather);

}  // namespace wetout::climate
