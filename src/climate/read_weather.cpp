#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "csv_header.hpp"
#include "readers.hpp"
#include "series.hpp"
#include "text.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/climate/weather.hpp"

namespace wetout::climate {
namespace {

constexpr std::size_t most_bytes = std::size_t{32} << 20;
constexpr std::string_view utf8_mark = "\xef\xbb\xbf";
constexpr std::array utf16_marks{std::string_view("\xff\xfe"), std::string_view("\xfe\xff")};

base::Result<Weather> refused(std::string_view name, base::Problem problem) {
  problem.file = name;
  return base::fail(std::move(problem));
}

base::Problem not_text(std::string_view bytes, std::size_t zero) {
  const bool utf16 = std::any_of(utf16_marks.begin(), utf16_marks.end(),
                                 [&](std::string_view mark) { return bytes.starts_with(mark); });
  if (utf16) {
    return {.code = "weather.utf16",
            .message = "this text is in UTF-16",
            .expected = "text in UTF-8",
            .hint = "save it as UTF-8 (\"CSV UTF-8\" in spreadsheets)"};
  }
  return {.code = "weather.binary",
          .message = "this is not a text file",
          .found = fmt::format("a zero byte at position {}", zero),
          .expected = "CSV, EPW or JSON"};
}

}  // namespace

base::Result<Weather> read_weather(std::string_view bytes, std::string_view name,
                                   const WeatherOptions& options) {
  if (bytes.size() > most_bytes) {
    return refused(name, {.code = "weather.too_large",
                          .message = "is too big for weather; it was not read",
                          .found = fmt::format("{:.1f} MiB", static_cast<double>(bytes.size()) /
                                                                 static_cast<double>(1 << 20)),
                          .expected = fmt::format("at most {} MiB", most_bytes >> 20)});
  }
  if (const std::size_t zero = bytes.find('\0'); zero != std::string_view::npos) {
    return refused(name, not_text(bytes, zero));
  }
  if (bytes.starts_with(utf8_mark)) bytes.remove_prefix(utf8_mark.size());
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) {
    return refused(
        name,
        {.code = "weather.empty", .message = "this file is empty", .expected = "CSV, EPW or JSON"});
  }
  const std::string_view content = bytes.substr(first);
  if (content.front() == '{' || content.front() == '[')
    return read_json(bytes, name, options.defaults);
  if (content.front() == '<') {
    return refused(name, {.code = "weather.page",
                          .message = "this is a web page or XML, not weather",
                          .found = base::shown(content.substr(0, content.find_first_of("\r\n"))),
                          .expected = "CSV, EPW or JSON",
                          .hint = "fetch the data themselves"});
  }
  if (static_cast<std::size_t>(std::count(bytes.begin(), bytes.end(), '\n')) > most_rows) {
    return refused(name, too_many_rows());
  }
  constexpr std::string_view epw_word = "LOCATION,";
  if (equal_but_for_case(bytes.substr(0, epw_word.size()), epw_word))
    return read_epw(bytes, name, options.defaults);
  return read_csv(bytes, name, options);
}

}  // namespace wetout::climate
