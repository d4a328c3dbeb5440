#include "wetout/resin/cup.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "wetout/base/check.hpp"

namespace wetout::resin {
namespace {

// Of the film's gel time at the same temperature: no step is longer, however little it warms.
constexpr double most_of_film_gel = 0.005;
// Every part is further than a film at the lower temperature, so every cup gels before that does;
// one whose mean will not fall is followed this many times as long.
constexpr double followed_film_gels = 4.0;
constexpr double steps_grow_by = 1.4;
// Steps are chosen for less than the limit, so that few have to be taken back.
constexpr double aim = 0.85;
// The peak is past when the mean has fallen by this share of its height above the air.
constexpr double past_the_peak = 0.1;

Reactant reactant_of(const CupRun& run) {
  return {ConversionCurve(run.kinetics.r, run.kinetics.m, run.kinetics.n), run.kinetics,
          run.bulk.heat_j_per_kg / run.bulk.heat_capacity_j_per_kg_k};
}

ReactingBody body_of(const CupRun& run, const Reactant& reactant) {
  const Bulk& bulk = run.bulk;
  const double capacity =
      bulk.heat_capacity_j_per_kg_k * units::in_kilograms_per_cubic_metre(bulk.density);
  const double k = bulk.conductivity_w_per_m_k;
  return {reactant,
          from_middle(Shape::cylinder, units::in_metres(run.fill.diameter) / 2.0, run.grid.radial,
                      k, capacity, run.cooling.side),
          across(units::in_metres(run.fill.height), run.grid.axial, k, capacity, run.cooling.base,
                 run.cooling.top),
          run.air, run.resin};
}

class Follower {
 public:
  explicit Follower(const CupRun& run)
      : run_(run),
        reactant_(reactant_of(run)),
        body_(body_of(run, reactant_)),
        gel_(reactant_.curve.reduced_time(run.gel_conversion)),
        film_gel_(gel_ / rate_constant(run.kinetics, std::min(run.air, run.resin))),
        longest_(most_of_film_gel * gel_ /
                 rate_constant(run.kinetics, std::max(run.air, run.resin))) {
    longest_ = std::min(longest_, body_.longest_step_s());
  }

  CupCourse go() {
    CupCourse course;
    course.peak = units::Temperature::kelvin(body_.middle_kelvin());
    course.mean_peak = units::Temperature::kelvin(body_.mean_kelvin());
    double time = 0.0;
    double dt = std::min(longest_, aim * run_.most_kelvin_a_step /
                                       std::max(1e-12, body_.hottest_rate_kelvin_per_s()));
    while (!done(course, time)) {
      const double limit = course.gel ? run_.most_kelvin_after_gel : run_.most_kelvin_a_step;
      const double most = body_.step(dt);
      ++course.steps;
      if (most > limit) {
        body_.undo();
        dt *= std::max(0.2, aim * limit / most);
        continue;
      }
      look_back(course, time, dt);
      time += dt;
      keep_peaks(course, time);
      dt *= std::min(steps_grow_by, aim * limit / std::max(1e-9, most));
      dt = std::min(dt, longest_);
    }
    course.made_kelvin = reactant_.full_rise_kelvin * body_.mean_conversion();
    course.stored_kelvin = body_.stored_kelvin();
    course.lost_kelvin = body_.lost_kelvin();
    return course;
  }

 private:
  double third() const { return run_.usable_share * run_.gel_conversion; }

  bool done(const CupCourse& course, double time) const {
    if (time > followed_film_gels * film_gel_) return true;
    if (run_.pour_after && time <= units::in_seconds(*run_.pour_after)) return false;
    switch (run_.until) {
      case CupUntil::usable:
        return course.risen || course.part_gelled;
      case CupUntil::gel:
        return course.gel.has_value();
      case CupUntil::peak:
        break;
    }
    const double air = run_.air.in_kelvin();
    const double mean_peak = course.mean_peak.in_kelvin() - air;
    return course.gel && body_.mean_kelvin() - air < (1.0 - past_the_peak) * mean_peak &&
           body_.middle_kelvin() < course.peak.in_kelvin();
  }

  void keep_peaks(CupCourse& course, double time) const {
    const units::Temperature middle = units::Temperature::kelvin(body_.middle_kelvin());
    if (middle > course.peak) {
      course.peak = middle;
      course.peak_at = units::seconds(time);
    }
    course.mean_peak = std::max(course.mean_peak, units::Temperature::kelvin(body_.mean_kelvin()));
  }

  // What happened during the step just taken, found by taking it again in part.
  void look_back(CupCourse& course, double time, double dt) {
    const auto rise = [&] { return body_.own_rise_kelvin() - run_.usable_rise_kelvin; };
    const auto part = [&] { return body_.furthest_conversion() - third(); };
    const auto gel = [&] { return body_.furthest_conversion() - run_.gel_conversion; };
    const bool risen = !course.risen && rise() >= 0.0;
    const bool parted = !course.part_gelled && part() >= 0.0;
    const bool gelled = !course.gel && gel() >= 0.0;
    const double pour = run_.pour_after ? units::in_seconds(*run_.pour_after) : -1.0;
    const bool pours = pour >= time && pour < time + dt;
    if (!risen && !parted && !gelled && !pours) return;
    body_.undo();
    if (risen) course.risen = units::seconds(time + crossing(dt, rise));
    if (parted) course.part_gelled = units::seconds(time + crossing(dt, part));
    if (gelled) course.gel = units::seconds(time + crossing(dt, gel));
    if (pours) {
      if (pour > time) body_.step(pour - time);
      course.poured_conversion = body_.mean_conversion();
      course.poured_reduced_time = reactant_.curve.reduced_time(body_.mean_conversion());
      course.poured_temperature = units::Temperature::kelvin(body_.mean_kelvin());
      if (pour > time) body_.undo();
    }
    body_.step(dt);
  }

  // The part of a step of `dt` after which `value` has come up to 0 (Illinois).
  template <class F>
  double crossing(double dt, F&& value) {
    const auto after = [&](double part) {
      body_.step(part);
      const double found = value();
      body_.undo();
      return found;
    };
    double a = 0.0, b = dt;
    double fa = value(), fb = after(dt);
    if (fa >= 0.0) return 0.0;
    const double scale = fb - fa;
    for (int i = 0; i < 20; ++i) {
      const double c = b - fb * (b - a) / (fb - fa);
      const double fc = after(c);
      if (std::abs(fc) < 1e-7 * scale) return c;
      if ((fc < 0.0) == (fb < 0.0)) {
        fa *= 0.5;
      } else {
        a = b;
        fa = fb;
      }
      b = c;
      fb = fc;
    }
    return b;
  }

  const CupRun& run_;
  Reactant reactant_;
  ReactingBody body_;
  double gel_;       // reduced time
  double film_gel_;  // s, at the lower temperature
  double longest_;   // s
};

}  // namespace

Fill fill_of(units::Volume volume, units::Length diameter) {
  const double d = units::in_metres(diameter);
  return {diameter, units::metres(volume.si() / (std::numbers::pi / 4.0 * d * d))};
}

Fill fill_of(units::Volume volume) {
  const units::Length side = units::metres(std::cbrt(4.0 / std::numbers::pi * volume.si()));
  return {side, side};
}

CupCourse follow(const CupRun& run) {
  base::promise(run.fill.height.si() > 0.0 && run.fill.diameter.si() > 0.0,
                "a cup holds something");
  base::promise(run.kinetics.k_per_s > 0.0, "a resin reacts");
  return Follower(run).go();
}

}  // namespace wetout::resin
