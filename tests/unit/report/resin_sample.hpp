// Documents about one resin to print: numbers of the right size, nothing here is a model's answer.
#pragma once

#include "wetout/report/cure_document.hpp"
#include "wetout/report/potlife_document.hpp"

namespace wetout::report::sample {

/// 200 g in a cup, with a table, a batch poured out, a wish for a batch.
PotLifeDocument potlife();
PotLifeDocument potlife_of_polyester();

/// Started by the clock, in weather that ends before full cure; sandable is not reached.
CureDocument cure();
CureDocument cure_of_polyester();

}  // namespace wetout::report::sample
