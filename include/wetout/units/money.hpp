// Money in whole minor units of one currency (cents for USD).
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace wetout::units {

struct Money {
  std::int64_t minor = 0;
  std::string currency;  ///< three capital letters, ISO 4217

  friend bool operator==(const Money&, const Money&) = default;
};

/// Decimals of a currency (2 for USD, 0 for JPY), nothing when ISO 4217 does not list it.
std::optional<int> minor_digits(std::string_view currency);

}  // namespace wetout::units
