#include "stock_shortfall.hpp"

#include <algorithm>

namespace wetout::work {
namespace {

struct OnShelf {
  std::int64_t quantity;
  std::optional<joblog::Date> expires;
};

// What the lots give of `quantity` on that day.
std::int64_t take(std::vector<OnShelf>& lots, std::int64_t quantity, joblog::Date day) {
  std::int64_t taken = 0;
  for (OnShelf& lot : lots) {
    if (lot.expires && std::chrono::sys_days(*lot.expires) < std::chrono::sys_days(day)) continue;
    const std::int64_t part = std::min(lot.quantity, quantity - taken);
    lot.quantity -= part;
    taken += part;
  }
  return taken;
}

joblog::Date day_of(time::Instant at, const time::Zone& zone) {
  return joblog::Date(std::chrono::floor<std::chrono::days>(zone.wall(at)));
}

}  // namespace

Shortfall shortfall(const std::vector<joblog::LotStock>& lots, std::vector<OpenNeed> needs,
                    time::Instant now, const time::Zone& zone) {
  std::vector<OnShelf> shelf;
  std::int64_t owed = 0;
  for (const joblog::LotStock& lot : lots) {
    if (lot.quantity > 0) shelf.push_back({lot.quantity, lot.expires});
    if (lot.quantity < 0) owed -= lot.quantity;
  }
  std::stable_sort(needs.begin(), needs.end(), [](const OpenNeed& a, const OpenNeed& b) {
    if (!a.when || !b.when) return !a.when && b.when;
    return *a.when < *b.when;
  });
  // More than that was there, whatever the log says: nothing is bought for what has been used.
  take(shelf, owed, day_of(now, zone));
  Shortfall out;
  for (const OpenNeed& need : needs) {
    out.planned += need.quantity;
    const time::Instant when = std::max(need.when.value_or(now), now);
    const std::int64_t missing = need.quantity - take(shelf, need.quantity, day_of(when, zone));
    if (missing == 0) continue;
    out.missing += missing;
    if (!out.first) out.first = need;
    if (std::find(out.jobs.begin(), out.jobs.end(), need.job) == out.jobs.end()) {
      out.jobs.push_back(need.job);
    }
  }
  return out;
}

}  // namespace wetout::work
