#include "ledger_shop.hpp"

#include <utility>

#include "job_and_shop.hpp"
#include "stored_plan.hpp"

namespace wetout::work {

base::Result<LedgerShop> ledger_shop(const Workshop& workshop) {
  auto log = open_log(workshop);
  if (!log) return tl::unexpected(log.error());
  std::optional<files::ShopFile> file;
  // Totals can be told without a shop file, but not with one that says it knows better.
  if (const auto path = find_shop(workshop, workshop.here / "x")) {
    auto read = files::read_shop(*path);
    if (!read) return tl::unexpected(read.error());
    file = std::move(*read);
  }
  LedgerShop shop{.log = std::move(*log), .now = {}, .wage = {}, .context = {}};
  time::Zone zone;
  if (file) {
    const auto named = time::Zone::named(file->time_zone);
    if (!named) return tl::unexpected(named.error());
    zone = *named;
    shop.units = file->units;
  }
  const auto now = workshop.now(zone);
  if (!now) return tl::unexpected(now.error());
  shop.now = *now;
  const std::string currency =
      shop.log.currency().value_or(file ? file->shop.currency : std::string());
  if (file && file->labour) {
    shop.other_wage = file->labour->currency != currency;
    if (!shop.other_wage) shop.wage = file->labour;
  }
  shop.context = entry_context(&shop.log, zone, currency);
  return shop;
}

std::optional<units::Money> wages(const LedgerShop& shop, std::int64_t minutes) {
  if (!shop.wage) return std::nullopt;
  constexpr std::int64_t minutes_of_an_hour = 60;
  const std::int64_t product = shop.wage->minor * minutes;
  return units::Money{(product + minutes_of_an_hour / 2) / minutes_of_an_hour, shop.wage->currency};
}

}  // namespace wetout::work
