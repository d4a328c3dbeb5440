// What the documents about one resin share.
#pragma once

#include <string>

#include "wetout/resin/product.hpp"

namespace wetout::report {

/// A line that the data sheet, or its copy in the shop file, does not have.
struct MissingLine {
  std::string line;   ///< as the shop file names it: "gel", "pot_life"
  std::string gives;  ///< what is known once it is there, a phrase
};

}  // namespace wetout::report
