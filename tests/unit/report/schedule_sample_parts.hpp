// What sample schedules are put together from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::report::sample {

/// `day` of June 2026, or beyond its end, in UTC.
time::Instant june(int day, int hour = 0, int minute = 0);
std::string text(time::Instant at);
/// Celsius, day after day much alike.
double room_at(time::Instant at);
inline constexpr double dew_point_c = 15.25;

/// Hours from the end of a wet (until: from its start), at about 22 C.
struct Curing {
  const char* resin;
  double gel, trim_until, recoat_from, tack_free, handle, sandable, recoat_until, full_cure;
};
inline constexpr Curing slow{"slow", 6.2, 9.1, 6.2, 9.7, 10.1, 37.5, 19.5, 212};
inline constexpr Curing quick{"quick", 2.2, 3.4, 2.3, 3.6, 3.9, 11.5, 7.5, 140};

struct Row {
  const char* coat;  ///< "" for the board
  const char* step;
  const char* title;
  const char* how;
  time::Instant start;
  int attended_min;
};

/// Adds steps and their times, one after the other.
class Board {
 public:
  Board(ScheduleDocument& document, std::string job, std::string who)
      : document_(document), job_(std::move(job)), who_(std::move(who)) {}

  void step(const Row& row, StepState state = StepState::planned);
  void wet(const Row& row, const Curing& cure, std::vector<StepSlack> slack,
           StepState state = StepState::planned);
  /// 15, 30 and 60 minutes after a wet that ends at `from`.
  void watch(const char* coat, const char* name, time::Instant from);
  /// A step that is not taken.
  void optional(const Row& row, const char* group, const char* option);
  /// The last step is to start while `of` can be recoated.
  void inside_window(const char* of, const char* group);

 private:
  [[nodiscard]] ScheduleStep described(const Row& row) const;
  void add_time(const Row& row, const std::string& id, StepState state);

  ScheduleDocument& document_;
  std::string job_, who_, before_;
};

StepSlack slack(const char* limit, double value, double bound, const char* unit, time::Instant at,
                double left, std::optional<double> breaks, const char* of = "");

/// Program, weather, resins, stands, assumptions, cautions.
ScheduleDocument schedule_header();
ScheduleResin schedule_resin(const Curing& cure, const char* name, bool polyester);
/// Evenings of Monday, Wednesday, Friday and Saturdays, of two weeks.
void add_hours(ScheduleDocument& document, const std::string& id, int evening_from);
/// Of four coats, every reason among them.
void add_windows(ScheduleDocument& document, const std::string& job);

}  // namespace wetout::report::sample
