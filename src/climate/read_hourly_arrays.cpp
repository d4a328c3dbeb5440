#include <fmt/format.h>

#include <array>
#include <chrono>
#include <string>
#include <utility>
#include <vector>

#include "json.hpp"
#include "text.hpp"
#include "wall_times.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/read.hpp"

namespace wetout::climate {
namespace {

struct ArrayName {
  std::string_view name;
  Quantity quantity;
};

// Each in its present and its older spelling.
constexpr std::array array_names{ArrayName{"temperature_2m", Quantity::air},
                                 ArrayName{"relative_humidity_2m", Quantity::humidity},
                                 ArrayName{"relativehumidity_2m", Quantity::humidity},
                                 ArrayName{"dew_point_2m", Quantity::dew_point},
                                 ArrayName{"dewpoint_2m", Quantity::dew_point},
                                 ArrayName{"wind_speed_10m", Quantity::wind},
                                 ArrayName{"windspeed_10m", Quantity::wind},
                                 ArrayName{"shortwave_radiation", Quantity::sun}};

struct Array {
  std::string path;
  Quantity quantity;
  Unit unit;
  const Json* values;
};

class ArraysReader {
 public:
  ArraysReader(const Json& json, std::string_view name)
      : json_(json),
        hourly_(member(json, "hourly")),
        times_(member(hourly_, "time")),
        findings_(name) {
    weather_.source = name;
    weather_.kind = WeatherKind::hourly_arrays;
  }

  base::Result<Weather> read(const WeatherDefaults& defaults);

 private:
  bool shape_is_right();
  void take_arrays();
  void take_array(const ArrayName& known);
  bool take_offset();
  std::optional<time::Instant> read_time(const Json& json, std::size_t index);
  std::optional<time::Instant> from_unix_time(const Json& json, const std::string& path);
  Row read_row(std::size_t index);
  std::vector<Row> read_rows();

  const Json& json_;
  const Json& hourly_;
  const Json& times_;
  Findings findings_;
  Weather weather_;
  std::vector<Array> arrays_;
  std::optional<std::chrono::seconds> offset_;
};

bool ArraysReader::shape_is_right() {
  if (!hourly_.is_object() || !times_.is_array()) {
    findings_.add(at_path(hourly_.is_object() ? "hourly.time" : "hourly", "weather.json_shape",
                          "there is no array of times", hourly_.is_object() ? times_ : hourly_,
                          R"("hourly": {"time": [...], "temperature_2m": [...], ...})"));
    return false;
  }
  for (const auto& [key, values] : hourly_.items()) {
    if (values.is_array() && values.size() == times_.size()) continue;
    base::Problem problem =
        at_path("hourly." + base::shown(key), "weather.array_length",
                "this does not hold one value for each time", values,
                fmt::format("an array of {} values, as hourly.time has", times_.size()));
    if (values.is_array()) problem.found = fmt::format("{} values", values.size());
    findings_.add(std::move(problem));
  }
  if (times_.size() > most_rows) findings_.add(too_many_rows());
  return findings_.empty();
}

void ArraysReader::take_array(const ArrayName& known) {
  const Json& values = member(hourly_, known.name);
  if (values.is_null()) return;
  for (const Array& array : arrays_) {
    if (array.quantity != known.quantity) continue;
    findings_.add({.code = "weather.column_twice",
                   .message = fmt::format("there is a second array of {}", name_of(known.quantity)),
                   .key = fmt::format("hourly.{}", known.name),
                   .found = "the other is " + array.path,
                   .expected = "one array for each quantity"});
    return;
  }
  const Json& unit_text = member(member(json_, "hourly_units"), known.name);
  const auto unit = unit_text.is_string()
                        ? read_unit(known.quantity, unit_text.get_ref<const std::string&>())
                        : std::nullopt;
  if (!unit) {
    findings_.add(at_path(fmt::format("hourly_units.{}", known.name),
                          unit_text.is_null() ? "unit.missing" : "unit.unknown",
                          fmt::format("the unit of the {} is not known", name_of(known.quantity)),
                          unit_text, std::string(units_of(known.quantity))));
    return;
  }
  arrays_.push_back({fmt::format("hourly.{}", known.name), known.quantity, *unit, &values});
}

void ArraysReader::take_arrays() {
  for (const ArrayName& known : array_names) take_array(known);
  for (const Array& array : arrays_) {
    if (array.quantity == Quantity::air) return;
  }
  if (!findings_.empty()) return;
  std::string names;
  for (const auto& item : hourly_.items()) names += (names.empty() ? "" : ", ") + item.key();
  findings_.add({.code = "weather.no_air",
                 .message = "there is no array of air temperature",
                 .key = "hourly",
                 .found = base::shown(names),
                 .expected = "\"temperature_2m\""});
}

// Times are wall times of one offset; without it each must bring its own.
bool ArraysReader::take_offset() {
  const Json& seconds = member(json_, "utc_offset_seconds");
  if (seconds.is_null()) return true;
  constexpr long most = 18L * 3600L;
  const std::optional<long> value = whole_number(seconds, -most, most);
  if (!value) {
    findings_.add(at_path("utc_offset_seconds", "weather.bad_zone",
                          "the offset from UTC cannot be read", seconds,
                          "whole seconds, such as -25200"));
    return false;
  }
  offset_ = std::chrono::seconds(*value);
  weather_.day_offset = *offset_;
  return true;
}

std::optional<time::Instant> ArraysReader::from_unix_time(const Json& json,
                                                          const std::string& path) {
  constexpr long year_2200 = 7258118400L;
  if (const std::optional<long> seconds = whole_number(json, 0, year_2200)) {
    return time::Instant(std::chrono::seconds(*seconds));
  }
  findings_.add(at_path(path, "time.bad", "this is no time", json,
                        "seconds since 1970 (UTC), at most 7258118400"));
  return std::nullopt;
}

std::optional<time::Instant> ArraysReader::read_time(const Json& json, std::size_t index) {
  const std::string path = fmt::format("hourly.time[{}]", index);
  if (member(member(json_, "hourly_units"), "time") == "unixtime") {
    return from_unix_time(json, path);
  }
  if (!offset_ || !json.is_string() || has_offset(json.get_ref<const std::string&>())) {
    return read_time_with_offset(json, path, findings_);
  }
  const auto at = time::read_instant(json.get_ref<const std::string&>(), time::Zone());
  if (!at) {
    base::Problem problem = at.error().front();
    problem.key = path;
    findings_.add(std::move(problem));
    return std::nullopt;
  }
  return *at - *offset_;
}

Row ArraysReader::read_row(std::size_t index) {
  Row row{.at = {}, .where = static_cast<int>(index)};
  for (const Array& array : arrays_) {
    const auto value =
        read_measure((*array.values)[index], fmt::format("{}[{}]", array.path, index),
                     array.quantity, array.unit, findings_);
    if (value) set(row, array.quantity, *value, array.unit);
  }
  return row;
}

std::vector<Row> ArraysReader::read_rows() {
  std::vector<Row> rows;
  rows.reserve(times_.size());
  for (std::size_t i = 0; i < times_.size() && !findings_.full(); ++i) {
    const std::optional<time::Instant> at = read_time(times_[i], i);
    Row row = read_row(i);
    if (!at) continue;
    row.at = *at;
    rows.push_back(row);
  }
  return rows;
}

base::Result<Weather> ArraysReader::read(const WeatherDefaults& defaults) {
  if (shape_is_right() && take_offset()) take_arrays();
  std::vector<Row> rows;
  if (findings_.empty()) rows = read_rows();
  if (!findings_.empty()) return base::fail(findings_.take());
  const Locate locate = [](int where) {
    return base::Problem{.key = fmt::format("hourly.time[{}]", where)};
  };
  fill(weather_, std::move(rows), defaults, locate, findings_);
  if (!findings_.empty()) return base::fail(findings_.take());
  return std::move(weather_);
}

}  // namespace

base::Result<Weather> read_hourly_arrays(const Json& json, std::string_view name,
                                         const WeatherDefaults& defaults) {
  return ArraysReader(json, name).read(defaults);
}

}  // namespace wetout::climate
