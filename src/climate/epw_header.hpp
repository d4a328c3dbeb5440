// The eight header lines of an EPW file.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "findings.hpp"
#include "text.hpp"

namespace wetout::climate {

struct EpwHeader {
  std::string place;                        ///< city, state, country
  std::chrono::seconds standard_offset{0};  ///< from UTC, the whole year
  /// Last day of the last data period, where the file says it in a way that is understood.
  struct Day {
    int month = 0;
    int day = 0;
  };
  std::optional<Day> last_day;
};

/// Takes the eight lines; problems carry line and field.
std::optional<EpwHeader> read_epw_header(Lines& lines, Findings& findings);

}  // namespace wetout::climate
