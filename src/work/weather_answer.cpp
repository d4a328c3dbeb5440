#include "weather_answer.hpp"

#include <algorithm>
#include <chrono>
#include <string>
#include <utility>

#include "open_films.hpp"
#include "start_windows.hpp"
#include "weather_assumptions.hpp"
#include "weather_hours.hpp"
#include "wetout/schedule/conditions.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using climate::Weather;
using report::LimitInForce;
using schedule::Limit;
using schedule::State;
using time::Instant;

constexpr std::chrono::minutes step{5};
// What the models are checked for.
constexpr double coldest_checked_c = 10.0, warmest_checked_c = 40.0;

class Asker {
 public:
  Asker(const WeatherQuestion& question, const WeatherAssumed& assumed, resin::AnswerCache* cache)
      : q_(question), assumed_(assumed), cache_(cache) {}

  base::Result<report::WeatherDocument> ask() {
    const units::Duration room_lag = climate::room_lag(q_.room, assumed_.climate);
    const Weather weather = part_of(q_.use.weather, q_.from, q_.to, room_lag);
    const climate::FoamKind foam = core_foam(q_.product);
    const auto core_lag = climate::core_lag(assumed_.work.core_thickness.value,
                                            climate::usual_foam(foam, assumed_.climate),
                                            assumed_.climate.core_film.value);
    if (!core_lag) return tl::unexpected(core_lag.error());
    auto conditions = schedule::conditions(weather, q_.room, *core_lag, q_.guard, q_.use.issued,
                                           assumed_.climate);
    if (!conditions) return tl::unexpected(conditions.error());
    const auto films = open_films(q_.product, conditions->air, starts(),
                                  assumed_.work.wet_out.value, assumed_.resin, cache_);
    if (!films) return tl::unexpected(films.error());

    describe(room_lag, foam, *core_lag);
    out_.series = weather_hours(weather, *conditions, q_.from, q_.to, q_.zone);
    gaps();
    const bool humidity = conditions->dew_point.has_value();
    notices(*conditions, films->notices);
    const schedule::FilmRules rules = schedule::rules_for(q_.product, foam, false, assumed_.limits);
    limits(rules, humidity);
    const schedule::LimitTester tester(std::move(*conditions), assumed_.limits);
    out_.windows = start_windows(films->films, q_.to, tester, rules, q_.zone);
    out_.assumptions = weather_assumptions(q_, assumed_, humidity, films->assumed);
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string told(Instant at) const { return time::rfc3339(at, q_.zone); }

  [[nodiscard]] std::vector<Instant> starts() const {
    std::vector<Instant> all;
    for (Instant at = q_.from; at < q_.to; at += step) all.push_back(at);
    return all;
  }

  void describe(units::Duration room_lag, climate::FoamKind foam, units::Duration core_lag) {
    const Weather& weather = q_.use.weather;
    out_.source = weather.source;
    out_.kind = weather.kind;
    out_.place = weather.place;
    out_.placed = q_.use.placed;
    out_.from = told(q_.from);
    out_.to = told(q_.to);
    out_.hours = std::chrono::duration<double, std::ratio<3600>>(q_.to - q_.from).count();
    out_.resin = q_.product.id;
    out_.name = q_.product.name;
    out_.wet_out = assumed_.work.wet_out.value;
    const auto shift = [&](Instant at) {
      const double lead = std::chrono::duration<double>(at - q_.use.issued).count();
      return climate::guard_shift(q_.guard, units::seconds(lead), assumed_.climate);
    };
    out_.guard = {q_.guard, told(q_.use.issued), shift(q_.from), shift(q_.to)};
    out_.room.kind = q_.room.kind;
    out_.room.lag = room_lag;
    if (q_.room.kind == climate::RoomKind::heated && q_.room.heater) {
      out_.room.minimum = q_.room.heater->minimum;
      out_.room.heater = q_.room.heater->kind;
    }
    if (q_.room.kind != climate::RoomKind::outdoors) out_.room.humidity_max = q_.room.humidity_max;
    out_.core = {foam, assumed_.work.core_thickness.value, core_lag};
  }

  void gaps() {
    const auto add = [&](const std::vector<climate::Gap>& gaps, std::string of) {
      for (const climate::Gap& gap : gaps) {
        const Instant from = std::max(gap.from, q_.from), to = std::min(gap.until, q_.to);
        if (from < to) out_.gaps.push_back({told(from), told(to), of});
      }
    };
    add(q_.use.weather.gaps, "air");
    add(q_.use.weather.humidity_gaps, "humidity");
  }

  void limits(const schedule::FilmRules& rules, bool humidity) {
    using base::Standing;
    const schedule::LimitDefaults& d = assumed_.limits;
    const resin::Product& sheet = q_.product;
    const auto standing = [](bool printed, const auto& value) {
      return printed ? Standing::sheet : value.source.standing;
    };
    const auto add = [&](Limit limit, State gives, std::optional<double> least,
                         std::optional<double> most, std::string unit, Standing stands,
                         std::optional<units::Duration> before = std::nullopt) {
      out_.limits.push_back({limit, gives, least, most, std::move(unit), stands, before});
    };
    add(Limit::cold, State::refuse, rules.lowest.in_celsius(), {}, "C",
        standing(sheet.lowest_air == rules.lowest, d.cold_refuse));
    if (rules.notice_below) {
      add(Limit::cold, State::notice, rules.notice_below->in_celsius(), {}, "C",
          d.cold_notice.source.standing);
    }
    add(Limit::warm, State::refuse, {}, rules.highest->in_celsius(), "C",
        sheet.highest_air == rules.highest ? Standing::sheet : Standing::assumed);
    if (humidity) {
      add(Limit::dew_margin, State::refuse, rules.margin_least.in_kelvin(), {}, "K",
          d.dew_margin.source.standing);
      add(Limit::humidity, State::refuse, {}, rules.humidity_most, "share",
          standing(sheet.humidity_limit.has_value(), d.humidity_refuse), d.humidity_before.value);
      if (rules.humidity_notice) {
        add(Limit::humidity, State::notice, {}, *rules.humidity_notice, "share",
            d.humidity_notice.source.standing, d.humidity_before.value);
      }
    }
    add(Limit::core_rise, State::refuse, {}, rules.core_rise_most.in_kelvin(), "K",
        d.core_rise.source.standing);
  }

  void notices(const schedule::Conditions& conditions, const base::Notices& of_films) {
    out_.notices = q_.use.weather.notices;
    out_.notices.insert(out_.notices.end(), of_films.begin(), of_films.end());
    const auto any = [&](auto member) {
      return std::any_of(
          out_.series.begin(), out_.series.end(),
          [&](const report::WeatherHour& hour) { return (hour.*member).has_value(); });
    };
    if (any(&report::WeatherHour::wind_m_s) || any(&report::WeatherHour::sun_w_m2)) {
      out_.notices.push_back({.code = "weather.not_used",
                              .text = "wind and sun are shown and not used: a board in the sun is "
                                      "warmer than this"});
    }
    double coldest = warmest_checked_c, warmest = coldest_checked_c;
    for (const report::WeatherHour& hour : out_.series) {
      if (!hour.room) continue;
      coldest = std::min(coldest, hour.room->in_celsius());
      warmest = std::max(warmest, hour.room->in_celsius());
    }
    const auto beyond = [&](std::string text, double value, double limit) {
      out_.notices.push_back({.code = "weather.beyond_range",
                              .text = std::move(text),
                              .subject = {},
                              .value = value,
                              .limit = limit,
                              .unit = "C"});
    };
    if (coldest < coldest_checked_c) {
      beyond("the room is colder than the models are checked for", coldest, coldest_checked_c);
    }
    if (warmest > warmest_checked_c) {
      beyond("the room is warmer than the models are checked for", warmest, warmest_checked_c);
    }
    if (conditions.foul_air) {
      out_.notices.push_back({.code = "room.foul_air",
                              .text =
                                  "an unvented heater gives water, carbon dioxide and carbon "
                                  "monoxide to the room: no film is to be open while it burns"});
    }
  }

  const WeatherQuestion& q_;
  const WeatherAssumed& assumed_;
  resin::AnswerCache* cache_;
  report::WeatherDocument out_;
};

}  // namespace

base::Result<report::WeatherDocument> weather_answer(const WeatherQuestion& question,
                                                     const WeatherAssumed& assumed,
                                                     resin::AnswerCache* cache) {
  return Asker(question, assumed, cache).ask();
}

}  // namespace wetout::work
