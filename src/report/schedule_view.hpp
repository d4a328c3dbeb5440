// A schedule as its text needs it: steps with what is known of them, times as on the wall.
#pragma once

#include <chrono>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::report {

/// The day that a sentence speaks of, so that "Tue" is said once.
struct Spoken {
  time::WallTime from = {};  ///< weekdays are those of the week that begins here
  time::WallTime now = {};   ///< named last
  Spoken() = default;        ///< no day yet
  explicit Spoken(time::WallTime day) : from(day), now(day) {}
};

/// Days and clock times on the wall of a zone.
class WallClock {
 public:
  explicit WallClock(const time::Zone& zone) : zone_(zone) {}

  [[nodiscard]] const time::Zone& zone() const { return zone_; }
  /// Midnight before.
  [[nodiscard]] time::WallTime day(time::Instant at) const;
  /// Of that day's clock; nothing that does not exist there.
  [[nodiscard]] std::optional<time::Instant> instant(time::WallTime wall) const;
  /// "14:32".
  [[nodiscard]] std::string clock(time::Instant at) const;
  /// "18:00-22:00"; a span that ends with its day ends at 24:00.
  [[nodiscard]] std::string span(time::Instant from, time::Instant to) const;
  /// "Mon 15 Jun".
  [[nodiscard]] static std::string date(time::WallTime day);
  /// "Mon 15 Jun 14:32".
  [[nodiscard]] std::string full(time::Instant at) const;
  /// "14:32" on the day that is spoken of, "Tue 04:10" within a week, else full.
  [[nodiscard]] std::string when(time::Instant at, Spoken& spoken) const;

 private:
  const time::Zone& zone_;
};

/// One step of the timeline.
struct Entry {
  const TimelineStep* timed = nullptr;
  const ScheduleStep* told = nullptr;  ///< null for one that was done and is not told any more
  std::string job, coat, word;         ///< of its id; `coat` empty for the board's
  time::Instant start, until;          ///< of the attended part
  time::WallTime day;                  ///< of its start
  [[nodiscard]] bool is_wet() const { return word == "wet"; }
  [[nodiscard]] bool is_watch() const { return word.starts_with("watch"); }
  [[nodiscard]] bool is_done() const { return timed->state == StepState::done; }
};

/// A window of a film before whose end another step is planned.
struct ClosingWindow {
  time::Instant at;
  bool trim = false;  ///< else recoat
  const Entry* film = nullptr;
  const Entry* step = nullptr;
};

class ScheduleView {
 public:
  ScheduleView(const ScheduleDocument& document, const time::Zone& zone);

  const ScheduleDocument& document;
  WallClock wall;
  std::vector<Entry> entries;  ///< as in the timeline
  std::vector<ClosingWindow> closings;

  [[nodiscard]] bool one_job() const { return document.jobs.size() == 1; }
  [[nodiscard]] bool one_person() const { return document.calendars.size() < 2; }
  [[nodiscard]] const Entry* find(std::string_view id) const;
  /// Always, or as its option was chosen.
  [[nodiscard]] bool holds(const StepAfter& after) const;
  /// "bottom-lam"; of several boards "pico-5-4/bottom-lam".
  [[nodiscard]] std::string coat_label(const Entry& entry) const;
  /// "bottom-lam/wet": of one board without the job.
  [[nodiscard]] std::string step_label(std::string_view id) const;
  /// The milestone of a wet; nothing where it has none.
  [[nodiscard]] static const FilmMilestone* milestone(const Entry& wet, std::string_view name);
  [[nodiscard]] static std::optional<time::Instant> at(const Entry& wet, std::string_view name);

 private:
  void add_closings(const Entry& entry);

  std::map<std::string, const ScheduleStep*, std::less<>> told_;
};

}  // namespace wetout::report
