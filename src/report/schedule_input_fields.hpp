// The keys of what a schedule was worked out from: boards, weather, hours, resins, steps and their
// rules; in the order of docs/formats/schedule.schema.json.
#pragma once

#include <optional>
#include <string_view>
#include <type_traits>

#include "fields.hpp"
#include "numbers.hpp"
#include "schedule_fields.hpp"
#include "wetout/report/schedule_document.hpp"

namespace wetout::report {

namespace as {
/// Fine enough to work a film out again from the air.
struct FineCelsius {
  static constexpr int decimals = 4;
  static double out(units::Temperature t) { return t.in_celsius(); }
  static units::Temperature in(double v) { return units::Temperature::celsius(v); }
};
}  // namespace as

/// A count from 1 that is not known while it is 0.
void visit_count(auto& v, std::string_view key, auto& number) {
  std::optional<int> count;
  if (number != 0) count = number;
  v(key, count);
  if constexpr (!std::is_const_v<std::remove_reference_t<decltype(number)>>) {
    number = count.value_or(0);
  }
}

template <>
struct Fields<ScheduledJob> {
  static void visit(auto& v, auto& job) {
    v("id", job.id);
    v("name", job.name);
    visit_count(v, "revision", job.revision);
    v("foam", job.foam);
    v("core_lag_min", job.core_lag, as::Minutes{});
    v("core_at_start_c", job.core_at_start, as::FineCelsius{});
    v("finish", job.finish);
    v("ride_from", job.ride_from);
  }
};
template <>
struct Fields<Horizon> {
  static void visit(auto& v, auto& horizon) {
    v("from", horizon.from);
    v("until", horizon.until);
    v("step_min", horizon.step, as::Minutes{});
  }
};
template <>
struct Fields<ScheduleAir> {
  static void visit(auto& v, auto& air) {
    v("time", air.time);
    v("air_c", air.air, as::FineCelsius{});
    v("dew_c", air.dew_point, as::FineCelsius{});
    v("room_c", air.room, as::FineCelsius{});
    v("room_dew_c", air.room_dew_point, as::FineCelsius{});
  }
};
template <>
struct Fields<ScheduleWeather> {
  static void visit(auto& v, auto& weather) {
    v("source", weather.source);
    v("sha256", weather.sha256);
    v("kind", weather.kind);
    v("place", weather.place);
    v("placed", weather.placed);
    v("known_until", weather.known_until);
    v("guard", weather.guard);
    v("room", weather.room);
    v("sanding_room", weather.sanding_room);
    v("series", weather.series);
    v("gaps", weather.gaps);
  }
};
template <>
struct Fields<TimeSpan> {
  static void visit(auto& v, auto& span) {
    v("from", span.from);
    v("to", span.to);
  }
};
template <>
struct Fields<ScheduleCalendar> {
  static void visit(auto& v, auto& calendar) {
    v("id", calendar.id);
    v("spans", calendar.spans);
  }
};
template <>
struct Fields<ScheduleResource> {
  static void visit(auto& v, auto& resource) {
    v("id", resource.id);
    v("kind", resource.kind);
    v("count", resource.count);
    v("calendar", resource.calendar);
  }
};
template <>
struct Fields<ClockLine> {
  static void visit(auto& v, auto& line) {
    v("name", line.name);
    v("at_c", line.at, as::FineCelsius{});
    v("hours", line.hours, as::Hours{});
  }
};
template <>
struct Fields<FilmConstants> {
  static void visit(auto& v, auto& film) {
    v("k_per_s", film.k_per_s, as::Plain{});
    v("r", film.r, as::Plain{});
    v("m", film.m, as::Plain{});
    v("n", film.n, as::Plain{});
    v("reference_c", film.reference, as::FineCelsius{});
    v("gel_conversion", film.gel_conversion, as::Plain{});
    v("tg_uncured_c", film.tg_uncured, as::FineCelsius{});
    v("tg_cured_c", film.tg_cured, as::FineCelsius{});
    v("lambda", film.lambda, as::Plain{});
    v("delay_k", film.delay_kelvin, as::Plain{});
    v("width_k", film.width_kelvin, as::Plain{});
    v("trim_below_k", film.trim_below_kelvin, as::Plain{});
    v("sandable_above_k", film.sandable_above_kelvin, as::Plain{});
    v("full_cure_tg_c", film.full_cure_tg, as::FineCelsius{});
    v("patience", film.patience, as::Plain{});
  }
};
template <>
struct Fields<GelLine> {
  static void visit(auto& v, auto& line) {
    v("at_c", line.at, as::FineCelsius{});
    v("gel_min", line.gel, as::Minutes{});
  }
};
template <>
struct Fields<ScheduleResin> {
  static void visit(auto& v, auto& resin) {
    v("id", resin.id);
    v("name", resin.name);
    v("energy_kj_mol", resin.energy_kj_mol, as::Plain{});
    v("milestones", resin.milestones);
    v("recoat_longest_h", resin.recoat_longest, as::Hours{});
    v("film", resin.film);
    v("gel", resin.gel);
  }
};
template <>
struct Fields<StepUse> {
  static void visit(auto& v, auto& use) {
    v("id", use.id);
    v("amount", use.amount);
    v("until", use.until);
  }
};
template <>
struct Fields<StepAfter> {
  static void visit(auto& v, auto& after) {
    v("id", after.id);
    v("event", after.event);
    v("of", after.of);
    v("min_lag_min", after.min_lag, as::Minutes{});
    v("max_lag_min", after.max_lag, as::Minutes{});
    v("group", after.group);
    v("option", after.option);
    v("tight", after.tight);
    v("good_film", after.good_film);
  }
};
template <>
struct Fields<StepLimit> {
  static void visit(auto& v, auto& limit) {
    v("name", limit.name);
    v("unit", limit.unit);
    v("min", limit.min, as::Plain{});
    v("max", limit.max, as::Plain{});
    v("from", limit.from);
    v("until", limit.until);
    v("before_min", limit.before, as::Minutes{});
  }
};
template <>
struct Fields<StepRoom> {
  static void visit(auto& v, auto& room) {
    v("mode", room.mode);
    v("until", room.until);
    v("after_min", room.after, as::Minutes{});
  }
};
template <>
struct Fields<ScheduleStep> {
  static void visit(auto& v, auto& step) {
    v("id", step.id);
    v("job", step.job);
    v("coat", step.coat);
    v("step", step.step);
    v("face", step.face);
    v("resin", step.resin);
    v("title", step.title);
    v("how", step.how);
    v("attended_min", step.attended, as::Minutes{});
    v("optional", step.optional);
    v("group", step.group);
    v("option", step.option);
    v("resources", step.resources);
    v("after", step.after);
    v("limits", step.limits);
    v("room", step.room);
  }
};

}  // namespace wetout::report
