#include "lever.hpp"

#include <cmath>

#include "root.hpp"
#include "wetout/base/check.hpp"

namespace wetout::resin {
namespace {

constexpr double met = 1e-3;  // in the logarithm of the time

}  // namespace

void pull(Cure& cure, double lever, double heat_j_per_kg, double film_gel_s,
          const Defaults& defaults) {
  Kinetics& kinetics = cure.kinetics;
  cure.lever = lever;
  kinetics.r =
      defaults.cure.start_rate.value * std::pow(defaults.cure.lever_start_rate.value, lever);
  cure.bulk.heat_j_per_kg = heat_j_per_kg * std::exp(defaults.cure.lever_heat.value * lever);
  kinetics.reference = cure.sheet_air;
  kinetics.k_per_s =
      ConversionCurve(kinetics.r, kinetics.m, kinetics.n).reduced_time(cure.gel_conversion) /
      film_gel_s;
}

double cup_time_s(const Cure& cure, const LeverGoal& goal, AnswerCache* cache) {
  CupRun run = cup_run(cure, fill_of(goal.mass / cure.bulk.density), goal.air, goal.air);
  run.grid = coarse_grid;
  run.until = goal.means == PotLifeMeans::gel ? CupUntil::gel : CupUntil::usable;
  const CupCourse course = follow(run, cache);
  const auto time = goal.means == PotLifeMeans::gel ? course.gel : usable(course);
  base::promise(time.has_value(), "every cup gels before a film does");
  return units::in_seconds(*time);
}

LeverFound fit_lever(Cure& cure, const LeverGoal& goal, double heat_j_per_kg, double film_gel_s,
                     const Defaults& defaults, AnswerCache* cache) {
  const double wanted = std::log(units::in_seconds(goal.time));
  const auto miss = [&](double lever) {
    pull(cure, lever, heat_j_per_kg, film_gel_s, defaults);
    return std::log(cup_time_s(cure, goal, cache)) - wanted;
  };
  // The time falls as the lever rises.
  const double long_end = miss(-lever_end);
  const double short_end = miss(lever_end);
  if (long_end <= 0.0) {
    pull(cure, -lever_end, heat_j_per_kg, film_gel_s, defaults);
  } else if (short_end >= 0.0) {
    pull(cure, lever_end, heat_j_per_kg, film_gel_s, defaults);
  } else {
    const double lever = root(-lever_end, long_end, lever_end, short_end, met, miss);
    pull(cure, lever, heat_j_per_kg, film_gel_s, defaults);
  }
  return {std::exp(short_end + wanted), std::exp(long_end + wanted)};
}

double film_gel_for(Cure cure, const LeverGoal& goal, double heat_j_per_kg,
                    const Defaults& defaults, AnswerCache* cache) {
  const double wanted = std::log(units::in_seconds(goal.time));
  const auto miss = [&](double log_times) {
    pull(cure, 0.0, heat_j_per_kg, std::exp(wanted + log_times), defaults);
    return std::log(cup_time_s(cure, goal, cache)) - wanted;
  };
  // A cup never lasts longer than a film, and a large one not less than a fiftieth of it.
  const double low = 0.0, high = std::log(50.0);
  return std::exp(wanted + root(low, miss(low), high, miss(high), met, miss));
}

}  // namespace wetout::resin
