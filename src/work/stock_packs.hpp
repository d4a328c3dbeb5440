// Whole packs that hold at least what is needed, as cheap as can be.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace wetout::work {

struct PackSize {
  std::int64_t holds = 0;                  ///< above zero
  std::optional<std::int64_t> minor = {};  ///< its price, not negative
};

struct PacksToBuy {
  std::vector<std::int64_t> counts = {};  ///< one for each size
  std::int64_t holds = 0;                 ///< all of them together
  std::optional<std::int64_t> minor = {};
  bool proved = true;  ///< false where the search was given up and a better one may exist
  friend bool operator==(const PacksToBuy&, const PacksToBuy&) = default;
};

/// The cheapest packs; of equally cheap ones those that hold the least above the need, then the
/// fewest. Sizes without a price are left out where any has one. Where none has, the fewest packs;
/// of equally few those that hold the least, without a price. Nothing where there is no size, or
/// more would be needed than makes sense. `need` is above zero.
std::optional<PacksToBuy> packs_to_buy(std::int64_t need, const std::vector<PackSize>& sizes);

}  // namespace wetout::work
