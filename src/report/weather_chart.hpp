// The days of a weather document, cut at midnight of the wall clock.
#pragma once

#include <array>
#include <chrono>
#include <string>
#include <vector>

#include "wetout/report/weather_document.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::report {

inline constexpr int chart_cell_min = 20;
inline constexpr std::size_t chart_cells = 24 * 60 / chart_cell_min;

/// '=' good, '~' notice, a letter that names the limit of a refusal.
char start_sign(const StartWindow& window);

/// Minutes after midnight; the end is at most 24 h.
struct ChartSpan {
  int from = 0;
  int to = 0;
};

/// The windows of one day that say the same, as one.
struct ChartReason {
  char sign = ' ';
  std::vector<ChartSpan> spans;
  const StartWindow* window = nullptr;  ///< the first of them
  const WorstStart* worst = nullptr;    ///< of that day; null where no number closes it
};

struct ChartDay {
  time::WallTime midnight;
  std::string starts = std::string(chart_cells, ' ');  ///< the worst of each cell's starts
  std::array<const WeatherHour*, 24> hours{};          ///< null where nothing is told
  std::vector<ChartReason> reasons;                    ///< in the order of their first hour
};

std::vector<ChartDay> chart_days(const WeatherDocument& document, const time::Zone& zone);

/// A time of the document.
time::Instant instant_of(const std::string& rfc3339);

}  // namespace wetout::report
