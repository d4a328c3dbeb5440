// From scanned parts to one SI value.
#pragma once

#include <string_view>

#include "fault.hpp"
#include "scan.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::units {

/// Sum of the parts in SI; every part must be of `ask.kind`, each a whole number of a larger unit
/// than the next ("6 ft 2.5 in").
base::Result<double> combine(const Scanned& scanned, std::string_view typed, const Ask& ask);

/// The same for kinds that are never written in parts ("4 oz/yd2", "22 C").
base::Result<Term> only_term(const Scanned& scanned, std::string_view typed, const Ask& ask);

}  // namespace wetout::units
