// A film in a warm box: its limits, and the air it makes (docs/models/film.md).
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/time/history.hpp"

namespace wetout::resin {

struct WarmBox {
  units::Duration after;           ///< from the film's start
  units::Temperature temperature;  ///< set
  units::Temperature hottest;      ///< that the core takes
};

/// The air around a film that starts at `start` and goes into the box: the room's until then, after
/// that towards the set temperature, no faster than an hour's ramp and never further above Tg than
/// the box may be (its own Tg rises with it).
/// Problems: "box.too_hot" (for the core), "box.too_early" (the film cannot be handled yet),
/// "box.too_cold" (colder than the room).
base::Result<time::History> in_warm_box(const Cure& cure, const time::History& air_kelvin,
                                        time::Instant start, const WarmBox& box,
                                        const CureDefaults& defaults);

}  // namespace wetout::resin
