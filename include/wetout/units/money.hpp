// Money in whole minor units of one currency (cents for USD).
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace wetout::units {

struct Money {
  std::int64_t minor = 0;
  std::string currency;  ///< three capital letters, ISO 4217

  friend bool operator==(const Money&, const Money&) = default;
};

}  // namespace wetout::units
