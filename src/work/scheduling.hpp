// A schedule on its way from what was asked to a document: what its parts are told from.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "weather_in_use.hpp"
#include "wetout/report/schedule_document.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/schedule/arrange.hpp"
#include "wetout/schedule/set_up.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::work {

/// One answer, with all it was found from. The parts refer to each other: keep it where it is.
struct Scheduling {
  const schedule::Asked& asked;
  const schedule::Assumed& assumed;
  const schedule::SetUp& set_up;
  const schedule::Arranging& arranging;
  const schedule::Arrangement& arrangement;

  [[nodiscard]] const schedule::Setting& setting() const { return set_up.setting; }
  [[nodiscard]] const schedule::BoardSetting& board(int b) const {
    return setting().boards[static_cast<std::size_t>(b)];
  }
  [[nodiscard]] const schedule::Step& step(int b, int i) const {
    return board(b).steps.steps[static_cast<std::size_t>(i)];
  }
  [[nodiscard]] std::string told(time::Instant at) const;
  /// "job/coat/step".
  [[nodiscard]] std::string id(int b, int i) const;
  /// Where a step was put; nothing when it does not take place.
  [[nodiscard]] const schedule::PlacedStep* placed(int b, int i) const;
  /// Milestones of the film of a placed wet, seconds after the grid's origin.
  [[nodiscard]] schedule::FilmSpans film(const schedule::PlacedStep& wet) const;
  [[nodiscard]] time::Instant instant(double seconds) const;
  /// The film of a wet that would be started at a slot.
  [[nodiscard]] schedule::OpenFilm open_film(int b, int coat, schedule::Slot start) const;
  /// The working span that holds an end, by its start; the end itself where none does.
  [[nodiscard]] time::Instant span_of(time::Instant end) const;
  /// A condition holds: always, or as its option was chosen.
  [[nodiscard]] bool chosen(int b, schedule::When when) const;
};

/// Steps, resources, resins, weather: what a checker needs, whether anything fits or not.
void tell_rules(const Scheduling& s, report::ScheduleDocument& document);
/// What was found: timeline, choices, finish, objective.
void tell_timeline(const Scheduling& s, report::ScheduleDocument& document);
report::ScheduleObjective objective_of(const Scheduling& s,
                                       const schedule::Arrangement& arrangement);
/// Starts of every coat that is still to come, and what closes them.
std::vector<report::CoatWindow> coat_windows(const Scheduling& s);
/// The limit or rule that closes one start: its word and its reason; nothing where it is open.
struct Closed {
  std::string limit, reason;
};
class Closing {
 public:
  explicit Closing(const Scheduling& s);
  [[nodiscard]] std::optional<Closed> at(int b, int i, schedule::Slot slot) const;

 private:
  const Scheduling& s_;
  std::vector<search::Bits> possible_;
};
/// In a sentence: up to which step the first board that does not fit alone fits, and what is in the
/// way of the next.
std::string why_impossible(const Scheduling& s, const search::Limits& limits);

/// The best schedules that put one coat into another working span, best first.
std::vector<report::Alternative> alternatives(const Scheduling& s, int count,
                                              const search::Limits& limits);
/// Against the schedule that was saved before.
std::vector<report::ChangedStep> changed(const Scheduling& s,
                                         const report::ScheduleDocument& before, time::Instant now);
std::vector<laminate::Assumption> schedule_assumptions(const Scheduling& s,
                                                       const WeatherInUse& use);

/// Of weather, films, room, fixed starts, and air that the plan was not made for.
void tell_notices(const Scheduling& s, const WeatherInUse& use, report::ScheduleDocument& document);

/// Plans a board anew with one resin in place of another; nothing where that cannot be planned.
using Replan = std::function<std::optional<schedule::BoardAsked>(
    std::size_t board, const std::string& resin, const std::string& instead)>;
/// The smallest single change of each kind that makes something fit, smallest kind first.
std::vector<report::SmallestChange> smallest_changes(
    const schedule::Asked& asked, const schedule::Assumed& assumed, const schedule::SetUp& set_up,
    const Replan& replan, const search::Limits& limits, resin::AnswerCache* cache);

}  // namespace wetout::work
