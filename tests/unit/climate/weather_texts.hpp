// Small weather files, and what came of reading them.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/climate/weather.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::climate::test {

inline time::Instant at(std::string_view text) {
  return time::read_instant(text, time::Zone()).value();
}

inline std::string utc(time::Instant instant) { return time::rfc3339(instant, time::Zone()); }

inline WeatherOptions in_zone(std::string_view name) {
  return {.zone = time::Zone::named(name).value()};
}

inline Weather read(std::string_view text, const WeatherOptions& options = {}) {
  base::Result<Weather> weather = read_weather(text, "w", options);
  if (!weather) {
    const base::Problem& p = weather.error().front();
    ADD_FAILURE() << p.code << ": " << p.message << ", line " << p.line << ", key " << p.key
                  << ", found " << p.found << ", expected " << p.expected;
    return Weather{.points = {{}, {}}};
  }
  return *weather;
}

/// The only problem; fails when there is none or more than one.
inline base::Problem refusal(std::string_view text, const WeatherOptions& options = {}) {
  const base::Result<Weather> weather = read_weather(text, "w", options);
  if (weather) {
    ADD_FAILURE() << "was read";
    return {};
  }
  EXPECT_EQ(weather.error().size(), 1U);
  EXPECT_EQ(weather.error().front().file, "w");
  return weather.error().front();
}

inline std::vector<std::string> codes(const base::Notices& notices) {
  std::vector<std::string> out;
  for (const base::Notice& notice : notices) out.push_back(notice.code);
  std::sort(out.begin(), out.end());
  return out;
}

inline const base::Notice& notice(const Weather& weather, std::string_view code) {
  static const base::Notice none;
  const auto found = std::find_if(weather.notices.begin(), weather.notices.end(),
                                  [&](const base::Notice& n) { return n.code == code; });
  EXPECT_NE(found, weather.notices.end()) << "no notice " << code;
  return found == weather.notices.end() ? none : *found;
}

using Codes = std::vector<std::string>;

inline std::string epw_header(std::string_view zone = "-8.0",
                              std::string_view period = "Sunday, 1/ 1, 1/ 1") {
  return "LOCATION,Beach Town,CA,USA,made up,000000,36.0,-121.0," + std::string(zone) +
         ",10.0\n"
         "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n"
         "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,made up\nCOMMENTS 2,made up\n"
         "DATA PERIODS,1,1,Data," +
         std::string(period) + "\n";
}

struct EpwValues {
  std::string air = "12.5";
  std::string dew = "8.0";
  std::string humidity = "74";
  std::string sun = "350";
  std::string wind = "2.6";
};

/// `when` is "year,month,day,hour,minute".
inline std::string epw_row(std::string_view when, const EpwValues& v = {}) {
  return std::string(when) + ",?9?9?9?9E0," + v.air + "," + v.dew + "," + v.humidity +
         ",99500,0,0,218," + v.sun + ",0,0,0,0,0,0,270," + v.wind +
         ",9,9,24.1,2740,9,999999999,40,0.0000,0,88,999.000,999.0,99.0\n";
}

}  // namespace wetout::climate::test
