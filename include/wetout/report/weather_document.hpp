// The coming days: air, room and core hour by hour, and when a film may be started.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/cited.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/climate/core.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/schedule/limits.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::report {

inline constexpr std::string_view weather_format = "wetout.weather/1";

/// Times are RFC 3339 in the shop's zone.
struct UnknownSpan {
  std::string from, to;
  std::string of;  ///< "air" or "humidity"
};

/// Nothing where it is not known: gaps are not filled.
struct WeatherHour {
  std::string time;
  std::optional<units::Temperature> air;  ///< outdoors
  std::optional<double> humidity;         ///< share, outdoors
  std::optional<units::Temperature> dew_point;
  std::optional<units::Temperature> room, core;
  std::optional<units::TempDelta> dew_margin;  ///< of the lower of room air and core
  std::optional<units::Temperature> room_dew_point;
  std::optional<double> room_humidity;
  std::optional<double> wind_m_s, sun_w_m2;
};

/// Where a limit is furthest broken, or a notice furthest gone into. `unit`: "C", "K", "share".
struct WorstStart {
  std::string start;  ///< of the film
  std::string at;     ///< the instant at which it is worst
  double value = 0.0;
  double guarded = 0.0;  ///< the same with the forecast moved the bad way
  double limit = 0.0;
  std::string unit;
  double breaks_at_kelvin = 0.0;  ///< schedule::Tested
};

/// The reason where the weather is known until later, but not all the time.
inline constexpr std::string_view weather_gap = "weather gap";

/// Starts from `from` until before `to`.
struct StartWindow {
  std::string from, to;
  schedule::State ok = schedule::State::good;
  std::optional<schedule::Limit> limit;  ///< the first one that gives the state
  std::string reason;                    ///< in words: "weather ends", "too cold"
  /// Of the starts of each day that the window reaches into, in order; none where no number closes
  /// it.
  std::vector<WorstStart> worst;
};

/// `least` or `most` is nothing where that side is open.
struct LimitInForce {
  schedule::Limit limit = schedule::Limit::cold;
  schedule::State gives = schedule::State::refuse;
  std::optional<double> least, most;
  std::string unit;  ///< "C", "K", "share"
  base::Standing standing = base::Standing::sheet;
  std::optional<units::Duration> before;  ///< tested from so long before wet-out
};

struct WeatherRoom {
  climate::RoomKind kind = climate::RoomKind::unheated;
  units::Duration lag;                        ///< 0 outdoors
  std::optional<units::Temperature> minimum;  ///< of a heated one
  std::optional<climate::HeaterKind> heater;  ///< likewise
  std::optional<double> humidity_max;         ///< share, of a dehumidifier
};

struct WeatherCore {
  climate::FoamKind foam = climate::FoamKind::eps;
  units::Length thickness;
  units::Duration lag;  ///< behind the room's air
};

struct WeatherGuard {
  climate::Guard guard = climate::Guard::normal;
  std::string issued;               ///< since when the lead counts
  units::TempDelta at_from, at_to;  ///< how far the forecast is moved
};

struct WeatherDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string source;   ///< the file
  climate::WeatherKind kind = climate::WeatherKind::table;
  std::string place;    ///< as the file names it; may be empty
  bool placed = false;  ///< a past or typical year, on the dates around now
  std::string from, to;
  double hours = 0.0;
  std::vector<UnknownSpan> gaps;
  std::vector<WeatherHour> series;   ///< every whole hour of the wall clock
  std::vector<StartWindow> windows;  ///< one after the other, from `from` to `to`
  std::string resin;
  std::string name;          ///< of the resin
  bool first_resin = false;  ///< nobody named it: it is the shop's first
  units::Duration wet_out;   ///< from start to spread
  WeatherGuard guard;
  WeatherRoom room;
  WeatherCore core;
  std::vector<LimitInForce> limits;
  std::vector<laminate::Assumption> assumptions;
  base::Notices notices;
};

/// One line, format "wetout.weather/1"; docs/formats/weather.schema.json.
std::string to_json(const WeatherDocument& document);

/// Day by day in plain characters, 80 columns. Clock times as on a wall of `zone`.
std::string to_text(const WeatherDocument& document, units::System system, const time::Zone& zone);

}  // namespace wetout::report
