// What holds for every answer of a weather reader, whatever the bytes.
#pragma once

#include "wetout/climate/weather.hpp"

namespace wetout::fuzz {

/// The name that targets give to their bytes.
inline constexpr const char* source_name = "fuzz";

/// Prints the rule and aborts where an answer breaks one; goes on to place(), extended() and the
/// histories, which must take whatever the readers let through.
void check_answer(const base::Result<climate::Weather>& answer);

}  // namespace wetout::fuzz
