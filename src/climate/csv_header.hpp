// The header line of a weather CSV: which column is what, in which unit.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "findings.hpp"
#include "measures.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::climate {

struct CsvColumn {
  std::size_t index = 0;
  Quantity quantity = Quantity::air;
  Unit unit = Unit::celsius;
  std::string name;  ///< as the file writes it, unit included
};

struct CsvHeader {
  char delimiter = ',';
  std::size_t columns = 0;
  std::size_t time_index = 0;
  std::string time_name;
  /// What the time column says of its wall times: at most one of the two.
  std::optional<std::chrono::seconds> offset;
  std::optional<time::Zone> zone;
  std::vector<CsvColumn> quantities;
  std::vector<std::string> ignored;
};

inline constexpr std::string_view csv_header_example =
    "time,air [C],humidity [%],wind [m/s],sun [W/m2]";

/// Problems carry `line_number`, column and key.
std::optional<CsvHeader> read_csv_header(std::string_view line, int line_number,
                                         Findings& findings);

}  // namespace wetout::climate
