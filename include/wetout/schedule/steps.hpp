// The steps of one board, made from its coats, and what must lie between them
// (docs/models/schedule.md). No times of day: films decide when their milestones come.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/schedule/step_defaults.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::schedule {

/// Start and end of the attended part, and what happens to the film of a wet. trim_until and
/// recoat_until count from its start, when the first batch is mixed; the others from its end.
enum class Moment {
  start,
  end,
  gel,
  trim_until,
  recoat_from,
  tack_free,
  handle,
  sandable,
  recoat_until,
  full_cure,
};
/// The word of documents: "start", "end", or that of the milestone.
std::string_view to_string(Moment moment);
/// Nothing for start and end.
std::optional<resin::Milestone> milestone(Moment moment);

/// One option of a group; group -1: always.
struct When {
  int group = -1;
  int option = -1;
  friend bool operator==(const When&, const When&) = default;
};

struct Step {
  StepName name = {};
  int coat = -1;  ///< index in the order of BoardWork::coats; -1: of the whole board
  units::Duration attended = {};
  /// As usual: before the shop's own pace and the grid; 0 where the work has none of its own.
  double usual_minutes = 0.0;
  /// Of a wet: what of its time is not spreading, as usual: mixing, working over, setting parts.
  double beside_spreading = 0.0;
  bool dusty = false;      ///< dry sanding, routing, grinding
  std::string title = {};  ///< for people
  std::string how = {};    ///< grits, what to look for; may be empty
  When when = {};

  [[nodiscard]] bool is_wet() const { return name.word == StepWord::wet; }
};

/// `moment` of `from` comes before the start of `to` (its end, if `to_end`) by at least `min` and
/// at most `max`. `tight`: what is left before `max` is an item of slack. `good_film`: instead of a
/// lag, the film of `from` must not have been in the notice band.
struct Link {
  int from = -1;
  Moment moment = Moment::end;
  int to = -1;
  bool to_end = false;
  std::optional<units::Duration> min = {}, max = {};
  bool tight = false;
  bool good_film = false;
  When when = {};
};

/// Exactly one option is chosen.
struct StepGroup {
  /// "deck-hot/ground", "deck-lam/band", "bottom-lam/laps", "deck-hot/notice"
  std::string id;
  std::vector<std::string> options;  ///< "window", "scuffed"; "cut", "ground"; "as it is", "washed"
  std::vector<std::string> texts;    ///< of each, for people
};

/// One board as the schedule knows it.
struct BoardWork {
  std::string job;
  laminate::Plan plan;
  std::vector<laminate::CoatSpec> coats;  ///< in file order, as the plan's
  /// Steps that the board has only if they are named, with their attended time.
  std::optional<units::Duration> spackle, artwork, spot;
};

struct BoardSteps {
  std::vector<Step> steps;  ///< in the order of the work: a step never precedes an earlier one
  std::vector<Link> links;
  std::vector<StepGroup> groups;
  /// Wet of each coat, by index of the coat.
  std::vector<int> wets;
  /// Films that the coat lands on with its whole face (not those of laps): it is sealed there.
  std::vector<bool> sealed;
};

/// Attended times are whole multiples of five minutes, rounded up. `shop`: for families of resins
/// and whether they print the limits that a notice band stands in for. Problems: those of
/// laminate::order_of_coats().
base::Result<BoardSteps> steps_of(const BoardWork& board, const laminate::Shop& shop,
                                  const StepDefaults& defaults = {});

}  // namespace wetout::schedule
