#include "csv_header.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "text.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::climate {
namespace {

using Word = std::pair<std::string_view, Quantity>;

constexpr std::array time_words{"time", "date", "datetime", "date time", "timestamp", "local time"};

constexpr std::array quantity_words{
    Word{"air", Quantity::air},
    Word{"air temperature", Quantity::air},
    Word{"air temp", Quantity::air},
    Word{"temperature", Quantity::air},
    Word{"temp", Quantity::air},
    Word{"outdoor temperature", Quantity::air},
    Word{"dry bulb", Quantity::air},
    Word{"dry bulb temperature", Quantity::air},
    Word{"dew point", Quantity::dew_point},
    Word{"dewpoint", Quantity::dew_point},
    Word{"dew point temperature", Quantity::dew_point},
    Word{"humidity", Quantity::humidity},
    Word{"relative humidity", Quantity::humidity},
    Word{"rh", Quantity::humidity},
    Word{"wind", Quantity::wind},
    Word{"wind speed", Quantity::wind},
    Word{"sun", Quantity::sun},
    Word{"solar radiation", Quantity::sun},
    Word{"global radiation", Quantity::sun},
    Word{"global horizontal radiation", Quantity::sun},
    Word{"irradiance", Quantity::sun},
};

// "air [C]" or "air (C)".
struct NamedUnit {
  std::string name;
  std::optional<std::string_view> unit;
};

NamedUnit take_apart(std::string_view cell) {
  for (const auto& [open, close] : {std::pair{'[', ']'}, std::pair{'(', ')'}}) {
    if (cell.empty() || cell.back() != close) continue;
    const std::size_t from = cell.rfind(open);
    if (from == std::string_view::npos) continue;
    return {plain_name(cell.substr(0, from)),
            trimmed(cell.substr(from + 1, cell.size() - from - 2))};
  }
  return {plain_name(cell), std::nullopt};
}

// "-08:00", "+05:30", "Z".
std::optional<std::chrono::seconds> read_offset(std::string_view text) {
  if (text == "Z" || text == "z" || text == "UTC") return std::chrono::seconds{0};
  if (text.size() != 6 || text[3] != ':' || (text[0] != '+' && text[0] != '-')) return std::nullopt;
  const auto digits = [&](std::size_t from) {
    const std::string_view two = text.substr(from, 2);
    return two[0] >= '0' && two[0] <= '9' ? to_int(two) : std::nullopt;
  };
  const std::optional<int> hours = digits(1);
  const std::optional<int> minutes = digits(4);
  if (!hours || !minutes || *hours > 23 || *minutes > 59) return std::nullopt;
  const std::chrono::seconds out = std::chrono::hours(*hours) + std::chrono::minutes(*minutes);
  return text[0] == '-' ? -out : out;
}

class HeaderReader {
 public:
  HeaderReader(std::string_view line, int line_number, Findings& findings)
      : line_(line), line_number_(line_number), findings_(findings) {}

  std::optional<CsvHeader> read();

 private:
  base::Problem problem(std::string_view cell, std::string code, std::string message) const;
  void take_time(std::string_view cell, std::size_t index, const NamedUnit& named);
  void take_quantity(std::string_view cell, std::size_t index, Quantity quantity,
                     const NamedUnit& named);
  void take(std::string_view cell, std::size_t index);
  void twice(std::string_view cell, std::string_view what);
  void want_time_and_air();

  std::string_view line_;
  int line_number_;
  Findings& findings_;
  CsvHeader header_;
  bool has_time_ = false;
  bool bad_ = false;
};

base::Problem HeaderReader::problem(std::string_view cell, std::string code,
                                    std::string message) const {
  return {.code = std::move(code),
          .message = std::move(message),
          .line = line_number_,
          .column = column_of(line_, cell),
          .key = base::shown(cell),
          .source_line = std::string(line_.substr(0, 1000))};
}

void HeaderReader::twice(std::string_view cell, std::string_view what) {
  base::Problem out =
      problem(cell, "weather.column_twice", fmt::format("there is a second column of {}", what));
  out.expected = "one column for each quantity";
  out.hint = "give the column that is not wanted another name, such as \"old\"";
  findings_.add(std::move(out));
  bad_ = true;
}

void HeaderReader::take_time(std::string_view cell, std::size_t index, const NamedUnit& named) {
  if (has_time_) {
    twice(cell, "times");
    return;
  }
  has_time_ = true;
  header_.time_index = index;
  header_.time_name = base::shown(cell);
  if (!named.unit) return;
  header_.offset = read_offset(*named.unit);
  if (header_.offset) return;
  base::Result<time::Zone> zone = time::Zone::named(*named.unit);
  if (zone) {
    header_.zone = std::move(*zone);
    return;
  }
  base::Problem out = problem(cell, "zone.unknown", "the times are in no zone that is known");
  out.found = base::shown(*named.unit);
  out.expected = "time [-08:00], time [UTC] or time [America/Los_Angeles]";
  out.hint = zone.error().front().hint;
  findings_.add(std::move(out));
  bad_ = true;
}

void HeaderReader::take_quantity(std::string_view cell, std::size_t index, Quantity quantity,
                                 const NamedUnit& named) {
  const auto same = [&](const CsvColumn& column) { return column.quantity == quantity; };
  if (std::any_of(header_.quantities.begin(), header_.quantities.end(), same)) {
    twice(cell, name_of(quantity));
    return;
  }
  const std::optional<Unit> unit = named.unit ? read_unit(quantity, *named.unit) : std::nullopt;
  if (unit) {
    header_.quantities.push_back({index, quantity, *unit, base::shown(cell)});
    return;
  }
  base::Problem out =
      named.unit ? problem(cell, "unit.unknown",
                           fmt::format("this is no unit of {} that is read", name_of(quantity)))
                 : problem(cell, "unit.missing", "the column does not say its unit");
  if (named.unit) out.found = base::shown(*named.unit);
  const std::string_view units = units_of(quantity);
  out.expected = fmt::format("{}, as in \"{} [{}]\"", units, named.name,
                             units.substr(0, units.find_first_of(", ")));
  findings_.add(std::move(out));
  bad_ = true;
}

void HeaderReader::take(std::string_view cell, std::size_t index) {
  const NamedUnit named = take_apart(cell);
  if (std::find(time_words.begin(), time_words.end(), named.name) != time_words.end()) {
    take_time(cell, index, named);
    return;
  }
  const auto word = std::find_if(quantity_words.begin(), quantity_words.end(),
                                 [&](const Word& w) { return w.first == named.name; });
  if (word != quantity_words.end()) {
    take_quantity(cell, index, word->second, named);
  } else if (!cell.empty()) {
    header_.ignored.push_back(base::shown(cell));
  }
}

void HeaderReader::want_time_and_air() {
  const bool has_air =
      std::any_of(header_.quantities.begin(), header_.quantities.end(),
                  [](const CsvColumn& column) { return column.quantity == Quantity::air; });
  if ((has_time_ && has_air) || bad_) return;
  bad_ = true;
  const char* const missing = has_time_ ? "of air temperature"
                              : has_air ? "of times"
                                        : "of times or of air temperature";
  base::Problem out{.code = "weather.header",
                    .message = fmt::format("the header line has no column {}", missing),
                    .line = line_number_,
                    .found = base::shown(line_),
                    .expected = fmt::format("names and units, such as \"{}\"", csv_header_example)};
  const bool begins_with_digit = !line_.empty() && line_.front() >= '0' && line_.front() <= '9';
  if (begins_with_digit) out.hint = "put a header line above the first row";
  findings_.add(std::move(out));
}

std::optional<CsvHeader> HeaderReader::read() {
  if (line_.find(';') != std::string_view::npos) header_.delimiter = ';';
  std::vector<std::string_view> cells;
  if (const Split how = split(line_, header_.delimiter, cells); how != Split::whole) {
    const bool quote = how == Split::open_quote;
    findings_.add({.code = quote ? "weather.quote" : "weather.columns",
                   .message = quote ? "a quote of the header line is not closed"
                                    : "the header line has too many columns",
                   .line = line_number_,
                   .found = base::shown(line_),
                   .expected = quote ? "" : fmt::format("at most {} columns", most_cells)});
    return std::nullopt;
  }
  header_.columns = cells.size();
  for (std::size_t i = 0; i < cells.size() && !findings_.full(); ++i) take(cells[i], i);
  want_time_and_air();
  if (bad_) return std::nullopt;
  return std::move(header_);
}

}  // namespace

std::optional<CsvHeader> read_csv_header(std::string_view line, int line_number,
                                         Findings& findings) {
  return HeaderReader(line, line_number, findings).read();
}

}  // namespace wetout::climate
