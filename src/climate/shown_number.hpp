// Numbers in messages about numbers that make no sense.
#pragma once

#include <cmath>
#include <string>

#include "wetout/units/print.hpp"

namespace wetout::climate {

inline std::string shown_number(double value, int decimals) {
  return std::isfinite(value) ? units::print_number(value, decimals) : "no number";
}

}  // namespace wetout::climate
