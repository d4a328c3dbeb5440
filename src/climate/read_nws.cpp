#include <fmt/format.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "json.hpp"
#include "text.hpp"
#include "wetout/time/read.hpp"

namespace wetout::climate {
namespace {

// "wmoUnit:degC", "unit:degC" or an address that ends in "/degC".
std::string_view unit_word(const Json& code) {
  if (!code.is_string()) return {};
  const std::string_view text = code.get_ref<const std::string&>();
  const std::size_t mark = text.find_last_of(":/");
  return mark == std::string_view::npos ? text : text.substr(mark + 1);
}

// "10 mph", "5 to 10 mph": the stronger.
struct WindText {
  double value = 0.0;
  Unit unit = Unit::miles_per_hour;
};
std::optional<WindText> read_wind_text(std::string_view text) {
  const std::size_t blank = text.rfind(' ');
  if (blank == std::string_view::npos) return std::nullopt;
  const std::optional<Unit> unit = read_unit(Quantity::wind, text.substr(blank + 1));
  std::string_view number = trimmed(text.substr(0, blank));
  if (const std::size_t to = number.rfind(" to "); to != std::string_view::npos) {
    if (!to_number(trimmed(number.substr(0, to)))) return std::nullopt;
    number = trimmed(number.substr(to + 4));
  }
  const std::optional<double> value = to_number(number);
  if (!unit || !value || nonsense(Quantity::wind, *value, *unit)) return std::nullopt;
  return WindText{*value, *unit};
}

bool whole_fahrenheit(double celsius) {
  // Half of 0.1 C, and a rounding.
  constexpr double print_f = 0.05 * 1.8 + 1e-9;
  const double fahrenheit = units::Temperature::celsius(celsius).in_fahrenheit();
  return std::fabs(fahrenheit - std::round(fahrenheit)) <= print_f;
}

// Celsius that were whole Fahrenheit before the service turned them over are as coarse.
void set_temperature(Row& row, Quantity quantity, double value, Unit unit) {
  set(row, quantity, value, unit);
  if (unit != Unit::celsius || !whole_fahrenheit(value)) return;
  (quantity == Quantity::air ? row.whole_air : row.whole_dew_point) = true;
}

// [nwsapi]
class NwsReader {
 public:
  NwsReader(const Json& json, std::string_view name)
      : properties_(member(json, "properties")), findings_(name) {
    weather_.source = name;
    weather_.kind = WeatherKind::nws;
  }

  base::Result<Weather> read(const WeatherDefaults& defaults);

 private:
  void read_period(const Json& period, int index);
  void read_quantity(const Json& json, const std::string& path, Quantity quantity, Row& row);
  void read_air(const Json& period, const std::string& path, Row& row);
  void read_wind(const Json& json, Row& row);

  const Json& properties_;
  Findings findings_;
  Weather weather_;
  std::vector<Row> rows_;
  int unread_winds_ = 0;
};

// An object of unitCode and value.
void NwsReader::read_quantity(const Json& json, const std::string& path, Quantity quantity,
                              Row& row) {
  if (json.is_null()) return;
  if (!json.is_object()) {
    findings_.add(at_path(path, "unit.missing",
                          fmt::format("this {} does not say its unit", name_of(quantity)), json,
                          R"({"unitCode": "wmoUnit:degC", "value": 12.2})"));
    return;
  }
  const Json& value = member(json, "value");
  if (value.is_null()) return;
  const std::optional<Unit> unit = read_unit(quantity, unit_word(member(json, "unitCode")));
  if (!unit) {
    findings_.add(at_path(path + ".unitCode", "unit.unknown",
                          fmt::format("this is no unit of {} that is read", name_of(quantity)),
                          member(json, "unitCode"), std::string(units_of(quantity))));
    return;
  }
  const auto number = read_measure(value, path + ".value", quantity, *unit, findings_);
  if (!number) return;
  if (quantity == Quantity::humidity) {
    set(row, quantity, *number, *unit);
  } else {
    set_temperature(row, quantity, *number, *unit);
  }
}

void NwsReader::read_air(const Json& period, const std::string& path, Row& row) {
  const Json& temperature = member(period, "temperature");
  if (temperature.is_null()) return;
  if (temperature.is_object()) {
    read_quantity(temperature, path + ".temperature", Quantity::air, row);
    return;
  }
  const Json& unit_text = member(period, "temperatureUnit");
  std::optional<Unit> unit;
  if (unit_text.is_string()) {
    unit = read_unit(Quantity::air, unit_text.get_ref<const std::string&>());
  } else if (unit_text.is_null()) {
    const Json& system = member(properties_, "units");
    if (system == "us") unit = Unit::fahrenheit;
    if (system == "si") unit = Unit::celsius;
  }
  if (!unit) {
    findings_.add(at_path(path + ".temperatureUnit", "unit.unknown",
                          "the unit of the temperature is not known", unit_text, "\"F\" or \"C\""));
    return;
  }
  const auto value =
      read_measure(temperature, path + ".temperature", Quantity::air, *unit, findings_);
  if (value) set_temperature(row, Quantity::air, *value, *unit);
}

// Only shown, so that what cannot be read is left out and said.
void NwsReader::read_wind(const Json& json, Row& row) {
  if (json.is_string()) {
    const std::string_view text = trimmed(json.get_ref<const std::string&>());
    if (text.empty()) return;
    if (const auto wind = read_wind_text(text)) {
      set(row, Quantity::wind, wind->value, wind->unit);
    } else {
      ++unread_winds_;
    }
    return;
  }
  if (json.is_null()) return;
  const Json& most = member(json, "maxValue");
  const Json& value = most.is_null() ? member(json, "value") : most;
  if (json.is_object() && value.is_null()) return;
  const auto unit = read_unit(Quantity::wind, unit_word(member(json, "unitCode")));
  if (!unit || !value.is_number() || nonsense(Quantity::wind, value.get<double>(), *unit)) {
    ++unread_winds_;
    return;
  }
  set(row, Quantity::wind, value.get<double>(), *unit);
}

void NwsReader::read_period(const Json& period, int index) {
  const std::string path = fmt::format("properties.periods[{}]", index);
  if (!period.is_object()) {
    findings_.add(at_path(path, "weather.json_shape", "this is no period", period, "an object"));
    return;
  }
  Row row{.at = {}, .where = index};
  const auto start =
      read_time_with_offset(member(period, "startTime"), path + ".startTime", findings_);
  read_air(period, path, row);
  read_quantity(member(period, "dewpoint"), path + ".dewpoint", Quantity::dew_point, row);
  read_quantity(member(period, "relativeHumidity"), path + ".relativeHumidity", Quantity::humidity,
                row);
  read_wind(member(period, "windSpeed"), row);
  if (!start) return;
  row.at = *start;
  rows_.push_back(row);
}

base::Result<Weather> NwsReader::read(const WeatherDefaults& defaults) {
  for (const char* const key : {"generatedAt", "updateTime"}) {
    const Json& made = member(properties_, key);
    if (made.is_null()) continue;
    weather_.made = read_time_with_offset(made, std::string("properties.") + key, findings_);
    break;
  }
  int index = 0;
  for (const Json& period : member(properties_, "periods")) {
    if (findings_.full()) break;
    read_period(period, index++);
  }
  if (unread_winds_ > 0) {
    weather_.notices.push_back({.code = "weather.wind_unread",
                                .text = "winds that could not be read were left out",
                                .value = unread_winds_});
  }
  const Locate locate = [](int where) {
    return base::Problem{.key = fmt::format("properties.periods[{}]", where)};
  };
  fill(weather_, std::move(rows_), defaults, locate, findings_);
  if (!findings_.empty()) return base::fail(findings_.take());
  return std::move(weather_);
}

}  // namespace

base::Result<Weather> read_nws(const Json& json, std::string_view name,
                               const WeatherDefaults& defaults) {
  return NwsReader(json, name).read(defaults);
}

}  // namespace wetout::climate
