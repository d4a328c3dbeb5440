#include <algorithm>
#include <array>
#include <chrono>

#include "schedule_sample_parts.hpp"

namespace wetout::report::sample {
namespace {

using schedule::Limit;
using schedule::State;
using std::chrono::hours;
using std::chrono::minutes;
using time::Instant;
using units::TempDelta;
using units::Temperature;

void add_weather(ScheduleDocument& document) {
  ScheduleWeather& weather = document.weather;
  weather.source = "forecast.csv";
  weather.sha256.assign(64, 'a');
  weather.place = "a shed by the sea";
  weather.known_until = text(june(27, 0));
  weather.guard = {climate::Guard::normal, text(june(13, 0)), TempDelta::kelvin(0.65),
                   TempDelta::kelvin(2.5)};
  weather.room = {climate::RoomKind::unheated, units::hours(2.5), {}, {}, {}};
  for (Instant at = june(13, 0); at <= june(28, 0); at += hours(1)) {
    weather.series.push_back({text(at), Temperature::celsius(room_at(at + hours(2)) - 0.5),
                              Temperature::celsius(dew_point_c), Temperature::celsius(room_at(at)),
                              Temperature::celsius(dew_point_c)});
  }
}

}  // namespace

void add_hours(ScheduleDocument& document, const std::string& id, int evening_from) {
  ScheduleCalendar calendar{id, {}};
  const auto add = [&](int day, int from, int from_min, int to, int to_min) {
    const Instant begin = std::max(june(day, from, from_min), june(13, 13, 40));
    if (begin < june(day, to, to_min)) {
      calendar.spans.push_back({text(begin), text(june(day, to, to_min))});
    }
  };
  for (int week = 13; week < 27; week += 7) {
    add(week, 8, 0, 12, 30);
    add(week, 14, 0, 19, 0);
    for (const int day : {2, 4, 6}) add(week + day, evening_from, 0, 22, 0);
  }
  document.calendars.push_back(std::move(calendar));
  document.resources.push_back({id, "person", 1, id});
}

ScheduleResin schedule_resin(const Curing& cure, const char* name, bool polyester) {
  ScheduleResin resin;
  resin.id = cure.resin;
  resin.name = name;
  resin.energy_kj_mol = 55.0;
  const Temperature at = Temperature::celsius(22);
  resin.milestones = {{"gel", at, units::hours(cure.gel)},
                      {"tack_free", at, units::hours(cure.tack_free)},
                      {"recoat_until", at, units::hours(cure.recoat_until)},
                      {"sandable", at, units::hours(cure.sandable)}};
  if (polyester) {
    resin.gel = {{Temperature::celsius(20), units::minutes(18)},
                 {Temperature::celsius(25), units::minutes(12.5)}};
    return resin;
  }
  resin.recoat_longest = units::hours(72);
  resin.film = FilmConstants{.k_per_s = 1.234e-4,
                             .r = 0.1,
                             .m = 0.6,
                             .n = 1.5,
                             .reference = Temperature::celsius(25),
                             .gel_conversion = 0.57735,
                             .tg_uncured = Temperature::celsius(-50),
                             .tg_cured = Temperature::celsius(64),
                             .lambda = 0.37,
                             .delay_kelvin = 10,
                             .width_kelvin = 4,
                             .trim_below_kelvin = 10,
                             .sandable_above_kelvin = 5,
                             .full_cure_tg = Temperature::celsius(52.5),
                             .patience = 3};
  return resin;
}

ScheduleDocument schedule_header() {
  ScheduleDocument document;
  document.program = "wetout 0.1.0";
  document.made = text(june(15, 17, 20));
  document.number = 4;
  document.saved = true;
  document.prefer = "finish";
  document.horizon = {text(june(13, 13, 40)), text(june(27, 0)), units::minutes(5)};
  add_weather(document);
  document.resins = {schedule_resin(slow, "Kelp epoxy with slow hardener", false),
                     schedule_resin(quick, "Kelp epoxy with quick hardener", false)};
  document.resources = {{"stand", "stand", 2, {}}};
  document.assumptions = {
      {"limit.dew_margin", 3, "K", "practice", "surface above dew point", {"every film"}},
      {"step.spackle_dries", 4, "h", "assumed", "our choice", {"pico-5-4/spackle"}},
      {"guard.per_day", 0.25, "K", "assumed", "error of a forecast", {"guard"}}};
  document.cautions = {
      {"all", "Safety data sheets, local rules and licensed practice come first."},
      {"all",
       "Nitrile gloves, sleeves, eye protection, fresh air: uncured epoxy burns and can "
       "sensitise for life. Never solvent on skin: wipe, then soap and water."},
      {"bottom-hotcoat",
       "Sand only when cured: dust of partly cured epoxy sensitises. Dust mask (P2, N95 or "
       "better), extraction or wet sanding, eyes covered."},
      {"deck-hotcoat",
       "Sand only when cured: dust of partly cured epoxy sensitises. Dust mask (P2, N95 or "
       "better), extraction or wet sanding, eyes covered."},
      {"twin-boxes", "A filled hole is a small cup: it heats. Fill deep gaps in two goes."}};
  return document;
}

void add_windows(ScheduleDocument& document, const std::string& job) {
  struct Coat {
    const char* id;
    Instant ready;
    const char* before;
  };
  const std::array<Coat, 4> coats = {
      Coat{"bottom-lam", june(13, 14), ""},
      Coat{"deck-lam", june(17, 18, 50), "before bottom lam can be scuffed"},
      Coat{"twin-boxes", june(19, 17, 45), "before the board can be turned"},
      Coat{"bottom-hotcoat", june(20, 14, 50), "before deck lam can be scuffed"}};
  for (const Coat& coat : coats) {
    Instant at = june(13, 13, 40);
    const auto add = [&](Instant to, State ok, std::optional<std::string> limit,
                         const char* reason) {
      if (to <= at) return;
      document.windows.push_back(
          {job, coat.id, "wet", text(at), text(to), ok, std::move(limit), reason});
      at = to;
    };
    add(coat.ready, State::refuse, "order", coat.before);
    for (int day = 13; day < 27; ++day) {
      for (const TimeSpan& span : document.calendars.front().spans) {
        const Instant evening = june(day, 20, 40), late = june(day, 21, 10);
        if (span.to.substr(0, 10) != text(june(day, 0)).substr(0, 10)) continue;
        const int from = std::stoi(span.from.substr(11, 2)), to = std::stoi(span.to.substr(11, 2));
        if (june(day, to) <= at) continue;
        add(june(day, from), State::refuse, "hours", "outside working hours");
        if (from < 12) {
          add(june(day, 11), State::refuse, "core_rise", "core warming");
        } else if (to == 22 && day % 3 == 0) {
          add(june(day, from + 1), State::refuse, "humidity", "too humid");
          add(late, State::good, {}, "good");
        } else if (to == 22 && day % 3 == 1) {
          add(evening, State::good, {}, "good");
          add(june(day, 22), State::refuse, "dew_margin", "too near the dew point");
        } else {
          add(june(day, to - 1), State::good, {}, "good");
          add(june(day, to), State::notice, "humidity", "humid");
        }
      }
    }
    add(june(27, 0), State::refuse, "later", "too late for what comes after");
  }
}

}  // namespace wetout::report::sample
