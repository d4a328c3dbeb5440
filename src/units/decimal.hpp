// Decimal text for the printers.
#pragma once

#include <string>

namespace wetout::units {

/// Exactly `decimals` digits after the point ("8.0"), never "-0.0".
std::string fixed(double value, int decimals);

/// True from where digits after the point, or whole steps, can no longer be told apart.
bool beyond_digits(double value);

}  // namespace wetout::units
