// Pours of one batch as a table: what, how much, what the scale then reads.
#pragma once

#include <string>
#include <vector>

#include "wetout/laminate/plan.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

enum class PourTable {
  full,   ///< with the volume in the cup where it is known
  bench,  ///< wide columns, for the card
};

/// Heading and one line for each pour, at most 77 columns.
std::vector<std::string> pour_table(const laminate::Batch& batch, units::System system,
                                    PourTable kind);

}  // namespace wetout::report
