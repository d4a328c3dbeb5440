#include "start_windows.hpp"

#include <algorithm>
#include <chrono>
#include <optional>

#include "wetout/base/check.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using report::StartWindow;
using schedule::FilmRules;
using schedule::Limit;
using schedule::OpenFilm;
using schedule::State;
using schedule::Tested;
using schedule::Verdict;

// The limit that closes a start where it is worst, against the bound that gives the state.
struct Beyond {
  Tested tested;
  double guarded = 0.0, bound = 0.0;
  double slack = 0.0;
};

std::optional<Beyond> beyond(const Verdict& verdict, const OpenFilm& film,
                             const schedule::LimitTester& tester, const FilmRules& rules) {
  if (!verdict.limit || *verdict.limit == Limit::weather || *verdict.limit == Limit::foul_air) {
    return std::nullopt;
  }
  const std::vector<Tested> all = tester.details(film, rules);
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Tested& one) { return one.limit == *verdict.limit; });
  base::promise(found != all.end(), "a limit that closes a start is told in detail");
  const bool floor = found->limit == Limit::cold || found->limit == Limit::dew_margin;
  Beyond out{*found, found->bound + (floor ? found->slack : -found->slack), found->bound, 0.0};
  if (verdict.state == State::notice) {
    out.bound = found->limit == Limit::cold ? rules.notice_below->in_celsius()
                                            : rules.humidity_notice.value();
  }
  out.slack = floor ? out.guarded - out.bound : out.bound - out.guarded;
  return out;
}

std::string_view unit_of(Limit limit) {
  if (limit == Limit::cold || limit == Limit::warm) return "C";
  return limit == Limit::humidity ? "share" : "K";
}

report::WorstStart told(const OpenFilm& film, const Beyond& beyond, const time::Zone& zone) {
  return {.start = time::rfc3339(film.start, zone),
          .at = time::rfc3339(beyond.tested.at, zone),
          .value = beyond.tested.value,
          .guarded = beyond.guarded,
          .limit = beyond.bound,
          .unit = std::string(unit_of(beyond.tested.limit)),
          .breaks_at_kelvin = beyond.tested.breaks_at_kelvin};
}

}  // namespace

std::string_view reason_of(const Verdict& verdict, const OpenFilm& film,
                           const schedule::Conditions& conditions) {
  if (!verdict.limit) return "good";
  const bool notice = verdict.state == State::notice;
  switch (*verdict.limit) {
    case Limit::weather:
      if (film.start < conditions.first()) return "weather begins later";
      return film.tack_free > conditions.last() ? "weather ends" : report::weather_gap;
    case Limit::foul_air:
      return "unvented heater";
    case Limit::cold:
      return notice ? "cool" : "too cold";
    case Limit::warm:
      return "too warm";
    case Limit::dew_margin:
      return "too near the dew point";
    case Limit::humidity:
      return notice ? "humid" : "too humid";
    case Limit::core_rise:
      return "core warming";
  }
  base::broken_promise("every limit has a reason");
}

std::vector<StartWindow> start_windows(const std::vector<OpenFilm>& films, time::Instant to,
                                       const schedule::LimitTester& tester, const FilmRules& rules,
                                       const time::Zone& zone) {
  std::vector<StartWindow> windows;
  double least_slack = 0.0;
  time::WallTime day;
  for (const OpenFilm& film : films) {
    const Verdict verdict = tester.verdict(film, rules);
    const std::string_view reason = reason_of(verdict, film, tester.conditions());
    const bool goes_on = !windows.empty() && windows.back().ok == verdict.state &&
                         windows.back().limit == verdict.limit && windows.back().reason == reason;
    if (!goes_on) {
      std::string from = time::rfc3339(film.start, zone);
      if (!windows.empty()) windows.back().to = from;
      windows.push_back({.from = std::move(from),
                         .to = {},
                         .ok = verdict.state,
                         .limit = verdict.limit,
                         .reason = std::string(reason),
                         .worst = {}});
    }
    const auto here = beyond(verdict, film, tester, rules);
    if (!here) continue;
    auto& worst = windows.back().worst;
    const time::WallTime today = std::chrono::floor<std::chrono::days>(zone.wall(film.start));
    const bool first_of_day = worst.empty() || today != day;
    if (!first_of_day && here->slack >= least_slack) continue;
    if (!first_of_day) worst.pop_back();
    worst.push_back(told(film, *here, zone));
    least_slack = here->slack;
    day = today;
  }
  if (!windows.empty()) windows.back().to = time::rfc3339(to, zone);
  return windows;
}

}  // namespace wetout::work
