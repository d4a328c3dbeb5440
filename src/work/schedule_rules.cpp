// What a schedule keeps to, told so that another program can check it.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <utility>

#include "scheduling.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::work {
namespace {

using report::ScheduleDocument;
using report::ScheduleStep;
using schedule::Limit;
using schedule::Moment;
using time::Instant;

units::Temperature kelvin(const time::History& course, Instant at) {
  return units::Temperature::kelvin(course.at(at));
}

void weather(const Scheduling& s, ScheduleDocument& document) {
  const climate::Weather& weather = s.asked.weather;
  const schedule::Conditions& inside = s.set_up.conditions.front();
  report::ScheduleWeather& out = document.weather;
  out.source = weather.source;
  out.kind = weather.kind;
  out.place = weather.place;
  out.known_until = s.told(s.set_up.known_until);
  const auto shift = [&](Instant at) {
    const double lead = std::chrono::duration<double>(at - s.asked.issued).count();
    return climate::guard_shift(s.asked.guard, units::seconds(lead), s.assumed.climate);
  };
  out.guard = {s.asked.guard, s.told(s.asked.issued), shift(s.asked.from), shift(s.asked.until)};
  const climate::Room& room = s.asked.room;
  out.room.kind = room.kind;
  out.room.lag = climate::room_lag(room, s.assumed.climate);
  if (room.kind == climate::RoomKind::heated && room.heater) {
    out.room.minimum = room.heater->minimum;
    out.room.heater = room.heater->kind;
  }
  if (room.kind != climate::RoomKind::outdoors) out.room.humidity_max = room.humidity_max;
  out.sanding_room = room.sanding_room;

  const time::History air = climate::air_history(weather);
  const auto dew_point = climate::dew_point_history(weather);
  std::set<Instant> instants;
  for (const time::HistoryPoint& point : air.points()) instants.insert(point.at);
  if (dew_point) {
    for (const time::HistoryPoint& point : dew_point->points()) instants.insert(point.at);
  }
  for (const Instant at : instants) {
    report::ScheduleAir hour;
    hour.time = s.told(at);
    hour.air = kelvin(air, at);
    hour.room = kelvin(inside.air, at);
    if (dew_point) hour.dew_point = kelvin(*dew_point, at);
    if (inside.dew_point) hour.room_dew_point = kelvin(*inside.dew_point, at);
    out.series.push_back(std::move(hour));
  }
  const auto gaps = [&](const std::vector<climate::Gap>& all, const char* of) {
    for (const climate::Gap& gap : all)
      out.gaps.push_back({s.told(gap.from), s.told(gap.until), of});
  };
  gaps(weather.gaps, "air");
  gaps(weather.humidity_gaps, "humidity");
}

void resins(const Scheduling& s, ScheduleDocument& document) {
  for (const auto& [id, source] : s.setting().sources) {
    report::ScheduleResin out;
    out.id = id;
    out.name = source->product().name;
    if (const auto& fit = source->calibration()) {
      const resin::Cure& cure = fit->cure;
      out.energy_kj_mol = cure.kinetics.energy_j_per_mol * 1e-3;
      for (const resin::Milestone m : resin::milestones) {
        if (cure.ages[m]) {
          out.milestones.push_back({std::string(to_string(m)), cure.sheet_air, *cure.ages[m]});
        }
      }
      if (source->has_window()) out.recoat_longest = cure.recoat_longest;
      out.film = report::FilmConstants{.k_per_s = cure.kinetics.k_per_s,
                                       .r = cure.kinetics.r,
                                       .m = cure.kinetics.m,
                                       .n = cure.kinetics.n,
                                       .reference = cure.kinetics.reference,
                                       .gel_conversion = cure.gel_conversion,
                                       .tg_uncured = cure.glass.uncured,
                                       .tg_cured = cure.glass.cured,
                                       .lambda = cure.glass.lambda,
                                       .delay_kelvin = cure.glass.delay_kelvin,
                                       .width_kelvin = cure.glass.width_kelvin,
                                       .trim_below_kelvin = cure.trim_below_kelvin,
                                       .sandable_above_kelvin = cure.sandable_above_kelvin,
                                       .full_cure_tg = cure.full_cure_tg,
                                       .patience = cure.patience};
    } else {
      // The table as it was read, at temperatures close enough to go straight between.
      constexpr double coldest = 0.0, warmest = 45.0;
      for (double c = coldest; c <= warmest; c += 1.0) {
        const auto at = units::Temperature::celsius(c);
        out.gel.push_back({at, units::seconds(source->gel_s(at))});
      }
      const auto sheet = units::Temperature::celsius(25);
      for (const resin::Milestone m : resin::milestones) {
        if (source->multiples()[m] <= 0.0) continue;
        out.milestones.push_back({std::string(to_string(m)), sheet,
                                  units::seconds(source->multiples()[m] * source->gel_s(sheet))});
      }
      if (source->has_window()) {
        out.recoat_longest = units::hours(s.assumed.resin.cure.recoat_longest.value);
      }
    }
    document.resins.push_back(std::move(out));
  }
}

void shared(const Scheduling& s, ScheduleDocument& document) {
  for (const schedule::PersonSpans& person : s.setting().people) {
    report::ScheduleCalendar& calendar = document.calendars.emplace_back();
    calendar.id = person.id;
    for (const schedule::WorkingSpan& span : person.spans) {
      calendar.spans.push_back({s.told(span.from), s.told(span.until)});
    }
  }
  const auto add = [&](std::string id, std::string kind, int count) {
    document.resources.push_back({std::move(id), std::move(kind), count, std::nullopt});
  };
  add("person", "person", static_cast<int>(s.setting().people.size()));
  add("stand", "stand", s.setting().stands);
  if (s.setting().racks) add("rack", "rack", *s.setting().racks);
  for (const schedule::BoardSetting& board : s.setting().boards) {
    add("board/" + board.job, "board", 1);
  }
}

class Steps {
 public:
  Steps(const Scheduling& s, int b) : s_(s), b_(b), board_(s.board(b)) {}

  void tell(ScheduleDocument& document) const {
    const std::size_t first = document.steps.size();
    for (std::size_t i = 0; i < board_.steps.steps.size(); ++i) {
      if (!board_.passed[i]) document.steps.push_back(step(static_cast<int>(i)));
    }
    for (const schedule::Link& link : board_.steps.links) {
      const std::string to = s_.id(b_, link.to);
      const auto known = [&](const std::string& id) {
        return std::find_if(document.steps.begin() + static_cast<std::ptrdiff_t>(first),
                            document.steps.end(),
                            [&](const ScheduleStep& one) { return one.id == id; });
      };
      const auto at = known(to);
      if (at == document.steps.end() || board_.facts[u(link.to)]) continue;
      if (known(s_.id(b_, link.from)) == document.steps.end()) continue;
      at->after.push_back(after(link));
    }
  }

 private:
  static std::size_t u(int i) { return static_cast<std::size_t>(i); }

  void condition(schedule::When when, std::optional<std::string>& group,
                 std::optional<std::string>& option) const {
    if (when.group < 0) return;
    const schedule::StepGroup& of = board_.steps.groups[u(when.group)];
    group = board_.job + "/" + of.id;
    option = of.options[u(when.option)];
  }

  [[nodiscard]] ScheduleStep step(int i) const {
    const schedule::Step& step = board_.steps.steps[u(i)];
    ScheduleStep out;
    out.id = s_.id(b_, i);
    out.job = board_.job;
    out.step = to_string(schedule::StepName{"", step.name.word, step.name.detail});
    out.title = step.title;
    out.how = step.how;
    out.attended = step.attended;
    out.optional = step.when.group >= 0;
    condition(step.when, out.group, out.option);
    out.resources = {{"person", 1, "end"}, {"board/" + board_.job, 1, "end"}};
    if (step.coat >= 0) {
      const laminate::CoatSpec& coat = s_.asked.boards[u(b_)].work.coats[u(step.coat)];
      out.coat = coat.id;
      out.face = std::string(laminate::to_string(coat.face));
      if (step.is_wet()) {
        out.resin = coat.resin;
        out.resources.push_back({"stand", 1, "handle"});
        limits(board_.rules[u(step.coat)], out);
      }
    }
    if (step.is_wet()) {
      if (!s_.setting().sanding_room) out.room = report::StepRoom{"clean", "tack_free", {}};
      if (s_.setting().racks) rack(i, out);
    } else if (step.dusty && !s_.setting().sanding_room) {
      out.room = report::StepRoom{"dusty", "end",
                                  units::minutes(s_.setting().defaults.dust_settles.value)};
    }
    return out;
  }

  void rack(int i, ScheduleStep& out) const {
    for (std::size_t next = u(i) + 1; next < board_.steps.steps.size(); ++next) {
      if (!board_.steps.steps[next].is_wet()) continue;
      out.resources.push_back({"rack", 1, s_.id(b_, static_cast<int>(next))});
      return;
    }
  }

  void limits(const schedule::FilmRules& rules, ScheduleStep& out) const {
    const auto add = [&](Limit name, std::string unit, std::optional<double> min,
                         std::optional<double> max, const char* from, const char* until,
                         units::Duration before) {
      out.limits.push_back({name, std::move(unit), min, max, from, until, before});
    };
    add(Limit::cold, "C", rules.lowest.in_celsius(), {}, "start", "tack_free", {});
    if (rules.highest) {
      add(Limit::warm, "C", {}, rules.highest->in_celsius(), "start", "tack_free", {});
    }
    if (s_.set_up.conditions[u(b_)].dew_point) {
      add(Limit::dew_margin, "K", rules.margin_least.in_kelvin(), {}, "start", "tack_free", {});
      add(Limit::humidity, "share", {}, rules.humidity_most, "start", "tack_free",
          s_.assumed.limits.humidity_before.value);
    }
    add(Limit::core_rise, "K", {}, rules.core_rise_most.in_kelvin(), "end", "gel", {});
  }

  [[nodiscard]] report::StepAfter after(const schedule::Link& link) const {
    report::StepAfter out;
    out.id = s_.id(b_, link.from);
    out.event = std::string(schedule::to_string(link.moment));
    out.of = link.to_end ? "end" : "start";
    out.min_lag = link.min;
    out.max_lag = link.max;
    out.tight = link.tight;
    out.good_film = link.good_film;
    condition(link.when, out.group, out.option);
    return out;
  }

  const Scheduling& s_;
  int b_;
  const schedule::BoardSetting& board_;
};

}  // namespace

void tell_rules(const Scheduling& s, ScheduleDocument& document) {
  document.horizon = {s.told(s.asked.from), s.told(s.asked.until),
                      units::seconds(static_cast<double>(schedule::grid_step.count()))};
  for (std::size_t b = 0; b < s.setting().boards.size(); ++b) {
    const laminate::Plan& plan = s.asked.boards[b].work.plan;
    report::ScheduledJob& job = document.jobs.emplace_back();
    job.id = s.setting().boards[b].job;
    job.name = plan.board.name;
    job.foam = s.set_up.cores[b].foam;
    job.core_lag = s.set_up.cores[b].lag;
    job.core_at_start = kelvin(s.set_up.conditions[b].core, s.set_up.conditions[b].first());
    Steps(s, static_cast<int>(b)).tell(document);
  }
  weather(s, document);
  resins(s, document);
  shared(s, document);
}

}  // namespace wetout::work
