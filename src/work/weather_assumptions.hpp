// Which numbers that nobody gave an answer about weather hangs on.
#pragma once

#include <string>
#include <vector>

#include "weather_answer.hpp"
#include "wetout/laminate/plan.hpp"

namespace wetout::work {

/// The core that is taken where no board is named: EPS, or PU for what would dissolve it.
climate::FoamKind core_foam(const resin::Product& product);

/// `resin`: names of defaults of resins. `humidity`: whether any of it is known.
std::vector<laminate::Assumption> weather_assumptions(const WeatherQuestion& question,
                                                      const WeatherAssumed& assumed, bool humidity,
                                                      const std::vector<std::string>& resin);

}  // namespace wetout::work
