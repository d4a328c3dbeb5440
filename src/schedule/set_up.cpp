#include "wetout/schedule/set_up.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>
#include <utility>

namespace wetout::schedule {
namespace {

using resin::Milestone;
using time::Instant;

// Beyond the weather its last day is repeated for so long: until slow resins are fully cured.
constexpr std::chrono::days repeated{45};
// A coat takes no longer than this.
constexpr Slot longest_wet = 288;

climate::FoamKind kind_of(board::Foam foam) {
  switch (foam) {
    case board::Foam::eps:
      return climate::FoamKind::eps;
    case board::Foam::xps:
      return climate::FoamKind::xps;
    case board::Foam::pu:
      return climate::FoamKind::pu;
  }
  return climate::FoamKind::eps;
}

int count_of(const std::vector<SharedThing>& shared, std::string_view id, int otherwise) {
  const auto found = std::find_if(shared.begin(), shared.end(),
                                  [&](const SharedThing& one) { return one.id == id; });
  return found == shared.end() ? otherwise : found->count;
}

// What was read off in the room up to `now` stands before what the weather says of it.
time::History with_recorded(const time::History& air, const std::vector<time::HistoryPoint>& read,
                            Instant now) {
  std::vector<time::HistoryPoint> points;
  for (const time::HistoryPoint& point : read) {
    if (point.at <= now && (points.empty() || point.at > points.back().at)) points.push_back(point);
  }
  if (points.empty()) return air;
  // Until the weather takes over the last reading holds.
  if (points.back().at < now) points.push_back({now, points.back().value});
  for (const time::HistoryPoint& point : air.points()) {
    if (point.at > points.back().at) points.push_back(point);
  }
  return *time::History::of(std::move(points));
}

std::chrono::seconds whole(units::Duration span) {
  return std::chrono::seconds(std::llround(units::in_seconds(span)));
}

class Builder {
 public:
  Builder(const Asked& asked, const Assumed& assumed, resin::AnswerCache* cache)
      : asked_(asked), assumed_(assumed), cache_(cache) {}

  base::Result<SetUp> build() {
    Setting& s = out_.setting;
    s.defaults = assumed_.steps;
    s.prefer = asked_.prefer;
    s.sanding_room = asked_.room.sanding_room;
    s.stands = count_of(asked_.shared, "stand", 1);
    const int racks = count_of(asked_.shared, "rack", 0);
    if (racks > 0) s.racks = racks;
    s.people = people_of(asked_);
    if (auto problems = boards(); !problems.empty()) return base::fail(std::move(problems));
    hours_beside();
    grid();
    if (auto problems = air(); !problems.empty()) return base::fail(std::move(problems));
    if (auto problems = films(); !problems.empty()) return base::fail(std::move(problems));
    return std::move(out_);
  }

 private:
  base::Problems boards() {
    base::Problems problems;
    for (const BoardAsked& asked : asked_.boards) {
      auto steps = steps_of(asked.work, asked_.shop, assumed_.steps);
      if (!steps) return steps.error();
      BoardSetting board;
      board.job = asked.work.job;
      board.steps = std::move(*steps);
      if (asked_.boards.size() > 1) one_stand(board.steps);
      auto wrong = put_facts(board, asked.facts, asked.fixed, asked_.from);
      problems.insert(problems.end(), wrong.begin(), wrong.end());
      for (const laminate::CoatSpec& coat : asked.work.coats) board.resins.push_back(coat.resin);
      out_.setting.boards.push_back(std::move(board));
      out_.cores.push_back(core_of(asked.work.plan.board, assumed_.climate));
    }
    return problems;
  }

  // A board stands once, however many of its films are soft. Among several boards that is kept
  // simple: the next coat waits until the board can be handled.
  static void one_stand(BoardSteps& steps) {
    std::vector<int> wets = steps.wets;
    std::sort(wets.begin(), wets.end());
    for (std::size_t i = 0; i + 1 < wets.size(); ++i) {
      steps.links.push_back(
          {.from = wets[i], .moment = Moment::handle, .to = wets[i + 1], .min = units::Duration{}});
    }
  }

  // Somebody is there for what has a fixed start, and for the looks after a wet that has one or
  // has been done.
  void hours_beside() {
    for (const BoardSetting& board : out_.setting.boards) {
      for (std::size_t i = 0; i < board.steps.steps.size(); ++i) {
        if (!board.fixed[i] && !board.facts[i]) continue;
        const auto attended = whole(board.steps.steps[i].attended);
        const Instant from = board.fixed[i]
                                 ? on_grid_before(*board.fixed[i])
                                 : std::max(asked_.from, on_grid_after(board.facts[i]->end));
        const Instant end = board.fixed[i] ? from + attended : board.facts[i]->end;
        Instant until = end;
        for (const Link& link : board.steps.links) {
          const auto to = static_cast<std::size_t>(link.to);
          const Step& look = board.steps.steps[to];
          if (static_cast<std::size_t>(link.from) != i || !link.max) continue;
          if (look.name.word != StepWord::watch || board.facts[to] || board.passed[to]) continue;
          until = std::max(until, end + whole(*link.max + look.attended));
        }
        until = std::min(until, asked_.until);
        if (from < until) add_span(out_.setting.people.front().spans, {from, until});
      }
    }
  }

  void grid() {
    Setting& s = out_.setting;
    for (const BoardSetting& board : s.boards) {
      s.begin = std::max(s.begin, slots_of_films(board, s.grid, s.defaults));
    }
    s.grid.origin = asked_.from - s.begin * grid_step;
    s.grid.slots = s.grid.not_after(asked_.until) + 1;
  }

  base::Problems air() {
    out_.known_until = asked_.weather.last();
    climate::Weather longer = asked_.weather;
    if (auto more = climate::extended(asked_.weather, asked_.until + repeated)) {
      longer = std::move(more->weather);
    }
    const auto room = climate::RoomAir::of(asked_.room, climate::air_history(longer), std::nullopt,
                                           assumed_.climate);
    if (!room) return room.error();
    const time::History course = room->air_history();
    out_.air_until = course.last();
    out_.setting.air = std::make_shared<const time::History>(
        with_recorded(course, asked_.recorded_air, asked_.from));
    for (std::size_t b = 0; b < asked_.boards.size(); ++b) {
      auto inside = conditions(asked_.weather, asked_.room, out_.cores[b].lag, asked_.guard,
                               asked_.issued, assumed_.climate);
      if (!inside) return inside.error();
      BoardSetting& board = out_.setting.boards[b];
      board.limits = std::make_shared<const LimitTester>(*inside, assumed_.limits);
      out_.conditions.push_back(std::move(*inside));
    }
    return {};
  }

  base::Problems films() {
    std::set<std::string> used;
    for (std::size_t b = 0; b < asked_.boards.size(); ++b) {
      BoardSetting& board = out_.setting.boards[b];
      for (std::size_t c = 0; c < board.resins.size(); ++c) {
        const auto product =
            std::find_if(asked_.shop.resins.begin(), asked_.shop.resins.end(),
                         [&](const resin::Product& p) { return p.id == board.resins[c]; });
        board.rules.push_back(
            rules_for(*product, out_.cores[b].foam, board.steps.sealed[c], assumed_.limits));
        if (!used.insert(product->id).second) continue;
        auto source = FilmSource::of(*product, assumed_.resin, assumed_.steps, cache_);
        if (!source) return source.error();
        const auto& notices = source->notices();
        out_.notices.insert(out_.notices.end(), notices.begin(), notices.end());
        out_.setting.sources[product->id] = std::make_shared<const FilmSource>(std::move(*source));
      }
    }
    Setting& s = out_.setting;
    for (const auto& [resin, source] : s.sources) {
      s.films[resin] = std::make_shared<const FilmTable>(
          film_table(*source, *s.air, s.grid, come_into_question(resin, *source)));
    }
    return {};
  }

  // Where a film of the resin may begin, for some coat of some board: what the weather refuses is
  // never started, and in cold air it would take long to follow. Limits hold until tack-free, which
  // is the clock's. Hours are left out: they are changed later to see what would help.
  std::vector<bool> come_into_question(const std::string& resin, const FilmSource& source) const {
    const Setting& s = out_.setting;
    const auto u = [](auto i) { return static_cast<std::size_t>(i); };
    std::vector<bool> followed(u(s.grid.slots + longest_wet), false);
    const FilmTable clock = film_table(source, *s.air, s.grid, followed);
    const auto instant = [&](double seconds) {
      return s.grid.origin + std::chrono::seconds(std::llround(std::min(seconds, 1e9)));
    };
    for (const BoardSetting& board : s.boards) {
      for (const int wet : board.steps.wets) {
        const Step& step = board.steps.steps[u(wet)];
        if (board.resins[u(step.coat)] != resin || board.facts[u(wet)]) continue;
        const Slot attended = s.grid.not_before(s.grid.origin + whole(step.attended));
        const auto& fixed = board.fixed[u(wet)];
        for (Slot slot = s.begin; slot < s.grid.slots; ++slot) {
          const Slot end = slot + attended;
          const FilmSpans& film = clock.at[u(end)];
          const Verdict verdict =
              board.limits->verdict({s.grid.at(slot), s.grid.at(end), instant(film[Milestone::gel]),
                                     instant(film[Milestone::tack_free])},
                                    board.rules[u(step.coat)]);
          const bool is_fixed = fixed && slot == s.grid.not_after(*fixed);
          if (verdict.state == State::refuse && !is_fixed) continue;
          followed[u(slot)] = true;  // trim and recoat windows count from here
          followed[u(end)] = true;
        }
      }
    }
    return followed;
  }

  const Asked& asked_;
  const Assumed& assumed_;
  resin::AnswerCache* cache_;
  SetUp out_;
};

}  // namespace

CoreOf core_of(const laminate::BoardSummary& board, const climate::ClimateDefaults& defaults) {
  CoreOf core;
  core.foam = kind_of(board.foam);
  core.thickness = units::metres(board.volume.si() / board.planform.si());
  const auto lag = climate::core_lag(core.thickness, climate::usual_foam(core.foam, defaults),
                                     defaults.core_film.value);
  core.lag = lag.value_or(units::Duration{});
  return core;
}

std::vector<PersonSpans> people_of(const Asked& asked) {
  std::vector<PersonSpans> people;
  for (const Person& person : asked.people) {
    people.push_back({person.id, working_spans(person.hours, asked.zone, asked.from, asked.until)});
  }
  return people;
}

base::Result<SetUp> set_up(const Asked& asked, const Assumed& assumed, resin::AnswerCache* cache) {
  return Builder(asked, assumed, cache).build();
}

}  // namespace wetout::schedule
