// What was found: where each step was put, with its film and what is to spare.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>
#include <string>
#include <utility>
#include <variant>

#include "scheduling.hpp"
#include "wetout/base/check.hpp"
#include "wetout/schedule/odds.hpp"
#include "wetout/schedule/window_odds.hpp"

namespace wetout::work {
namespace {

using report::ScheduleDocument;
using report::TimelineStep;
using resin::Milestone;
using schedule::PlacedStep;
using time::Instant;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

report::StepState state_of(PlacedStep::State state) {
  switch (state) {
    case PlacedStep::State::planned:
      return report::StepState::planned;
    case PlacedStep::State::fixed:
      return report::StepState::fixed;
    case PlacedStep::State::done:
      return report::StepState::done;
  }
  return report::StepState::planned;
}

std::string_view unit_of(schedule::Limit limit) {
  if (limit == schedule::Limit::cold || limit == schedule::Limit::warm) return "C";
  return limit == schedule::Limit::humidity ? "share" : "K";
}

class Teller {
 public:
  explicit Teller(const Scheduling& s) : s_(s) {
    for (const schedule::CoreOf& core : s.set_up.cores) {
      auto odds = schedule::WeatherOdds::of(s.asked.weather, s.asked.room, core.lag, s.asked.issued,
                                            s.assumed.limits, s.assumed.climate);
      base::promise(odds.has_value(), "the weather has been read for this room");
      odds_.push_back(std::move(*odds));
    }
    auto windows =
        schedule::WindowOdds::of(s.asked.weather, s.asked.room, s.asked.issued, *s.setting().air,
                                 s.setting().sources, s.assumed.climate);
    base::promise(windows.has_value(), "the weather has been read for this room");
    window_odds_ = std::move(*windows);
  }

  [[nodiscard]] TimelineStep tell(const PlacedStep& placed) const {
    const schedule::BoardSetting& board = s_.board(placed.board);
    const schedule::Step& step = s_.step(placed.board, placed.step);
    const schedule::Conditions& inside = s_.set_up.conditions[u(placed.board)];
    TimelineStep out;
    out.id = s_.id(placed.board, placed.step);
    out.state = state_of(placed.state);
    out.start = s_.told(placed.start);
    out.attended_until = s_.told(placed.attended_until);
    out.end = out.attended_until;
    if (placed.person >= 0) out.who = s_.setting().people[u(placed.person)].id;
    if (placed.start >= inside.first() && placed.start <= inside.last()) {
      const auto kelvin = [&](const time::History& course) {
        return units::Temperature::kelvin(course.at(placed.start));
      };
      out.room = kelvin(inside.air);
      if (inside.dew_point) {
        out.dew_margin =
            std::min(kelvin(inside.air), kelvin(inside.core)) - kelvin(*inside.dew_point);
      }
    }
    use(out, "person", placed.start, placed.attended_until);
    use(out, "board/" + board.job, placed.start, placed.attended_until);
    if (step.is_wet()) film(placed, out);
    if (placed.state != PlacedStep::State::done) windows(placed, out);
    return out;
  }

 private:
  void use(TimelineStep& out, std::string id, Instant from, Instant to) const {
    out.uses.push_back({std::move(id), s_.told(from), s_.told(to)});
  }

  void film(const PlacedStep& wet, TimelineStep& out) const {
    const schedule::FilmSpans film = s_.film(wet);
    out.end = s_.told(s_.instant(film[Milestone::tack_free]));
    const Instant handle = s_.instant(film[Milestone::handle]);
    use(out, "stand", wet.start, handle);
    if (s_.setting().racks) {
      if (const PlacedStep* next = next_wet(wet)) {
        if (next->start > handle) use(out, "rack", handle, next->start);
      }
    }
    for (const Milestone m : resin::milestones) {
      if (film[m] >= schedule::never) continue;
      const Instant at = s_.instant(film[m]);
      out.milestones.push_back(
          {std::string(to_string(m)), s_.told(at), at > s_.set_up.known_until});
    }
    std::stable_sort(out.milestones.begin(), out.milestones.end(),
                     [&](const auto& a, const auto& b) { return film[named(a)] < film[named(b)]; });
    if (wet.state == PlacedStep::State::done) return;
    limits(wet, out);
    chance(wet, out);
  }

  static Milestone named(const report::FilmMilestone& told) {
    for (const Milestone m : resin::milestones) {
      if (to_string(m) == told.name) return m;
    }
    return Milestone::gel;
  }

  [[nodiscard]] const PlacedStep* next_wet(const PlacedStep& wet) const {
    for (const PlacedStep& other : s_.arrangement.steps) {
      if (other.board == wet.board && other.start > wet.start &&
          s_.step(other.board, other.step).is_wet()) {
        return &other;
      }
    }
    return nullptr;
  }

  void limits(const PlacedStep& wet, TimelineStep& out) const {
    const schedule::BoardSetting& board = s_.board(wet.board);
    const int coat = s_.step(wet.board, wet.step).coat;
    const auto open = s_.open_film(wet.board, coat, s_.setting().grid.not_before(wet.start));
    for (const schedule::Tested& tested : board.limits->details(open, board.rules[u(coat)])) {
      if (tested.limit == schedule::Limit::weather || tested.limit == schedule::Limit::foul_air) {
        continue;
      }
      if (tested.limit == schedule::Limit::core_rise) {
        out.core_change = units::TempDelta::kelvin(tested.value);
      }
      out.slack.push_back({.limit = std::string(to_string(tested.limit)),
                           .of = {},
                           .value = tested.value,
                           .bound = tested.bound,
                           .unit = std::string(unit_of(tested.limit)),
                           .time = s_.told(tested.at),
                           .slack = tested.slack,
                           .breaks_at_kelvin = tested.breaks_at_kelvin,
                           .chance = {}});
    }
  }

  void chance(const PlacedStep& wet, TimelineStep& out) const {
    const schedule::BoardSetting& board = s_.board(wet.board);
    const int coat = s_.step(wet.board, wet.step).coat;
    const auto open = s_.open_film(wet.board, coat, s_.setting().grid.not_before(wet.start));
    const double holds = odds_[u(wet.board)].holds(open, board.rules[u(coat)]);
    out.chance_limits_hold = std::round(holds * 1e3) / 1e3;
  }

  [[nodiscard]] double still_open(const PlacedStep& wet, double closes, Instant must) const {
    const int coat = s_.step(wet.board, wet.step).coat;
    const double chance = window_odds_.holds(s_.board(wet.board).resins[u(coat)],
                                             wet.attended_until, s_.instant(closes), must);
    return std::round(chance * 1e3) / 1e3;
  }

  void windows(const PlacedStep& placed, TimelineStep& out) const {
    for (const schedule::Link& link : s_.board(placed.board).steps.links) {
      if (!link.tight || link.to != placed.step || !s_.chosen(placed.board, link.when)) continue;
      const PlacedStep* from = s_.placed(placed.board, link.from);
      if (from == nullptr) continue;
      const double closes = s_.film(*from)[*schedule::milestone(link.moment)];
      const Instant must = link.to_end ? placed.attended_until : placed.start;
      const double left = (closes - s_.setting().grid.seconds(must)) / 60.0;
      out.slack.push_back({.limit = "window",
                           .of = s_.id(placed.board, link.from),
                           .value = left,
                           .bound = 0.0,
                           .unit = "min",
                           .time = s_.told(s_.instant(closes)),
                           .slack = left,
                           .breaks_at_kelvin = {},
                           .chance = still_open(*from, closes, must)});
    }
  }

  const Scheduling& s_;
  std::vector<schedule::WeatherOdds> odds_;  // of each board
  schedule::WindowOdds window_odds_;
};

void choices(const Scheduling& s, ScheduleDocument& document) {
  for (std::size_t b = 0; b < s.setting().boards.size(); ++b) {
    const schedule::BoardSetting& board = s.setting().boards[b];
    for (std::size_t g = 0; g < board.steps.groups.size(); ++g) {
      const schedule::StepGroup& group = board.steps.groups[g];
      const int chosen = s.arrangement.chosen[b][g];
      report::ScheduleChoice& choice = document.choices.emplace_back();
      choice.group = board.job + "/" + group.id;
      choice.options = group.options;
      if (chosen < 0) continue;
      choice.chosen = group.options[u(chosen)];
      choice.text = group.texts[u(chosen)];
    }
  }
}

// Films that are on a board count as a visit of their own.
int boards_begun(const Scheduling& s) {
  std::set<int> boards;
  for (const schedule::OperationOf& of : s.arranging.of) {
    if (of.done) boards.insert(of.board);
  }
  return static_cast<int>(boards.size());
}

}  // namespace

report::ScheduleObjective objective_of(const Scheduling& s,
                                       const schedule::Arrangement& arrangement) {
  report::ScheduleObjective out;
  Instant last = s.asked.from;
  for (const PlacedStep& placed : arrangement.steps) {
    if (placed.state != PlacedStep::State::done) last = std::max(last, placed.attended_until);
  }
  out.finish = s.told(s.span_of(last));
  // Terms stand one after the other in the value, in the order that is preferred.
  std::size_t at = 0;
  for (const search::Term& term : s.arranging.objective.terms) {
    if (at >= arrangement.answer.value.size()) break;
    if (const auto* tight = std::get_if<search::TightCounts>(&term)) {
      for (int level = 0; level < tight->levels; ++level) {
        out.tight.push_back(static_cast<int>(arrangement.answer.value[at++]));
      }
    } else {
      if (std::holds_alternative<search::Visits>(term)) {
        out.visits = static_cast<int>(arrangement.answer.value[at]) - boards_begun(s);
      }
      ++at;
      if (std::holds_alternative<search::Sum>(term)) break;
    }
  }
  return out;
}

void tell_timeline(const Scheduling& s, ScheduleDocument& document) {
  choices(s, document);
  if (!s.arrangement.fits() && !s.arranging.problem.ops.empty()) return;
  const Teller teller(s);
  std::optional<Instant> finish, ride;
  std::vector<std::optional<Instant>> own_finish(s.setting().boards.size());
  std::vector<std::optional<Instant>> own_ride(s.setting().boards.size());
  for (const PlacedStep& placed : s.arrangement.steps) {
    document.timeline.push_back(teller.tell(placed));
    const auto later = [](std::optional<Instant>& known, Instant at) {
      if (!known || *known < at) known = at;
    };
    later(finish, placed.attended_until);
    later(own_finish[u(placed.board)], placed.attended_until);
    if (!s.step(placed.board, placed.step).is_wet()) continue;
    const double cured = s.film(placed)[Milestone::full_cure];
    // One that is never fully cured leaves no day to ride from.
    const Instant at = cured >= schedule::never ? Instant::max() : s.instant(cured);
    later(ride, at);
    later(own_ride[u(placed.board)], at);
  }
  const auto told = [&](const std::optional<Instant>& at) {
    return at && *at != Instant::max() ? std::optional(s.told(*at)) : std::nullopt;
  };
  document.finish = told(finish);
  document.ride_from = told(ride);
  for (std::size_t b = 0; b < own_finish.size(); ++b) {
    document.jobs[b].finish = told(own_finish[b]);
    document.jobs[b].ride_from = told(own_ride[b]);
  }
  document.objective = objective_of(s, s.arrangement);
}

}  // namespace wetout::work
