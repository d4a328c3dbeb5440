#include "epw_header.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <vector>

#include "wetout/base/shown.hpp"

namespace wetout::climate {
namespace {

constexpr std::array<std::string_view, 8> keywords{"LOCATION",
                                                   "DESIGN CONDITIONS",
                                                   "TYPICAL/EXTREME PERIODS",
                                                   "GROUND TEMPERATURES",
                                                   "HOLIDAYS/DAYLIGHT SAVINGS",
                                                   "COMMENTS 1",
                                                   "COMMENTS 2",
                                                   "DATA PERIODS"};

std::string place_of(const std::vector<std::string_view>& location) {
  std::string out;
  for (std::size_t i = 1; i <= 3; ++i) {
    if (location[i].empty() || location[i] == "-") continue;
    if (!out.empty()) out += ", ";
    out += base::shown(location[i]);
  }
  return out;
}

bool read_location(std::string_view line, EpwHeader& header, Findings& findings) {
  constexpr std::size_t zone_field = 8;  // after the keyword
  std::vector<std::string_view> cells;
  if (split(line, ',', cells) != Split::whole || cells.size() <= zone_field) {
    findings.add({.code = "weather.columns",
                  .message = "the LOCATION line is not complete",
                  .line = 1,
                  .found = base::shown(line),
                  .expected = "LOCATION, city, state, country, source, station, latitude, "
                              "longitude, time zone, elevation"});
    return false;
  }
  const std::optional<double> hours = to_number(cells[zone_field]);
  if (!hours || !(*hours >= -12.0 && *hours <= 14.0)) {
    findings.add({.code = "weather.bad_zone",
                  .message = "the time zone of the place cannot be read",
                  .line = 1,
                  .column = column_of(line, cells[zone_field]),
                  .key = "time zone",
                  .found = base::shown(cells[zone_field]),
                  .expected = "hours from UTC, -12 to 14, such as -6.0",
                  .source_line = std::string(line.substr(0, 1000))});
    return false;
  }
  header.place = place_of(cells);
  header.standard_offset = std::chrono::seconds(std::lround(*hours * 3600.0));
  return true;
}

// " 1/ 1", "12/31", "12/31/2017". Other ways of writing a day (the last Sunday of a month) exist
// and are left alone: only a notice depends on it.
std::optional<EpwHeader::Day> read_day(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const std::string_view rest = text.substr(slash + 1);
  const std::optional<int> month = to_int(trimmed(text.substr(0, slash)));
  const std::optional<int> day = to_int(trimmed(rest.substr(0, rest.find('/'))));
  if (!month || !day) return std::nullopt;
  return EpwHeader::Day{*month, *day};
}

std::optional<EpwHeader::Day> read_last_day(std::string_view line) {
  std::vector<std::string_view> cells;
  if (split(line, ',', cells) != Split::whole || cells.size() < 2) return std::nullopt;
  const std::optional<int> periods = to_int(cells[1]);
  if (!periods || *periods < 1 || *periods > 1000) return std::nullopt;
  // After the number of periods and the rows of an hour: name, day of the week, first, last.
  const std::size_t last = 2 + static_cast<std::size_t>(*periods) * 4;
  return last < cells.size() ? read_day(cells[last]) : std::nullopt;
}

}  // namespace

std::optional<EpwHeader> read_epw_header(Lines& lines, Findings& findings) {
  EpwHeader header;
  for (const std::string_view keyword : keywords) {
    const bool any = lines.next();
    const std::string_view line = any ? lines.line() : std::string_view();
    const std::string_view word = trimmed(line.substr(0, line.find(',')));
    if (!equal_but_for_case(word, keyword)) {
      findings.add({.code = "weather.header",
                    .message = any ? "this is not the header line that is due here"
                                   : "the file ends in its header",
                    .line = any ? lines.number() : lines.number() + 1,
                    .found = base::shown(word),
                    .expected = fmt::format("a line that begins with {}", keyword)});
      return std::nullopt;
    }
    if (keyword == keywords.front() && !read_location(line, header, findings)) return std::nullopt;
    if (keyword == keywords.back()) header.last_day = read_last_day(line);
  }
  return header;
}

}  // namespace wetout::climate
