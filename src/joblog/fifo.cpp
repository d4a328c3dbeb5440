#include "joblog/fifo.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

#include "wetout/base/check.hpp"

namespace wetout::joblog {
namespace {

// A product of two quantities does not fit 64 bits.
__extension__ typedef __int128 Wide;

// Far above what a line may hold, and still to be added up.
constexpr std::int64_t beyond = 1'000 * most_of_a_line;

// a × b / c, ties to even, at most `beyond`; nothing is negative, c is above zero.
std::int64_t scaled(std::int64_t a, std::int64_t b, std::int64_t c) {
  const Wide product = static_cast<Wide>(a) * b;
  const Wide twice_rest = product % c * 2;
  Wide quotient = product / c;
  if (twice_rest > c || (twice_rest == c && quotient % 2 == 1)) ++quotient;
  return static_cast<std::int64_t>(std::min<Wide>(quotient, beyond));
}

}  // namespace

std::int64_t cost_of_taking(const LotBalance& lot, std::int64_t quantity) {
  if (lot.basis_quantity <= 0) return 0;
  const std::int64_t taken = lot.basis_quantity - lot.quantity;
  const std::int64_t paid = lot.basis_minor - lot.minor;
  base::promise(quantity > 0 && taken >= 0 && lot.basis_minor >= 0, "a taking is from a lot");
  // After a taking was undone more may have been paid than is due by now.
  return std::max<std::int64_t>(
      scaled(lot.basis_minor, taken + quantity, lot.basis_quantity) - paid, 0);
}

void apply(LotBalance& lot, Account source, Account target, std::int64_t quantity,
           std::int64_t minor) {
  base::promise(source == Account::stock || target == Account::stock, "goods pass through stock");
  const bool is_coming = target == Account::stock;
  const Account other = is_coming ? source : target;
  lot.quantity += is_coming ? quantity : -quantity;
  lot.minor += is_coming ? minor : -minor;
  // What was taken from an earlier basis may come back to a later one.
  if (other == Account::supplier || other == Account::adjustment ||
      lot.quantity > lot.basis_quantity) {
    lot.basis_quantity = lot.quantity;
    lot.basis_minor = lot.minor;
  }
}

std::int64_t residue(const LotBalance& lot) {
  const bool is_sound = (lot.quantity > 0 && lot.minor >= 0) ||
                        (lot.quantity < 0 && lot.minor <= 0) || lot.minor == 0;
  return is_sound ? 0 : lot.minor;
}

std::vector<std::int64_t> split_price(std::int64_t minor,
                                      const std::vector<std::int64_t>& weights) {
  Wide sum = 0;
  for (const std::int64_t weight : weights) {
    base::promise(weight >= 0, "a weight is not negative");
    sum += weight;
  }
  base::promise(minor >= 0 && sum > 0, "a price is split over something");
  std::vector<std::int64_t> shares;
  std::vector<Wide> remainders;
  std::int64_t left = minor;
  for (const std::int64_t weight : weights) {
    const Wide product = static_cast<Wide>(minor) * weight;
    shares.push_back(static_cast<std::int64_t>(product / sum));
    remainders.push_back(product % sum);
    left -= shares.back();
  }
  std::vector<std::size_t> order(weights.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return remainders[a] > remainders[b]; });
  for (std::int64_t i = 0; i < left; ++i) ++shares[order[static_cast<std::size_t>(i)]];
  return shares;
}

}  // namespace wetout::joblog
