// Conversion over time in plain characters.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/report/cure_document.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::report {

/// A letter under the axis.
struct PlotMark {
  char letter = ' ';
  units::Duration at;
};

struct CurvePlot {
  const std::vector<CurvePoint>& curve;  ///< at least two points, in rising order
  std::vector<PlotMark> marks;           ///< those after the end stand at the end as "F>"
  units::Duration until;
  std::optional<time::Instant> start;  ///< clock times under the axis
  time::Zone zone;
};

/// Lines of at most 79 columns, ASCII only.
std::vector<std::string> plot_text(const CurvePlot& plot);

/// Where a plot is to end so that its last tick is a round time: at or after `last`.
units::Duration plot_end(units::Duration last);

}  // namespace wetout::report
