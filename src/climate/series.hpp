// From the rows of a file to weather: order, rows that stand twice, what is missing, gaps.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "findings.hpp"
#include "measures.hpp"
#include "wetout/climate/weather.hpp"

namespace wetout::climate {

/// One row as read, in range. `where` is a line or an index of the file.
struct Row {
  time::Instant at;
  std::optional<units::Temperature> air = {};
  std::optional<units::Temperature> dew_point = {};
  std::optional<double> relative_humidity = {};
  std::optional<double> wind_m_s = {};
  std::optional<double> sun_w_m2 = {};
  bool whole_air = true;  ///< in whole degrees, or missing
  bool whole_dew_point = true;
  int where = 0;
};

/// A value in range into its place.
void set(Row& row, Quantity quantity, double value, Unit unit);

/// Line (or key) of a row; code, message and the rest are added here.
using Locate = std::function<base::Problem(int where)>;

/// Rows, or lines of text.
inline constexpr std::size_t most_rows = 600'000;
base::Problem too_many_rows();

/// Puts the rows into weather.points and fills what follows from them, notices included; what
/// cannot be mended goes to `findings`. Whole degrees are marked where smoothing does something.
void fill(Weather& weather, std::vector<Row> rows, const WeatherDefaults& defaults,
          const Locate& locate, Findings& findings);

}  // namespace wetout::climate
