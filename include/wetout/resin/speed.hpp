// A resin that is faster or slower than its sheet says (docs/models/film.md).
#pragma once

#include <optional>

#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/time/history.hpp"

namespace wetout::resin {

/// The sheet of an epoxy that does everything `speed` times as fast, above 0: times of films are
/// divided by it. The pot life only becomes shorter: a slow film says nothing of a cup, and a cup
/// that goes off early costs more than one that is emptied early. Notes the speed in `speed`.
Product at_speed(Product product, double speed);

/// How fast a film was against its sheet, by when a milestone was seen after `start` (the end of
/// spreading): the age of the sheet's middle over the age that was come to, on the clock of `cure`,
/// made of the same product. Null where the sheet prints no such line, for windows' ends, which
/// nobody sees, and for what was seen no later than the start.
std::optional<double> observed_speed(const Product& product, const Cure& cure,
                                     const time::History& air_kelvin, time::Instant start,
                                     Milestone milestone, time::Instant seen);

}  // namespace wetout::resin
