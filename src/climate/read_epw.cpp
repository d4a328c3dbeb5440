#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <string>
#include <utility>

#include "epw_header.hpp"
#include "readers.hpp"
#include "series.hpp"
#include "text.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::climate {
namespace {

namespace chrono = std::chrono;

struct Field {
  std::size_t index;  // from 0
  std::string_view name;
};

// [epwdictionary]. The number in the name is counted from 1, as there.
constexpr Field year_field{0, "year (field 1)"};
constexpr Field month_field{1, "month (field 2)"};
constexpr Field day_field{2, "day (field 3)"};
constexpr Field hour_field{3, "hour (field 4)"};
constexpr Field minute_field{4, "minute (field 5)"};

struct Measure {
  Field field;
  Quantity quantity;
  Unit unit;
  double missing;
};

constexpr std::array measures{
    Measure{{6, "dry bulb (field 7)"}, Quantity::air, Unit::celsius, 99.9},
    Measure{{7, "dew point (field 8)"}, Quantity::dew_point, Unit::celsius, 99.9},
    Measure{{8, "relative humidity (field 9)"}, Quantity::humidity, Unit::percent, 999.0},
    // Wh/m2 in an hour is the mean in W/m2.
    Measure{{13, "global horizontal radiation (field 14)"},
            Quantity::sun,
            Unit::watts_per_square_metre,
            9999.0},
    Measure{{21, "wind speed (field 22)"}, Quantity::wind, Unit::metres_per_second, 999.0},
};
constexpr std::size_t fields_read = 22;

struct Clock {
  int year = 0;
  unsigned month = 1;
  unsigned day = 1;
  int hour = 1;
  int minute = 0;
};

struct EpwRow {
  Clock clock;
  Row row;
};

chrono::year_month_day date_in(int year, const Clock& clock) {
  return chrono::year(year) / chrono::month(clock.month) / chrono::day(clock.day);
}

class EpwReader {
 public:
  EpwReader(std::string_view text, std::string_view name) : lines_(text), findings_(name) {
    weather_.source = name;
    weather_.kind = WeatherKind::epw;
  }

  base::Result<Weather> read(const WeatherDefaults& defaults);

 private:
  void refuse(const Field& field, base::Problem problem);
  void read_rows();
  void read_row();
  std::optional<int> take_int(const Field& field, int low, int high);
  std::optional<Clock> read_clock();
  void read_measure(const Measure& measure, Row& row);
  bool mixes_years() const;
  bool counts_minutes_from_zero();
  void set_instants();
  void look_at_end(const EpwHeader& header);

  Lines lines_;
  Findings findings_;
  Weather weather_;
  std::vector<std::string_view> cells_;
  std::size_t columns_ = 0;  // of the first row
  std::vector<EpwRow> rows_;
};

// With the place of the field in this line, and what stands there if nothing is said of it.
void EpwReader::refuse(const Field& field, base::Problem problem) {
  constexpr std::size_t most_shown = 1000;
  const std::string_view cell = cells_[field.index];
  problem.line = lines_.number();
  problem.key = field.name;
  if (problem.found.empty()) problem.found = base::shown(cell);
  if (lines_.line().size() <= most_shown) {
    problem.column = column_of(lines_.line(), cell);
    problem.source_line = lines_.line();
  }
  findings_.add(std::move(problem));
}

std::optional<int> EpwReader::take_int(const Field& field, int low, int high) {
  const std::optional<int> value = to_int(cells_[field.index]);
  if (value && *value >= low && *value <= high) return value;
  const bool hour_zero = field.index == hour_field.index && value == 0;
  refuse(field, {.code = "weather.bad_time",
                 .message = "this is no part of a time",
                 .expected = fmt::format("a whole number from {} to {}", low, high),
                 .hint = hour_zero ? "hours run from 1 (00:01 to 01:00) to 24" : ""});
  return std::nullopt;
}

std::optional<Clock> EpwReader::read_clock() {
  const auto year = take_int(year_field, 1800, 2200);
  const auto month = take_int(month_field, 1, 12);
  const auto day = take_int(day_field, 1, 31);
  const auto hour = take_int(hour_field, 1, 24);
  const auto minute = take_int(minute_field, 0, 60);
  if (!year || !month || !day || !hour || !minute) return std::nullopt;
  const Clock out{*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day), *hour,
                  *minute};
  constexpr int some_leap_year = 2000;
  if (date_in(some_leap_year, out).ok()) return out;
  refuse(day_field, {.code = "weather.bad_time",
                     .message = "the month has no such day",
                     .expected = fmt::format("a day of month {}", *month)});
  return std::nullopt;
}

void EpwReader::read_measure(const Measure& measure, Row& row) {
  const std::string_view cell = cells_[measure.field.index];
  if (cell.empty()) return;
  const std::optional<double> value = to_number(cell);
  if (!value) {
    refuse(measure.field,
           {.code = "number.bad",
            .message = fmt::format("this {} is not a number", name_of(measure.quantity)),
            .expected = fmt::format("a number, {:g} where it is missing", measure.missing)});
    return;
  }
  if (*value == measure.missing) return;
  if (std::optional<base::Problem> wrong = nonsense(measure.quantity, *value, measure.unit)) {
    wrong->expected += fmt::format(", or {:g} where it is missing", measure.missing);
    refuse(measure.field, std::move(*wrong));
    return;
  }
  set(row, measure.quantity, *value, measure.unit);
}

void EpwReader::read_row() {
  const bool split_well = split(lines_.line(), ',', cells_) == Split::whole;
  if (columns_ == 0) columns_ = std::max(cells_.size(), fields_read);
  if (!split_well || cells_.size() < columns_) {
    findings_.add({.code = "weather.columns",
                   .message = lines_.cut_off() ? "the file ends in the middle of this row"
                                               : "this row is not complete",
                   .line = lines_.number(),
                   .found = fmt::format("{} fields", cells_.size()),
                   .expected = fmt::format("{} fields", columns_)});
    return;
  }
  const std::optional<Clock> clock = read_clock();
  EpwRow out;
  for (const Measure& measure : measures) read_measure(measure, out.row);
  if (!clock) return;
  out.clock = *clock;
  out.row.where = lines_.number();
  rows_.push_back(out);
}

void EpwReader::read_rows() {
  while (!findings_.full() && lines_.next()) {
    if (trimmed(lines_.line()).empty()) continue;
    read_row();
  }
}

// Months of a typical year come from different years: the year changes elsewhere than from December
// to January of the next.
bool EpwReader::mixes_years() const {
  for (std::size_t i = 1; i < rows_.size(); ++i) {
    const Clock& a = rows_[i - 1].clock;
    const Clock& b = rows_[i].clock;
    const bool new_year = a.month == 12 && b.month == 1 && b.year == a.year + 1;
    if (a.year != b.year && !new_year) return true;
  }
  return false;
}

// Rows within the hour are minutes 15, 30, 45, 60 of it, or 0, 15, 30, 45. With one row an hour
// both 0 and 60 are its end.
bool EpwReader::counts_minutes_from_zero() {
  const auto has = [&](auto&& which) {
    return std::find_if(rows_.begin(), rows_.end(),
                        [&](const EpwRow& row) { return which(row.clock.minute); });
  };
  const auto zero = has([](int minute) { return minute == 0; });
  const auto sixty = has([](int minute) { return minute == 60; });
  const auto within = has([](int minute) { return minute != 0 && minute != 60; });
  if (within == rows_.end() || zero == rows_.end()) return false;
  if (sixty == rows_.end()) return true;
  findings_.add({.code = "weather.minutes",
                 .message = "the minutes of this file run from 0 as well as to 60",
                 .line = zero->row.where,
                 .key = std::string(minute_field.name),
                 .found = fmt::format("minute 0 here, minute 60 in line {}", sixty->row.where),
                 .expected = "rows of an hour at minutes 15, 30, 45, 60 or 0, 15, 30, 45"});
  return false;
}

void EpwReader::set_instants() {
  weather_.typical_year = mixes_years();
  const bool from_zero = counts_minutes_from_zero();
  const bool leap_day = std::any_of(rows_.begin(), rows_.end(), [](const EpwRow& row) {
    return row.clock.month == 2 && row.clock.day == 29;
  });
  // Dates of no year: any year will do that has the days.
  const int some_year = leap_day ? 2000 : 2001;
  for (EpwRow& row : rows_) {
    const Clock& clock = row.clock;
    const auto date = date_in(weather_.typical_year ? some_year : clock.year, clock);
    if (!date.ok()) {
      findings_.add({.code = "weather.bad_time",
                     .message = fmt::format("{} has no 29 February", clock.year),
                     .line = row.row.where,
                     .key = std::string(day_field.name),
                     .found = "29",
                     .expected = "a day of the year"});
      if (findings_.full()) return;
      continue;
    }
    const int minute = !from_zero && clock.minute == 0 ? 60 : clock.minute;
    row.row.at = chrono::sys_days(date) + chrono::hours(clock.hour - 1) + chrono::minutes(minute) -
                 weather_.day_offset;
  }
}

void EpwReader::look_at_end(const EpwHeader& header) {
  if (rows_.empty() || !header.last_day) return;
  const Clock& last = rows_.back().clock;
  if (static_cast<int>(last.month) == header.last_day->month &&
      static_cast<int>(last.day) == header.last_day->day && last.hour == 24) {
    return;
  }
  weather_.notices.push_back({.code = "weather.ends_early",
                              .text = "the file ends before the last day that its header names"});
}

base::Result<Weather> EpwReader::read(const WeatherDefaults& defaults) {
  const std::optional<EpwHeader> header = read_epw_header(lines_, findings_);
  if (!header) return base::fail(findings_.take());
  weather_.place = header->place;
  weather_.day_offset = header->standard_offset;
  read_rows();
  set_instants();
  look_at_end(*header);
  std::vector<Row> rows;
  rows.reserve(rows_.size());
  for (const EpwRow& row : rows_) rows.push_back(row.row);
  const Locate locate = [](int line) {
    return base::Problem{.line = line, .key = "month, day, hour, minute (fields 2 to 5)"};
  };
  fill(weather_, std::move(rows), defaults, locate, findings_);
  if (!findings_.empty()) return base::fail(findings_.take());
  return std::move(weather_);
}

}  // namespace

base::Result<Weather> read_epw(std::string_view text, std::string_view name,
                               const WeatherDefaults& defaults) {
  return EpwReader(text, name).read(defaults);
}

}  // namespace wetout::climate
