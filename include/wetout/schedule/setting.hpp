// All that the order of the work depends on, made ready for the search: steps, films for every
// start, limits for every start, hours, what is shared, what has been done
// (docs/models/schedule.md).
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "wetout/schedule/film_table.hpp"
#include "wetout/schedule/hours.hpp"
#include "wetout/schedule/limits.hpp"
#include "wetout/schedule/steps.hpp"
#include "wetout/time/history.hpp"

namespace wetout::schedule {

/// What has happened: a step was started, and is over at `end`. `observed`: of a wet's film.
struct Fact {
  StepName name = {};
  time::Instant start, end;
  std::vector<std::pair<resin::Milestone, time::Instant>> observed = {};
};
/// What somebody wants to start at a time, whatever hours and limits say.
struct FixedStart {
  StepName name = {};
  time::Instant start;
};

enum class Prefer { finish, slack, visits };

/// When one person works, on real days.
struct PersonSpans {
  std::string id;
  std::vector<WorkingSpan> spans;
  friend bool operator==(const PersonSpans&, const PersonSpans&) = default;
};

struct BoardSetting {
  std::string job;
  BoardSteps steps;
  std::shared_ptr<const LimitTester> limits;  ///< with its own core
  std::vector<FilmRules> rules;               ///< of each coat
  std::vector<std::string> resins;            ///< of each coat
  std::vector<std::optional<Fact>> facts;     ///< of each step
  /// Of each step: something that follows it has been done, so it counts as done.
  std::vector<bool> passed;
  std::vector<std::optional<time::Instant>> fixed;  ///< of each step
};

struct Setting {
  /// Starts from slot `begin` on; the slots before it belong to what has been done
  /// (slots_of_films).
  Grid grid;
  Slot begin = 0;
  std::vector<BoardSetting> boards;
  std::map<std::string, std::shared_ptr<const FilmTable>> films;  ///< by resin
  std::map<std::string, std::shared_ptr<const FilmSource>> sources;
  /// Of the room, in kelvin, where films are: what was recorded, the weather, its last day again.
  std::shared_ptr<const time::History> air;
  std::vector<PersonSpans> people;  ///< one at least
  int stands = 1;
  std::optional<int> racks;  ///< nothing: as many as it takes
  bool sanding_room = false;
  Prefer prefer = Prefer::finish;
  StepDefaults defaults;
};

/// Fits facts and fixed starts to the steps of a board. Problems: "step.unknown" (a fixed step that
/// the board does not have), "step.done" (a fixed step that has been done), "schedule.wet_unknown"
/// (a coat that must be on the board, as what follows it has been done, but nobody recorded when).
/// A look at a coat whose time is over by `now` counts as done.
base::Problems put_facts(BoardSetting& board, const std::vector<Fact>& facts,
                         const std::vector<FixedStart>& fixed, time::Instant now);

/// As many slots as must lie before `begin` for the films that are on a board already: one for
/// each, then a gap that ends a visit, and as long as anything still counts from the end of a wet.
Slot slots_of_films(const BoardSetting& board, const Grid& grid, const StepDefaults& defaults);

/// Milestones of a film that was made, in seconds after the grid's origin; observed ones as they
/// were.
FilmSpans film_of(const Setting& setting, const BoardSetting& board, int coat, time::Instant start,
                  time::Instant end, const Fact* fact);

}  // namespace wetout::schedule
