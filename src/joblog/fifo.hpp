// What a taking from a lot costs, to the last minor unit.
#pragma once

#include <cstdint>

#include "wetout/joblog/ledger.hpp"

namespace wetout::joblog {

/// What a lot holds. Cost leaves it in proportion to the goods, of a basis: what it held when goods
/// last came from the supplier or a count found or missed some. So takings from a lot cost together
/// round-half-even(price × taken / received), and the last of it leaves with the last of the price.
struct LotBalance {
  std::int64_t quantity = 0;  ///< on hand; below zero: more was taken than came in
  std::int64_t minor = 0;     ///< what that is worth; has the sign of the quantity, or is zero
  std::int64_t basis_quantity = 0;
  std::int64_t basis_minor = 0;
  friend bool operator==(const LotBalance&, const LotBalance&) = default;
};

/// What the next `quantity` (above zero) taken from the lot costs. More than it holds goes on at
/// the price of the basis, without one at no cost.
std::int64_t cost_of_taking(const LotBalance& lot, std::int64_t quantity);

/// Moves goods and cost to or from the lot. One of the accounts is stock.
void apply(LotBalance& lot, Account source, Account target, std::int64_t quantity,
           std::int64_t minor);

/// The cost that is left of a lot that has come to nothing, or has the wrong sign: what is to go to
/// adjustment (above zero) or come from there (below). Zero as a rule.
std::int64_t residue(const LotBalance& lot);

}  // namespace wetout::joblog
