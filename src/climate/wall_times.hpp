// Wall times of a table in a zone with summer time.
#pragma once

#include <string_view>
#include <vector>

#include "findings.hpp"
#include "series.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::climate {

/// True when a time such as "2026-06-14T18:30-07:00" says its offset from UTC.
bool has_offset(std::string_view time_text);

/// Gives rows with wall times their instants. A wall time that exists twice is told apart by the
/// rows around it: where an unbroken run of such times steps back once, what stands before the step
/// is the first reading and the rest the second. Any other run is a problem ("time.twice"), as is a
/// time that clocks skip ("time.skipped").
class WallTimes {
 public:
  WallTimes(const time::Zone& zone, const Locate& locate, Findings& findings)
      : zone_(zone), locate_(locate), findings_(findings) {}

  /// `row.at` is the wall time taken for UTC; the row goes to `rows` now or with a later one.
  void add(Row row, std::vector<Row>& rows);
  void finish(std::vector<Row>& rows);

 private:
  struct Open {
    Row row;
    time::WallReading reading;
  };
  void refuse(const Row& row, const time::WallReading& reading);

  const time::Zone& zone_;
  const Locate& locate_;
  Findings& findings_;
  std::vector<Open> open_;  // a run of wall times that exist twice
};

}  // namespace wetout::climate
