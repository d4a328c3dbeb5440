#include "wetout/resin/warm_box.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::resin {
namespace {

using namespace std::chrono_literals;

constexpr auto box_step = 5min;
// Where Tg holds it back for longer than this, the box stays below its setting.
constexpr auto longest_ramp = 14 * 24h;

// Tg at the end of a step in constant air (the midpoint rule: 5 minutes are a small part of any
// change of Tg).
double further(const Cure& cure, const ConversionCurve& curve, double tau, double kelvin,
               double seconds) {
  const auto at = units::Temperature::kelvin(kelvin);
  const auto speed = [&](double t) {
    return rate_constant(cure.kinetics, at) *
           vitrification_factor(cure.glass, curve.conversion(t), at);
  };
  return tau + seconds * speed(tau + 0.5 * seconds * speed(tau));
}

}  // namespace

base::Result<time::History> in_warm_box(const Cure& cure, const time::History& air_kelvin,
                                        time::Instant start, const WarmBox& box,
                                        const CureDefaults& defaults) {
  if (box.temperature > box.hottest) {
    return base::fail({.code = "box.too_hot",
                       .message = "this core does not take a box that warm",
                       .key = "warm-box",
                       .found = fmt::format("{:.3g} C", box.temperature.in_celsius()),
                       .expected = fmt::format("at most {:.3g} C", box.hottest.in_celsius())});
  }
  const Film film(cure, air_kelvin);
  const auto handle = film.times(start)[Milestone::handle];
  const double after_s = units::in_seconds(box.after);
  if (!handle || !handle->reached || after_s < handle->after_s) {
    const bool comes = handle && handle->reached;
    return base::fail(
        {.code = "box.too_early",
         .message = "a film goes into the warm box when it can be handled, not before",
         .key = "after",
         .found = fmt::format("{:.1f} h after the start", after_s / 3600.0),
         .expected = comes ? fmt::format("at least {:.1f} h", handle->after_s / 3600.0)
                           : "a room in which the film can be handled at all"});
  }
  const time::Instant into = start + std::chrono::seconds(std::llround(after_s));
  const units::Temperature room = units::Temperature::kelvin(air_kelvin.at(into));
  if (box.temperature < room) {
    return base::fail({.code = "box.too_cold",
                       .message = "the box is colder than the room the film comes from",
                       .key = "warm-box",
                       .found = fmt::format("{:.3g} C", box.temperature.in_celsius()),
                       .expected = fmt::format("above the room's {:.3g} C", room.in_celsius())});
  }
  std::vector<time::HistoryPoint> points;
  for (const time::HistoryPoint& point : air_kelvin.points()) {
    if (point.at < into) points.push_back(point);
  }
  const double set = box.temperature.in_kelvin();
  const double step_s = std::chrono::duration<double>(box_step).count();
  const double ramp = defaults.box_ramp.value * step_s / 3600.0;
  const ConversionCurve curve(cure.kinetics.r, cure.kinetics.m, cure.kinetics.n);
  double tau = curve.reduced_time(film.state(start, after_s).conversion);
  double kelvin = air_kelvin.at(into);
  time::Instant at = into;
  points.push_back({at, kelvin});
  while (kelvin != set && at < into + longest_ramp) {
    const double tg = glass_transition(cure.glass, curve.conversion(tau)).in_kelvin();
    const double most = std::max(kelvin, tg + defaults.box_above_tg.value);
    const double next = std::min(std::clamp(set, kelvin - ramp, kelvin + ramp), most);
    tau = further(cure, curve, tau, 0.5 * (kelvin + next), step_s);
    kelvin = next;
    at += box_step;
    points.push_back({at, kelvin});
  }
  return time::History::of(std::move(points));
}

}  // namespace wetout::resin
