#include "wetout/schedule/limits.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <mutex>
#include <utility>

#include "extremes.hpp"
#include "wetout/climate/humid_air.hpp"

namespace wetout::schedule {
namespace {

using time::History;
using time::HistoryPoint;
using time::Instant;
using units::TempDelta;
using units::Temperature;

constexpr double celsius_zero_k = 273.15;
// Films are worked out in no other air, whatever a sheet prints.
constexpr Temperature coldest_worked_out = Temperature::celsius(0);
constexpr Temperature warmest_worked_out = Temperature::celsius(40);
constexpr std::uint8_t not_tight = 5;
// Of the arithmetic of histories; a limit that is met exactly holds.
constexpr double reach = 1e-9;

// f of two courses at every instant where either has a point.
template <class F>
History combined(const History& a, const History& b, F f) {
  std::vector<Instant> instants;
  for (const HistoryPoint& p : a.points()) instants.push_back(p.at);
  for (const HistoryPoint& p : b.points()) instants.push_back(p.at);
  std::sort(instants.begin(), instants.end());
  instants.erase(std::unique(instants.begin(), instants.end()), instants.end());
  std::vector<HistoryPoint> points;
  points.reserve(instants.size());
  std::size_t i = 0, j = 0;
  const auto value = [](const History& h, std::size_t& place, Instant at) {
    const auto known = h.points();
    while (place + 1 < known.size() && known[place + 1].at <= at) ++place;
    if (at <= known[place].at || place + 1 == known.size()) return known[place].value;
    const HistoryPoint &p = known[place], &q = known[place + 1];
    const double share =
        static_cast<double>((at - p.at).count()) / static_cast<double>((q.at - p.at).count());
    return p.value + share * (q.value - p.value);
  };
  for (const Instant at : instants) points.push_back({at, f(value(a, i, at), value(b, j, at))});
  return *History::of(std::move(points));
}

double share_of(double air_kelvin, double dew_point_kelvin) {
  return climate::relative_humidity(Temperature::kelvin(air_kelvin),
                                    Temperature::kelvin(dew_point_kelvin));
}

bool meets(const std::vector<climate::Gap>& gaps, Instant from, Instant until) {
  return std::any_of(gaps.begin(), gaps.end(),
                     [&](const climate::Gap& gap) { return gap.from < until && gap.until > from; });
}

std::uint8_t tightness(double slack, double scale) {
  const double level = std::floor(10.0 * slack / scale + reach);
  return static_cast<std::uint8_t>(std::clamp(level, 0.0, static_cast<double>(not_tight)));
}

}  // namespace

std::string_view to_string(Limit limit) {
  constexpr std::array<std::string_view, limit_count> words = {
      "weather", "foul_air", "cold", "warm", "dew_margin", "humidity", "core_rise"};
  return words[static_cast<std::size_t>(limit)];
}

std::string_view to_string(State state) {
  constexpr std::array<std::string_view, 3> words = {"good", "notice", "refuse"};
  return words[static_cast<std::size_t>(state)];
}

FilmRules rules_for(const resin::Product& product, climate::FoamKind foam, bool sealed,
                    const LimitDefaults& defaults) {
  FilmRules rules;
  rules.lowest =
      std::max(product.lowest_air.value_or(defaults.cold_refuse.value), coldest_worked_out);
  rules.highest = std::min(product.highest_air.value_or(warmest_worked_out), warmest_worked_out);
  // What is washed off is an amine's blush: a polyester has none.
  const bool blushes = product.chemistry == resin::Chemistry::epoxy;
  if (!product.lowest_air && blushes) rules.notice_below = defaults.cold_notice.value;
  rules.humidity_most = product.humidity_limit.value_or(defaults.humidity_refuse.value);
  if (!product.humidity_limit && blushes) rules.humidity_notice = defaults.humidity_notice.value;
  rules.margin_least = defaults.dew_margin.value;
  rules.core_rise_most = sealed                           ? defaults.core_rise_sealed.value
                         : foam == climate::FoamKind::xps ? defaults.core_rise_xps.value
                                                          : defaults.core_rise.value;
  return rules;
}

struct LimitTester::Ground {
  explicit Ground(Conditions c)
      : conditions(std::move(c)),
        cold(conditions.cold_air, Extremes::Kind::lowest),
        warm(conditions.warm_air, Extremes::Kind::highest),
        core(conditions.core, Extremes::Kind::highest) {
    if (!conditions.damp_dew_point) return;
    margin.emplace(combined(conditions.cold_surface, *conditions.damp_dew_point,
                            [](double surface, double dew) { return surface - dew; }),
                   Extremes::Kind::lowest);
    humidity.emplace(combined(conditions.cold_air, *conditions.damp_dew_point, share_of),
                     Extremes::Kind::highest);
  }

  Conditions conditions;
  Extremes cold, warm, core;
  std::optional<Extremes> margin, humidity;

  // The forecast as it stands, which only details are told of.
  struct Plain {
    Extremes coldest, warmest;
    std::optional<History> margin = {}, humidity = {};
    std::optional<Extremes> least_margin = {}, dampest = {};
  };
  const Plain& plain() const {
    std::call_once(plain_once_, [this] {
      const Conditions& c = conditions;
      plain_.emplace(Plain{.coldest = {c.air, Extremes::Kind::lowest},
                           .warmest = {c.air, Extremes::Kind::highest}});
      if (!c.dew_point) return;
      const auto above = [](double surface, double dew) { return surface - dew; };
      plain_->margin = combined(climate::surface(c.air, c.core), *c.dew_point, above);
      plain_->humidity = combined(c.air, *c.dew_point, share_of);
      plain_->least_margin.emplace(*plain_->margin, Extremes::Kind::lowest);
      plain_->dampest.emplace(*plain_->humidity, Extremes::Kind::highest);
    });
    return *plain_;
  }

 private:
  mutable std::once_flag plain_once_;
  mutable std::optional<Plain> plain_;
};

LimitTester::LimitTester(Conditions conditions, LimitDefaults defaults)
    : ground_(std::make_shared<const Ground>(std::move(conditions))), defaults_(defaults) {}

const Conditions& LimitTester::conditions() const { return ground_->conditions; }

Verdict LimitTester::verdict(const OpenFilm& film, const FilmRules& rules) const {
  const Ground& g = *ground_;
  const Conditions& c = g.conditions;
  Verdict verdict;
  const auto say = [&](State state, Limit limit) {
    if (state <= verdict.state) return;
    verdict.state = state;
    verdict.limit = limit;
  };
  if (film.start < c.first() || film.tack_free > c.last() ||
      meets(c.gaps, film.start, film.tack_free)) {
    say(State::refuse, Limit::weather);
    return verdict;
  }
  if (c.foul_air) say(State::refuse, Limit::foul_air);
  const auto test = [&](std::size_t i, Limit limit, double slack, double scale,
                        std::optional<double> notice_slack) {
    verdict.tightness[i] = tightness(slack, scale);
    if (slack < -reach) {
      say(State::refuse, limit);
    } else if (notice_slack && *notice_slack < -reach) {
      say(State::notice, limit);
    }
  };
  const auto above = [](double value, const std::optional<Temperature>& bound) {
    return bound ? std::optional(value - bound->in_kelvin()) : std::nullopt;
  };
  const double coldest = g.cold.over(film.start, film.tack_free).value;
  test(0, Limit::cold, coldest - rules.lowest.in_kelvin(),
       defaults_.temperature_scale.value.in_kelvin(), above(coldest, rules.notice_below));
  if (rules.highest) {
    test(1, Limit::warm, rules.highest->in_kelvin() - g.warm.over(film.start, film.tack_free).value,
         defaults_.temperature_scale.value.in_kelvin(), std::nullopt);
  }
  const Instant damp_from =
      film.start -
      std::chrono::seconds(std::llround(units::in_seconds(defaults_.humidity_before.value)));
  if (g.margin && !meets(c.humidity_gaps, damp_from, film.tack_free)) {
    test(2, Limit::dew_margin,
         g.margin->over(film.start, film.tack_free).value - rules.margin_least.in_kelvin(),
         defaults_.margin_scale.value.in_kelvin(), std::nullopt);
    const double damp = g.humidity->over(damp_from, film.tack_free).value;
    test(3, Limit::humidity, rules.humidity_most - damp, defaults_.humidity_scale.value,
         rules.humidity_notice ? std::optional(*rules.humidity_notice - damp) : std::nullopt);
  }
  const double rise = g.core.over(film.wet_out, film.gel).value - g.core.at(film.wet_out);
  test(4, Limit::core_rise, rules.core_rise_most.in_kelvin() - rise,
       defaults_.core_scale.value.in_kelvin(), std::nullopt);
  return verdict;
}

std::vector<Tested> LimitTester::details(const OpenFilm& film, const FilmRules& rules) const {
  const Ground& g = *ground_;
  const Conditions& c = g.conditions;
  std::vector<Tested> all;
  if (verdict(film, rules).limit == Limit::weather) {
    all.push_back({.limit = Limit::weather, .state = State::refuse, .at = film.start});
    return all;
  }
  if (c.foul_air) {
    all.push_back({.limit = Limit::foul_air, .state = State::refuse, .at = film.start});
  }
  const auto add = [&](Tested tested, bool notice) {
    tested.state = tested.slack < -reach ? State::refuse : notice ? State::notice : State::good;
    all.push_back(tested);
  };
  const Ground::Plain& plain = g.plain();

  const Extreme coldest = g.cold.over(film.start, film.tack_free);
  Tested cold{.limit = Limit::cold, .at = coldest.at};
  cold.value = c.air.at(cold.at) - celsius_zero_k;
  cold.bound = rules.lowest.in_celsius();
  cold.slack = coldest.value - rules.lowest.in_kelvin();
  cold.breaks_at_kelvin =
      plain.coldest.over(film.start, film.tack_free).value - rules.lowest.in_kelvin();
  add(cold, rules.notice_below && coldest.value < rules.notice_below->in_kelvin() - reach);

  if (rules.highest) {
    const Extreme warmest = g.warm.over(film.start, film.tack_free);
    Tested warm{.limit = Limit::warm, .at = warmest.at};
    warm.value = c.air.at(warm.at) - celsius_zero_k;
    warm.bound = rules.highest->in_celsius();
    warm.slack = rules.highest->in_kelvin() - warmest.value;
    warm.breaks_at_kelvin =
        rules.highest->in_kelvin() - plain.warmest.over(film.start, film.tack_free).value;
    add(warm, false);
  }

  const Instant damp_from =
      film.start -
      std::chrono::seconds(std::llround(units::in_seconds(defaults_.humidity_before.value)));
  if (g.margin && !meets(c.humidity_gaps, damp_from, film.tack_free)) {
    const Extreme least = g.margin->over(film.start, film.tack_free);
    Tested margin{.limit = Limit::dew_margin, .at = least.at};
    margin.value = plain.margin->at(margin.at);
    margin.bound = rules.margin_least.in_kelvin();
    margin.slack = least.value - margin.bound;
    margin.breaks_at_kelvin =
        plain.least_margin->over(film.start, film.tack_free).value - margin.bound;
    add(margin, false);

    const Extreme dampest = g.humidity->over(damp_from, film.tack_free);
    Tested humidity{.limit = Limit::humidity, .at = dampest.at};
    humidity.value = plain.humidity->at(humidity.at);
    humidity.bound = rules.humidity_most;
    humidity.slack = rules.humidity_most - dampest.value;
    // The air at which the vapour there is comes to the limit.
    const Extreme worst = plain.dampest->over(damp_from, film.tack_free);
    const Temperature air = Temperature::kelvin(c.air.at(worst.at));
    humidity.breaks_at_kelvin =
        (air -
         climate::saturated_at(climate::vapour_pressure_pa(air, worst.value) / rules.humidity_most))
            .in_kelvin();
    add(humidity, rules.humidity_notice && dampest.value > *rules.humidity_notice + reach);
  }

  const Extreme top = g.core.over(film.wet_out, film.gel);
  Tested core{.limit = Limit::core_rise, .at = top.at};
  core.value = top.value - g.core.at(film.wet_out);
  core.bound = rules.core_rise_most.in_kelvin();
  core.slack = core.bound - core.value;
  core.breaks_at_kelvin = core.slack;
  add(core, false);
  return all;
}

}  // namespace wetout::schedule
