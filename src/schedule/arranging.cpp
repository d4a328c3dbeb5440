// A setting as a search problem.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <string>
#include <tuple>
#include <utility>

#include "attended_hours.hpp"
#include "done_work.hpp"
#include "wetout/base/check.hpp"
#include "wetout/schedule/arrange.hpp"

namespace wetout::schedule {
namespace {

using resin::Milestone;
using search::Bits;
using search::EventRef;
using search::Lag;
using search::Operation;
using search::Table;
using time::Instant;

// Beyond anything a horizon can hold, far below the search's own limit.
constexpr Slot far_off = Slot{1} << 26;

std::size_t u(int i) { return static_cast<std::size_t>(i); }

bool counts_from_start(Milestone m) {
  return m == Milestone::trim_until || m == Milestone::recoat_until;
}

std::string number(std::size_t i) {
  std::string digits = std::to_string(i);
  return std::string(3 - std::min<std::size_t>(3, digits.size()), '0') + digits;
}

class Compiler {
 public:
  explicit Compiler(const Setting& setting)
      : s_(setting),
        hours_(setting.people, setting.grid, setting.begin),
        done_(done_work(setting)) {}

  Arranging run() {
    out_.problem.horizon = s_.grid.slots;
    out_.problem.calendars.push_back(hours_.together());
    resources();
    for (std::size_t b = 0; b < s_.boards.size(); ++b) board(b);
    objective();
    return std::move(out_);
  }

 private:
  // --- slots

  [[nodiscard]] Slot slots_up(double seconds) const {
    return seconds >= never ? far_off
                            : static_cast<Slot>(std::ceil(seconds / s_.grid.step_s() - 1e-9));
  }
  [[nodiscard]] Slot slots_down(double seconds) const {
    return seconds >= never ? far_off
                            : static_cast<Slot>(std::floor(seconds / s_.grid.step_s() + 1e-9));
  }
  [[nodiscard]] Slot up(units::Duration span) const { return slots_up(units::in_seconds(span)); }
  [[nodiscard]] Slot down(units::Duration span) const {
    return slots_down(units::in_seconds(span));
  }

  // --- what is shared

  void resources() {
    auto& resources = out_.problem.resources;
    search::Resource people{"person", static_cast<int>(s_.people.size()), -1};
    // To one board one thing at a time is done, by somebody whose starts are those of hours_.
    if (s_.boards.size() > 1) people.away = hours_.away();
    resources.push_back(std::move(people));
    resources.push_back({"stand", s_.stands, -1});
    if (s_.racks) resources.push_back({"rack", std::max(*s_.racks, done_.lying), -1});
    first_board_ = static_cast<int>(resources.size());
    for (const BoardSetting& board : s_.boards) resources.push_back({board.job, 1, -1});
  }

  // --- one board

  void board(std::size_t b) {
    const BoardSetting& board = s_.boards[b];
    const std::size_t steps = board.steps.steps.size();
    out_.op.emplace_back(steps, -1);
    out_.at.emplace_back(board.rules.size());
    groups(b);
    Instant busy_until = s_.grid.at(s_.begin);
    for (const auto& fact : board.facts) {
      if (fact) busy_until = std::max(busy_until, fact->end);
    }
    Slot ghost = 0;
    for (std::size_t i = 0; i < steps; ++i) {
      const Step& step = board.steps.steps[i];
      if (board.passed[i] || absent(b, step.when)) continue;
      if (board.facts[i]) {
        if (step.is_wet()) done_film(b, i, ghost++);
      } else {
        operation(b, i, s_.grid.not_before(busy_until));
      }
    }
    for (const Link& link : board.steps.links) add(b, link);
    racks(b);
  }

  // Which options are decided by what has been done, or by a fixed start.
  void groups(std::size_t b) {
    const BoardSetting& board = s_.boards[b];
    const std::size_t count = board.steps.groups.size();
    out_.group.emplace_back(count, -1);
    out_.decided.emplace_back(count, -1);
    for (std::size_t g = 0; g < count; ++g) {
      bool open = false;
      int& decided = out_.decided[b][g];
      for (std::size_t i = 0; i < board.steps.steps.size(); ++i) {
        const When when = board.steps.steps[i].when;
        if (when.group != static_cast<int>(g)) continue;
        if (board.facts[i] || (board.fixed[i] && decided < 0)) decided = when.option;
        open = open || (!board.facts[i] && !board.passed[i]);
      }
      for (const Link& link : board.steps.links) {
        if (link.when.group != static_cast<int>(g)) continue;
        open = open || (!board.facts[u(link.to)] && !board.passed[u(link.to)]);
      }
      if (decided < 0 && !open) decided = 0;
      if (decided >= 0) continue;
      out_.group[b][g] = static_cast<int>(out_.problem.groups.size());
      out_.problem.groups.push_back({board.job + "/" + board.steps.groups[g].id,
                                     static_cast<int>(board.steps.groups[g].options.size()),
                                     {}});
    }
  }
  [[nodiscard]] bool absent(std::size_t b, When when) const {
    if (when.group < 0) return false;
    const int decided = out_.decided[b][u(when.group)];
    return decided >= 0 && decided != when.option;
  }
  [[nodiscard]] search::Option option(std::size_t b, When when) const {
    if (when.group < 0 || out_.group[b][u(when.group)] < 0) return {};
    return {out_.group[b][u(when.group)], when.option};
  }

  int new_op(std::size_t b, std::size_t i, bool done) {
    const int op = static_cast<int>(out_.problem.ops.size());
    out_.op[b][i] = op;
    out_.of.push_back({static_cast<int>(b), static_cast<int>(i), done});
    Operation& operation = out_.problem.ops.emplace_back();
    operation.id =
        s_.boards[b].job + "/" + number(i) + "/" + to_string(s_.boards[b].steps.steps[i].name);
    return op;
  }
  void hold(int resource, EventRef from, EventRef to, search::Option when = {}) {
    out_.problem.holds.push_back({resource, 1, from, to, when});
  }

  void operation(std::size_t b, std::size_t i, Slot earliest) {
    const BoardSetting& board = s_.boards[b];
    const Step& step = board.steps.steps[i];
    const int op = new_op(b, i, false);
    Operation& operation = out_.problem.ops[u(op)];
    const Slot attended = up(step.attended);
    operation.attended = attended;
    operation.when = option(b, step.when);
    operation.allowed = Bits(s_.grid.slots, true);
    if (step.is_wet()) limits(b, step, attended, operation);
    if (board.fixed[i]) {
      operation.allowed = Bits(s_.grid.slots);
      const Slot at = s_.grid.not_after(*board.fixed[i]);
      if (at >= s_.begin && at < s_.grid.slots) operation.allowed.set(at);
    } else {
      operation.allowed &= hours_.starts(attended);
      if (hours_.alike()) operation.calendar = 0;
      operation.allowed.clear_before(earliest);
    }
    if (step.is_wet() && !s_.sanding_room) {
      operation.allowed.clear_before(slots_up(done_.settled_s));
    }
    hold(0, {op, search::at_start}, {op, search::at_end}, operation.when);
    hold(first_board_ + static_cast<int>(b), {op, search::at_start}, {op, search::at_end},
         operation.when);
    if (step.is_wet()) film_places(op, s_.boards.size() > 1);
    if (step.dusty && !s_.sanding_room) {
      out_.problem.modes.push_back({0,
                                    1,
                                    {op, search::at_start},
                                    {op, search::at_end},
                                    slots_up(s_.defaults.dust_settles.value * 60.0),
                                    operation.when});
    }
  }

  // A board alone has a stand; several share them.
  void film_places(int op, bool stands) {
    if (stands) hold(1, {op, search::at_start}, event(op, Moment::handle));
    if (!s_.sanding_room) {
      out_.problem.modes.push_back(
          {0, 0, {op, search::at_start}, event(op, Moment::tack_free), 0, {}});
    }
  }

  // Starts that the weather allows, and how tight they are.
  void limits(std::size_t b, const Step& step, Slot attended, Operation& operation) {
    const BoardSetting& board = s_.boards[b];
    const auto& films = s_.films.at(board.resins[u(step.coat)])->at;
    const FilmRules& rules = board.rules[u(step.coat)];
    auto& verdicts = out_.at[b][u(step.coat)];
    verdicts.resize(u(s_.grid.slots));
    operation.allowed = Bits(s_.grid.slots);
    std::array<std::vector<std::uint8_t>, 5> levels;
    for (auto& level : levels) level.assign(u(s_.grid.slots), search::not_tight);
    const auto instant = [&](double seconds) {
      return s_.grid.origin + std::chrono::seconds(std::llround(std::min(seconds, 1e9)));
    };
    for (Slot slot = s_.begin; slot < s_.grid.slots; ++slot) {
      const FilmSpans& film = films[u(slot + attended)];
      const Verdict verdict = board.limits->verdict(
          {s_.grid.at(slot), s_.grid.at(slot + attended), instant(film[Milestone::gel]),
           instant(film[Milestone::tack_free])},
          rules);
      verdicts[u(slot)] = verdict;
      if (verdict.state == State::refuse) continue;
      operation.allowed.set(slot);
      for (std::size_t k = 0; k < levels.size(); ++k) levels[k][u(slot)] = verdict.tightness[k];
    }
    for (auto& level : levels) {
      const bool ever =
          std::any_of(level.begin(), level.end(), [](std::uint8_t l) { return l < 5; });
      if (ever) operation.tightness.push_back({std::move(level)});
    }
  }

  // --- films

  // The film of a step that has been done, as an operation of its own before the first start: so
  // long before that it is a visit of its own.
  void done_film(std::size_t b, std::size_t i, Slot slot) {
    base::promise(slot + slots_up(s_.defaults.visit_gap.value * 60.0) < s_.begin,
                  "there is room for what has been done before the first start");
    const int op = new_op(b, i, true);
    Operation& operation = out_.problem.ops[u(op)];
    operation.attended = Slot{1};
    operation.allowed = Bits(s_.grid.slots);
    operation.allowed.set(slot);
    hold(first_board_ + static_cast<int>(b), {op, search::at_start}, {op, search::at_end});
    film_places(op, s_.boards.size() > 1 && done_.holds_stand[b][i]);
  }

  EventRef event(int op, Moment moment, bool as_latest = false) {
    if (moment == Moment::start && !out_.of[u(op)].done) return {op, search::at_start};
    if (moment == Moment::end && !out_.of[u(op)].done) return {op, search::at_end};
    const auto key = std::make_tuple(op, moment, as_latest);
    const auto known = events_.find(key);
    if (known != events_.end()) return known->second;
    Operation& operation = out_.problem.ops[u(op)];
    const EventRef ref{op, static_cast<int>(operation.events.size())};
    operation.events.push_back({std::string(to_string(moment)), moments(op, moment, as_latest)});
    events_.emplace(key, ref);
    return ref;
  }

  Table moments(int op, Moment moment, bool as_latest) const {
    const OperationOf& of = out_.of[u(op)];
    const BoardSetting& board = s_.boards[u(of.board)];
    const Step& step = board.steps.steps[u(of.step)];
    Table table{std::vector<Slot>(u(s_.grid.slots))};
    const auto m = milestone(moment);
    const bool latest = as_latest || (m && counts_from_start(*m));
    const auto slots = [&](double s) { return latest ? slots_down(s) : slots_up(s); };
    const auto put = [&](Slot at, Slot value) { table.at[u(at)] = std::max(at, value); };
    if (of.done) {
      const Fact& fact = *board.facts[u(of.step)];
      const double seconds = m ? (*done_.films[u(of.board)][u(of.step)])[*m]
                               : s_.grid.seconds(moment == Moment::end ? fact.end : fact.start);
      for (Slot at = 0; at < s_.grid.slots; ++at) put(at, slots(seconds));
      return table;
    }
    const auto& films = s_.films.at(board.resins[u(step.coat)])->at;
    const Slot shift = counts_from_start(*m) ? 0 : up(step.attended);
    for (Slot at = 0; at < s_.grid.slots; ++at) put(at, slots(films[u(at + shift)][*m]));
    return table;
  }

  // --- between steps

  void add(std::size_t b, const Link& link) {
    const BoardSetting& board = s_.boards[b];
    const int to = out_.op[b][u(link.to)];
    if (to < 0 || out_.of[u(to)].done || absent(b, link.when)) return;
    const int from = out_.op[b][u(link.from)];
    if (from < 0) {
      // Done, but no film: only how long it takes to dry still counts.
      const auto& fact = board.facts[u(link.from)];
      if (fact && link.min && link.moment == Moment::end) {
        const double from_s = s_.grid.seconds(fact->end) + units::in_seconds(*link.min);
        out_.problem.ops[u(to)].allowed.clear_before(slots_up(from_s));
      }
      return;
    }
    if (link.good_film) return good_film(b, link, from, to);
    const EventRef at{to, link.to_end ? search::at_end : search::at_start};
    if (link.min) {
      Lag& lag = out_.problem.lags.emplace_back();
      lag.from = event(from, link.moment);
      lag.to = at;
      lag.min = up(*link.min);
      lag.when = option(b, link.when);
    }
    if (link.max) {
      Lag& lag = out_.problem.lags.emplace_back();
      lag.from = event(from, link.moment, true);
      lag.to = at;
      lag.max = down(*link.max);
      lag.when = option(b, link.when);
      if (link.tight) lag.scale = slots_up(s_.defaults.window_scale.value * 60.0);
    }
  }

  // Where the film was in the notice band nothing may follow under this option.
  void good_film(std::size_t b, const Link& link, int from, int to) {
    const BoardSetting& board = s_.boards[b];
    const auto& verdicts = out_.at[b][u(board.steps.steps[u(link.from)].coat)];
    if (verdicts.empty()) return;  // done: what it was like is not on record
    Table latest{std::vector<Slot>(u(s_.grid.slots), far_off)};
    bool ever = false;
    for (Slot slot = 0; slot < s_.grid.slots; ++slot) {
      if (verdicts[u(slot)].state != State::notice) continue;
      latest.at[u(slot)] = -1;
      ever = true;
    }
    if (!ever) return;
    Lag& lag = out_.problem.lags.emplace_back();
    lag.from = {from, search::at_start};
    lag.to = {to, search::at_start};
    lag.max = std::move(latest);
    lag.when = option(b, link.when);
  }

  // From handle until the next coat a board lies in a rack.
  void racks(std::size_t b) {
    if (!s_.racks) return;
    const BoardSetting& board = s_.boards[b];
    std::vector<int> wets;
    for (std::size_t i = 0; i < board.steps.steps.size(); ++i) {
      if (board.steps.steps[i].is_wet() && out_.op[b][i] >= 0) wets.push_back(out_.op[b][i]);
    }
    for (std::size_t i = 0; i + 1 < wets.size(); ++i) {
      if (out_.of[u(wets[i + 1])].done) continue;
      hold(2, event(wets[i], Moment::handle), {wets[i + 1], search::at_start});
    }
  }

  // --- what is better

  void objective() {
    std::vector<std::vector<int>> sets(s_.boards.size());
    for (std::size_t op = 0; op < out_.of.size(); ++op) {
      sets[u(out_.of[op].board)].push_back(static_cast<int>(op));
    }
    std::erase_if(sets, [](const auto& set) { return set.empty(); });
    const search::LastEnd finish{sets, sets.size() < 2 ? 0 : -1};
    const search::TightCounts slack;
    const search::Visits visits{slots_up(s_.defaults.visit_gap.value * 60.0), sets};
    auto& terms = out_.objective.terms;
    switch (s_.prefer) {
      case Prefer::finish:
        terms = {finish, slack, visits};
        break;
      case Prefer::slack:
        terms = {slack, finish, visits};
        break;
      case Prefer::visits:
        terms = {visits, finish, slack};
        break;
    }
    terms.insert(terms.end(), {search::Sum{}, search::Starts{}, search::Choices{}});
  }

  const Setting& s_;
  AttendedHours hours_;
  DoneWork done_;
  Arranging out_;
  int first_board_ = 0;
  std::map<std::tuple<int, Moment, bool>, EventRef> events_;
};

}  // namespace

Arranging arranging(const Setting& setting) { return Compiler(setting).run(); }

}  // namespace wetout::schedule
