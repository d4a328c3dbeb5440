// What can be said of a polyester's pot life: the gel of a film by its dose of catalyst.
#pragma once

#include "potlife_answer.hpp"

namespace wetout::work {

/// Adds doses, notices and assumptions. Problems: those of resin::polyester_gel().
base::Result<void> polyester_films(const resin::Product& product, const PotLifeRequest& request,
                                   units::Temperature air, units::Temperature resin_temp,
                                   const resin::Defaults& defaults,
                                   report::PotLifeDocument& document);

}  // namespace wetout::work
