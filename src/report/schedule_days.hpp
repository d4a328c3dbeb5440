// The days of a schedule's text: bars, steps, films, windows that close.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "layout.hpp"
#include "schedule_chart.hpp"
#include "schedule_view.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

class DaysWriter {
 public:
  DaysWriter(const ScheduleView& view, units::System system, layout::Page& page);

  /// What the bars mean; nothing without a timeline.
  void legend();
  void days();
  /// Cautions of no step that was printed.
  [[nodiscard]] std::vector<std::string> cautions_left() const;

 private:
  void day(time::WallTime day, const std::vector<const Entry*>& entries);
  void past(time::WallTime day, const std::vector<const Entry*>& entries);
  void quiet(time::WallTime day);
  void bars(time::WallTime day);
  void step(const Entry& entry, const std::vector<const Entry*>& of_day);
  void film(const Entry& wet, const std::string& of = {});
  void room(const Entry& wet);
  void looks(const std::vector<const Entry*>& watches, const Entry* wet);
  void closing(const ClosingWindow& window);
  void cautions(const Entry& entry);

  [[nodiscard]] std::string title(const Entry& entry) const;
  [[nodiscard]] std::string day_aside(time::WallTime day,
                                      const std::vector<const Entry*>& entries) const;
  void line(const std::string& label, const std::string& text, const std::string& id);
  void below(const std::string& text);

  const ScheduleView& view_;
  units::System system_;
  layout::Page& page_;
  RoomCourse course_;
  std::size_t label_columns_ = 0;
  std::set<const Entry*> printed_;
  std::set<std::string> said_;  ///< cautions
};

}  // namespace wetout::report
