#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "csv_header.hpp"
#include "readers.hpp"
#include "series.hpp"
#include "text.hpp"
#include "wall_times.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/read.hpp"

namespace wetout::climate {
namespace {

bool stands_for_nothing(std::string_view cell) {
  for (const std::string_view word : {"", "-", "NA", "N/A", "null"}) {
    if (equal_but_for_case(cell, word)) return true;
  }
  return false;
}

// "2010/01/31 ..." is as clear as with hyphens; days or months first are not.
std::string with_hyphens(std::string_view cell) {
  std::string out(cell.substr(0, 40));
  if (out.size() >= 10 && out[4] == '/' && out[7] == '/') out[4] = out[7] = '-';
  return out;
}

class CsvReader {
 public:
  CsvReader(std::string_view text, std::string_view name, const WeatherOptions& options)
      : lines_(text), findings_(name), options_(options) {
    weather_.source = name;
    weather_.kind = WeatherKind::table;
  }

  base::Result<Weather> read();

 private:
  bool next_filled_line();
  void refuse(std::string_view cell, std::string_view key, base::Problem problem);
  void read_rows();
  void read_row();
  std::optional<Row> read_time(bool& has_own_offset);
  void read_value(const CsvColumn& column, Row& row);
  void say_ignored();
  base::Result<Weather> refused() { return base::fail(findings_.take()); }

  Lines lines_;
  Findings findings_;
  const WeatherOptions& options_;
  Weather weather_;
  CsvHeader header_;
  std::vector<std::string_view> cells_;
  std::vector<Row> rows_;
  Locate locate_ = [this](int line) {
    return base::Problem{.line = line, .key = header_.time_name};
  };
  std::optional<WallTimes> wall_times_;
};

// Over empty lines, comments, and the rows of delimiters alone that spreadsheets leave behind.
bool CsvReader::next_filled_line() {
  while (lines_.next()) {
    const std::string_view line = trimmed(lines_.line());
    if (!line.starts_with('#') && line.find_first_not_of(" \t,;") != std::string_view::npos) {
      return true;
    }
  }
  return false;
}

// With the place of the cell in this line.
void CsvReader::refuse(std::string_view cell, std::string_view key, base::Problem problem) {
  constexpr std::size_t most_shown = 1000;
  problem.line = lines_.number();
  problem.key = key;
  if (lines_.line().size() <= most_shown) {
    problem.column = column_of(lines_.line(), cell);
    problem.source_line = lines_.line();
  }
  findings_.add(std::move(problem));
}

std::optional<Row> CsvReader::read_time(bool& has_own_offset) {
  const std::string_view cell = cells_[header_.time_index];
  has_own_offset = has_offset(cell);
  const base::Result<time::Instant> at = time::read_instant(with_hyphens(cell), time::Zone());
  if (!at) {
    base::Problem problem = at.error().front();
    problem.found = base::shown(cell);
    refuse(cell, header_.time_name, std::move(problem));
    return std::nullopt;
  }
  if (!has_own_offset && !wall_times_ && !header_.offset) {
    refuse(cell, header_.time_name,
           {.code = "weather.no_zone",
            .message = "it is not known in which time zone this is",
            .found = base::shown(cell),
            .expected = "an offset from UTC, such as 2026-06-14T18:30-07:00",
            .hint = "or name the zone in the header, such as \"time [America/Los_Angeles]\""});
    return std::nullopt;
  }
  return Row{.at = *at, .where = lines_.number()};
}

void CsvReader::read_value(const CsvColumn& column, Row& row) {
  const std::string_view cell = cells_[column.index];
  if (stands_for_nothing(cell)) return;
  const std::optional<double> value = to_number(cell, header_.delimiter == ';');
  if (!value) {
    refuse(cell, column.name,
           {.code = "number.bad",
            .message = fmt::format("this {} is not a number", name_of(column.quantity)),
            .found = base::shown(cell),
            .expected = "a number without unit, such as 18.5; nothing where nothing was measured"});
    return;
  }
  if (std::optional<base::Problem> wrong = nonsense(column.quantity, *value, column.unit)) {
    refuse(cell, column.name, std::move(*wrong));
    return;
  }
  set(row, column.quantity, *value, column.unit);
}

void CsvReader::read_row() {
  const Split how = split(lines_.line(), header_.delimiter, cells_);
  if (how == Split::open_quote) {
    refuse(lines_.line(), "",
           {.code = "weather.quote", .message = "a quote of this row is not closed"});
    return;
  }
  // Empty cells beyond the header's columns are no harm.
  const auto beyond =
      cells_.begin() + static_cast<std::ptrdiff_t>(std::min(header_.columns, cells_.size()));
  const bool too_many =
      how == Split::too_many ||
      std::any_of(beyond, cells_.end(), [](std::string_view cell) { return !cell.empty(); });
  if (cells_.size() < header_.columns || too_many) {
    const bool cut = lines_.cut_off() && !too_many;
    const bool commas = too_many && header_.delimiter == ',';
    refuse(
        lines_.line(), "",
        {.code = "weather.columns",
         .message = cut ? "the file ends in the middle of this row"
                        : "this row does not have the columns of the header",
         .found = fmt::format("{} columns", cells_.size()),
         .expected = fmt::format("{} columns", header_.columns),
         .hint = commas ? "numbers with a decimal comma want semicolons between the columns" : ""});
    return;
  }
  bool has_own_offset = false;
  std::optional<Row> row = read_time(has_own_offset);
  Row ignored;
  for (const CsvColumn& column : header_.quantities) read_value(column, row ? *row : ignored);
  if (!row) return;
  if (!has_own_offset && header_.offset) row->at -= *header_.offset;
  if (!has_own_offset && wall_times_) {
    wall_times_->add(*row, rows_);
  } else {
    rows_.push_back(*row);
  }
}

void CsvReader::read_rows() {
  while (!findings_.full() && next_filled_line()) {
    read_row();
  }
  if (wall_times_) wall_times_->finish(rows_);
}

void CsvReader::say_ignored() {
  if (header_.ignored.empty()) return;
  std::string names;
  for (std::size_t i = 0; i < std::min<std::size_t>(header_.ignored.size(), 8); ++i) {
    names += (i == 0 ? "" : ", ") + header_.ignored[i];
  }
  if (header_.ignored.size() > 8) names += " and others";
  weather_.notices.push_back(
      {.code = "weather.columns_ignored", .text = "columns that were not read: " + names});
}

base::Result<Weather> CsvReader::read() {
  if (!next_filled_line()) {
    findings_.add({.code = "weather.empty",
                   .message = "there is no line in this file",
                   .expected = fmt::format("a header line such as \"{}\" and rows below it",
                                           csv_header_example)});
    return refused();
  }
  std::optional<CsvHeader> header = read_csv_header(lines_.line(), lines_.number(), findings_);
  if (!header) return refused();
  header_ = std::move(*header);
  if (header_.offset) weather_.day_offset = *header_.offset;
  if (!header_.offset && (header_.zone || options_.zone)) {
    wall_times_.emplace(header_.zone ? *header_.zone : *options_.zone, locate_, findings_);
  }
  read_rows();
  say_ignored();
  fill(weather_, std::move(rows_), options_.defaults, locate_, findings_);
  if (!findings_.empty()) return refused();
  return std::move(weather_);
}

}  // namespace

base::Result<Weather> read_csv(std::string_view text, std::string_view name,
                               const WeatherOptions& options) {
  return CsvReader(text, name, options).read();
}

}  // namespace wetout::climate
