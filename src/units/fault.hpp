// What a reader asks for, and how it says that it got something else.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "words.hpp"

namespace wetout::units {

struct Ask {
  Kind kind;
  std::string_view wanted;   ///< "a length"
  std::string_view noun;     ///< "length", as in "a unit of length"
  std::string_view example;  ///< correct as it stands
  std::string_view unit;     ///< the two units most people mean
  std::string_view other_unit;
};

const Ask& ask(Kind kind);
/// For readers whose kind alone does not say what they want.
extern const Ask ask_mass_or_volume;
extern const Ask ask_temp_delta;
extern const Ask ask_duration_range;

/// `found` is the whole text as typed. Without a hint of its own the example is repeated as one.
base::Problem fault(std::string code, std::string message, std::string_view found, const Ask& ask,
                    std::string hint);

/// `"x"`, fit for a message.
std::string quoted(std::string_view text);

base::Problem unit_missing(std::string_view number, std::string_view found, const Ask& ask);
base::Problem unit_wrong(const Unit& unit, std::string_view found, const Ask& ask);
base::Problem unit_unknown(const std::vector<std::string>& words, std::string_view found,
                           const Ask& ask);

}  // namespace wetout::units
