#include "stock_packs.hpp"

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace wetout::work {
namespace {

// Of any one size; beyond it somebody wrote a pack of a gram.
constexpr std::int64_t most_packs = 1'000'000;
constexpr std::int64_t most_looked_at = 2'000'000;

// A price for so many does not fit 64 bits.
__extension__ typedef __int128 Wide;

struct Size {
  std::int64_t holds;
  std::int64_t price;  // what is made small first
  std::size_t index;
};

// Price, holds, packs: compared in this order.
struct Worth {
  Wide price = 0;
  std::int64_t holds = 0;
  std::int64_t packs = 0;
  friend auto operator<=>(const Worth&, const Worth&) = default;
};

Wide divided_up(Wide a, Wide b) { return (a + b - 1) / b; }

std::int64_t packs_of(std::int64_t need, std::int64_t holds) {
  return static_cast<std::int64_t>(divided_up(need, holds));
}

// Branch and bound over the counts of each size, those that give most for their price first. What
// is left costs at least its share of the best price per unit that is still to come.
class Search {
 public:
  explicit Search(std::vector<Size> sizes) : sizes_(std::move(sizes)) {
    std::sort(sizes_.begin(), sizes_.end(), [](const Size& a, const Size& b) {
      const Wide left = Wide{a.price} * b.holds;
      const Wide right = Wide{b.price} * a.holds;
      return left != right ? left < right : std::tie(b.holds, a.index) < std::tie(a.holds, b.index);
    });
  }

  std::optional<PacksToBuy> run(std::int64_t need, std::size_t all) {
    counts_.assign(sizes_.size(), 0);
    go_on(0, need, {});
    constexpr Wide most_money = std::numeric_limits<std::int64_t>::max();
    if (best_counts_.empty() || best_.price > most_money) return std::nullopt;
    PacksToBuy out;
    out.counts.assign(all, 0);
    for (std::size_t i = 0; i < sizes_.size(); ++i) out.counts[sizes_[i].index] = best_counts_[i];
    out.holds = best_.holds;
    out.minor = static_cast<std::int64_t>(best_.price);
    out.proved = looked_at_ < most_looked_at;
    return out;
  }

 private:
  // The least that can come of a beginning.
  Worth bound(std::size_t size, std::int64_t rest, const Worth& so_far) const {
    const Size& next = sizes_[size];
    std::int64_t largest = 0;
    for (std::size_t i = size; i < sizes_.size(); ++i) largest = std::max(largest, sizes_[i].holds);
    return {so_far.price + divided_up(Wide{rest} * next.price, next.holds), so_far.holds + rest,
            so_far.packs + packs_of(rest, largest)};
  }

  void go_on(std::size_t size, std::int64_t rest, const Worth& so_far) {
    if (rest <= 0) {
      if (best_counts_.empty() || so_far < best_) {
        best_ = so_far;
        best_counts_ = counts_;
      }
      return;
    }
    const Size& one = sizes_[size];
    const std::int64_t most = packs_of(rest, one.holds);
    if (size + 1 == sizes_.size()) {
      if (most <= most_packs) take(size, most, rest, so_far);
      return;
    }
    for (std::int64_t count = std::min(most, most_packs); count >= 0; --count) {
      if (++looked_at_ >= most_looked_at) break;
      const std::int64_t left = rest - count * one.holds;
      if (left > 0 && !best_counts_.empty()) {
        const Worth least = bound(size + 1, left, after(size, count, so_far));
        // Fewer of this size cost no less, for the others give less for their price.
        if (std::tie(least.price, least.holds) > std::tie(best_.price, best_.holds)) break;
        if (least >= best_) continue;
      }
      take(size, count, rest, so_far);
    }
  }

  Worth after(std::size_t size, std::int64_t count, const Worth& so_far) const {
    return {so_far.price + Wide{count} * sizes_[size].price,
            so_far.holds + count * sizes_[size].holds, so_far.packs + count};
  }

  void take(std::size_t size, std::int64_t count, std::int64_t rest, const Worth& so_far) {
    counts_[size] = count;
    go_on(size + 1, rest - count * sizes_[size].holds, after(size, count, so_far));
    counts_[size] = 0;
  }

  std::vector<Size> sizes_;
  std::vector<std::int64_t> counts_, best_counts_;
  Worth best_;
  std::int64_t looked_at_ = 0;
};

}  // namespace

std::optional<PacksToBuy> packs_to_buy(std::int64_t need, const std::vector<PackSize>& sizes) {
  const bool priced =
      std::any_of(sizes.begin(), sizes.end(), [](const PackSize& one) { return one.minor; });
  std::vector<Size> usable;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (priced && !sizes[i].minor) continue;
    // Where nothing is known of prices every pack costs the same.
    usable.push_back({sizes[i].holds, priced ? *sizes[i].minor : 1, i});
  }
  if (usable.empty()) return std::nullopt;
  const auto largest = std::max_element(
      usable.begin(), usable.end(), [](const Size& a, const Size& b) { return a.holds < b.holds; });
  if (packs_of(need, largest->holds) > most_packs) return std::nullopt;
  std::optional<PacksToBuy> out = Search(std::move(usable)).run(need, sizes.size());
  if (out && !priced) out->minor.reset();
  return out;
}

}  // namespace wetout::work
