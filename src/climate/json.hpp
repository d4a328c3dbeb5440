// JSON (rfc8259) of weather services: parsing with limits, and problems that name the path.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "findings.hpp"
#include "series.hpp"
#include "wetout/climate/weather.hpp"

namespace wetout::climate {

using Json = nlohmann::json;

inline constexpr std::size_t most_json_bytes = std::size_t{8} << 20;

/// Codes "json.bad" (with line and column), "json.deep", "weather.too_large".
std::optional<Json> parse_json(std::string_view text, Findings& findings);

/// The member, or null when there is none or `json` is no object.
const Json& member(const Json& json, std::string_view name);

/// What stands there, short enough for a message.
std::string shown(const Json& json);

base::Problem at_path(std::string path, std::string code, std::string message, const Json& found,
                      std::string expected);

/// An instant with its offset. Code "weather.no_zone" when it has none.
std::optional<time::Instant> read_time_with_offset(const Json& json, const std::string& path,
                                                   Findings& findings);

/// A finite JSON number that makes sense for the quantity; nothing for null. What is wrong goes to
/// `findings`.
std::optional<double> read_measure(const Json& json, const std::string& path, Quantity quantity,
                                   Unit unit, Findings& findings);

/// A whole JSON number from `low` to `high`.
std::optional<long> whole_number(const Json& json, long low, long high);

base::Result<Weather> read_nws(const Json& json, std::string_view name,
                               const WeatherDefaults& defaults = {});
base::Result<Weather> read_hourly_arrays(const Json& json, std::string_view name,
                                         const WeatherDefaults& defaults = {});

}  // namespace wetout::climate
