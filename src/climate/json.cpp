#include "json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "readers.hpp"
#include "text.hpp"
#include "wall_times.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/read.hpp"

namespace wetout::climate {
namespace {

constexpr int deepest = 64;

// Deep nesting costs far more memory than bytes; it is counted before anything is built.
bool too_deep(std::string_view text) {
  int depth = 0;
  bool in_string = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (in_string) {
      if (c == '\\') ++i;
      if (c == '"') in_string = false;
    } else if (c == '"') {
      in_string = true;
    } else if (c == '[' || c == '{') {
      if (++depth > deepest) return true;
    } else if (c == ']' || c == '}') {
      --depth;
    }
  }
  return false;
}

base::Problem broken(std::string_view text, std::size_t byte, std::string_view why) {
  const std::string_view before = text.substr(0, std::min(byte, text.size()));
  const std::size_t line_start = before.rfind('\n') + 1;  // npos + 1 is 0
  const std::size_t line_end = text.find('\n', line_start);
  const std::string_view line = text.substr(line_start, line_end - line_start);
  base::Problem out{.code = "json.bad",
                    .message = "this is not JSON as it should be",
                    .line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n')),
                    .expected = std::string(why)};
  if (line.size() <= 1000) {
    out.column = column_of(line, line.substr(std::min(before.size() - line_start, line.size())));
    out.source_line = line;
  }
  const bool at_end = text.substr(std::min(byte, text.size())).find_first_not_of(" \r\n\t") ==
                      std::string_view::npos;
  if (at_end) {
    out.message = "the file ends in the middle of its JSON";
    out.expected = "the whole file";
    out.hint = "fetch it again";
  }
  return out;
}

}  // namespace

std::optional<Json> parse_json(std::string_view text, Findings& findings) {
  if (text.size() > most_json_bytes) {
    findings.add({.code = "weather.too_large",
                  .message = "this is too much JSON for a forecast; it was not read",
                  .found = fmt::format("{} bytes", text.size()),
                  .expected = fmt::format("at most {} bytes", most_json_bytes)});
    return std::nullopt;
  }
  if (too_deep(text)) {
    findings.add({.code = "json.deep",
                  .message = "this JSON is nested deeper than any forecast; it was not read",
                  .expected = fmt::format("at most {} levels", deepest)});
    return std::nullopt;
  }
  try {
    return Json::parse(text);
  } catch (const Json::parse_error& error) {
    findings.add(broken(text, error.byte == 0 ? 0 : error.byte - 1, "JSON (RFC 8259)"));
  } catch (const Json::out_of_range&) {
    findings.add({.code = "number.not_finite",
                  .message = "a number is beyond what can be kept",
                  .expected = "numbers below 1e308"});
  }
  return std::nullopt;
}

const Json& member(const Json& json, std::string_view name) {
  static const Json none;
  if (!json.is_object()) return none;
  const auto found = json.find(name);
  return found == json.end() ? none : *found;
}

std::string shown(const Json& json) {
  if (json.is_string()) return base::shown(json.get_ref<const std::string&>());
  if (json.is_object()) return "an object";
  if (json.is_array()) return "an array";
  return base::shown(json.dump());
}

base::Problem at_path(std::string path, std::string code, std::string message, const Json& found,
                      std::string expected) {
  return {.code = std::move(code),
          .message = std::move(message),
          .key = std::move(path),
          .found = shown(found),
          .expected = std::move(expected)};
}

std::optional<time::Instant> read_time_with_offset(const Json& json, const std::string& path,
                                                   Findings& findings) {
  constexpr const char* const example =
      "a time with its offset, such as "
      "\"2026-05-01T08:00:00-04:00\"";
  if (!json.is_string()) {
    findings.add(at_path(path, "time.bad", "this is no time", json, example));
    return std::nullopt;
  }
  const auto& text = json.get_ref<const std::string&>();
  const base::Result<time::Instant> at = time::read_instant(text, time::Zone());
  if (!at) {
    base::Problem problem = at.error().front();
    problem.key = path;
    findings.add(std::move(problem));
    return std::nullopt;
  }
  if (!has_offset(text)) {
    findings.add(at_path(path, "weather.no_zone", "it is not known in which time zone this is",
                         json, example));
    return std::nullopt;
  }
  return *at;
}

std::optional<double> read_measure(const Json& json, const std::string& path, Quantity quantity,
                                   Unit unit, Findings& findings) {
  if (json.is_null()) return std::nullopt;
  if (!json.is_number()) {
    findings.add(at_path(path, "number.bad",
                         fmt::format("this {} is not a number", name_of(quantity)), json,
                         "a number or null"));
    return std::nullopt;
  }
  const auto value = json.get<double>();
  if (std::optional<base::Problem> wrong = nonsense(quantity, value, unit)) {
    wrong->key = path;
    findings.add(std::move(*wrong));
    return std::nullopt;
  }
  return value;
}

std::optional<long> whole_number(const Json& json, long low, long high) {
  if (!json.is_number_integer()) return std::nullopt;
  // Compared as a double: integers beyond a long would wrap around.
  const auto value = json.get<double>();
  if (value < static_cast<double>(low) || value > static_cast<double>(high)) return std::nullopt;
  return json.get<long>();
}

base::Result<Weather> read_json(std::string_view text, std::string_view name,
                                const WeatherDefaults& defaults) {
  Findings findings(name);
  const std::optional<Json> json = parse_json(text, findings);
  if (!json) return base::fail(findings.take());
  const Json& properties = member(*json, "properties");
  if (member(properties, "periods").is_array()) return read_nws(*json, name, defaults);
  if (!member(*json, "hourly").is_null()) return read_hourly_arrays(*json, name, defaults);

  base::Problem problem{
      .code = "weather.unknown_json",
      .message = "this JSON is no hourly weather that is known",
      .expected =
          "\"properties\" with \"periods\" (US National Weather Service), or \"hourly\" "
          "with one array for each quantity"};
  // Services answer an error with a document that says why.
  for (const char* const reason : {"reason", "detail", "title", "message"}) {
    if (const Json& said = member(*json, reason); said.is_string()) {
      problem.found = shown(said);
      problem.hint = "this looks like an error message of the service: fetch it again";
      break;
    }
  }
  if (json->is_array()) {
    problem.found = "an array";
    problem.hint = "fetch the weather of one place";
  } else if (member(properties, "forecastHourly").is_string()) {
    problem.found = "the description of a place";
    problem.hint = "fetch the address that it names under properties.forecastHourly";
  }
  findings.add(std::move(problem));
  return base::fail(findings.take());
}

}  // namespace wetout::climate
