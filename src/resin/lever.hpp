// The one lever by which a pot life is met: speed of the start and heat together, so that no film
// time moves.
#pragma once

#include "wetout/resin/calibrate.hpp"

namespace wetout::resin {

inline constexpr double lever_end = 2.0;

/// Sets r, heat and k for a position of the lever; the film's gel time stays.
void pull(Cure& cure, double lever, double heat_j_per_kg, double film_gel_s,
          const Defaults& defaults);

struct LeverGoal {
  units::Mass mass;
  units::Temperature air;
  units::Duration time;
  PotLifeMeans means = PotLifeMeans::gel;
};

/// The time the goal speaks of, with the cure as it stands.
double cup_time_s(const Cure& cure, const LeverGoal& goal, AnswerCache* cache);

struct LeverFound {
  double shortest_s, longest_s;  ///< at the ends of the lever
};
/// Pulls until the cup's time is met to a thousandth, or to the nearer end.
LeverFound fit_lever(Cure& cure, const LeverGoal& goal, double heat_j_per_kg, double film_gel_s,
                     const Defaults& defaults, AnswerCache* cache);

/// The film's gel time with which the cup's time is met, the lever in the middle, in seconds.
double film_gel_for(Cure cure, const LeverGoal& goal, double heat_j_per_kg,
                    const Defaults& defaults, AnswerCache* cache);

}  // namespace wetout::resin
