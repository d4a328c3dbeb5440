// From text to numbers and units: "6' 2 1/2\"" -> {6 ft, 2.5 in}.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "fault.hpp"
#include "wetout/base/problem.hpp"
#include "words.hpp"

namespace wetout::units {

struct Term {
  double value = 0.0;
  bool whole = false;  ///< typed as a whole number
  Unit unit;
};

struct Scanned {
  bool negative = false;
  std::vector<Term> terms;  ///< at least one
};

/// The whole of `text`, every number with its unit. Kinds are not checked here.
base::Result<Scanned> scan(std::string_view text, const Ask& ask);

/// True when `text` is one number without sign or unit ("25", "1-1/2", "2.5").
bool is_bare_number(std::string_view text);

}  // namespace wetout::units
