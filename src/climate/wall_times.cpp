#include "wall_times.hpp"

#include "wetout/time/print.hpp"

namespace wetout::climate {

bool has_offset(std::string_view time_text) {
  // The date's own hyphens end before the time of day.
  const std::size_t clock = time_text.find_first_of("Tt ");
  return clock != std::string_view::npos &&
         time_text.find_first_of("Zz+-", clock) != std::string_view::npos;
}

void WallTimes::refuse(const Row& row, const time::WallReading& reading) {
  const bool skipped = reading.kind == time::WallReading::Kind::skipped;
  base::Problem problem = locate_(row.where);
  problem.code = skipped ? "time.skipped" : "time.twice";
  problem.message = skipped ? "this time does not exist: clocks are put forward over it"
                            : "this time exists twice: clocks are put back over it";
  // The wall time as it stands, printed without the Z of UTC.
  problem.found = time::rfc3339(row.at, time::Zone());
  problem.found.pop_back();
  problem.expected = "\"" + time::rfc3339(reading.first, zone_) + "\" or \"" +
                     time::rfc3339(reading.second, zone_) + "\"";
  problem.hint = skipped
                     ? "if the clock that wrote the file knows no summer time, write its offset "
                       "in the header, such as \"time [-08:00]\""
                     : "rows are told apart when the hour stands twice, one after the other";
  findings_.add(std::move(problem));
}

void WallTimes::add(Row row, std::vector<Row>& rows) {
  const time::WallReading reading = zone_.read(time::WallTime(row.at.time_since_epoch()));
  if (reading.kind == time::WallReading::Kind::twice) {
    open_.push_back({row, reading});
    return;
  }
  finish(rows);
  if (reading.kind == time::WallReading::Kind::skipped) {
    refuse(row, reading);
    return;
  }
  row.at = reading.first;
  rows.push_back(row);
}

void WallTimes::finish(std::vector<Row>& rows) {
  if (open_.empty()) return;
  int steps_back = 0;
  std::size_t second_from = 0;
  for (std::size_t i = 1; i < open_.size(); ++i) {
    if (open_[i].row.at > open_[i - 1].row.at) continue;
    ++steps_back;
    second_from = i;
  }
  if (steps_back != 1) refuse(open_.front().row, open_.front().reading);
  for (std::size_t i = 0; i < open_.size(); ++i) {
    Open& open = open_[i];
    open.row.at = i < second_from ? open.reading.first : open.reading.second;
    rows.push_back(open.row);
  }
  open_.clear();
}

}  // namespace wetout::climate
