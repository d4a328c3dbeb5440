#include "stock_items.hpp"

#include <algorithm>
#include <utility>

#include "stock_open_needs.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using joblog::LotStock;
using joblog::MaterialStock;

bool is_past(const LotStock& lot, const StockShop& shop) {
  return lot.expires &&
         std::chrono::sys_days(*lot.expires) < std::chrono::sys_days(day_of(shop.now, shop.zone));
}

report::StockItem item_of(const joblog::Material& material, const StockShop& shop) {
  report::StockItem item;
  item.material = material.slug;
  item.name = material.name;
  item.value.currency = shop.currency;
  for (report::GoodsAmount* amount : {&item.on_hand, &item.planned, &item.missing, &item.expired}) {
    amount->unit = unit_of(material.unit);
  }
  return item;
}

report::StockItem material_item(const MaterialStock& stock, const StockShop& shop) {
  report::StockItem item = item_of(stock.material, shop);
  item.on_hand.count = stock.quantity;
  item.value.minor = stock.minor;
  std::optional<joblog::Date> next;
  for (const LotStock& lot : stock.lots) {
    if (lot.quantity <= 0 || !lot.expires) continue;
    if (is_past(lot, shop)) {
      item.expired.count += lot.quantity;
    } else if (!next || std::chrono::sys_days(*lot.expires) < std::chrono::sys_days(*next)) {
      next = lot.expires;
    }
  }
  if (next) item.expires = time::print(*next);
  return item;
}

const Good* good_of(const StockShop& shop, const std::string& slug) {
  const auto found = std::find_if(shop.shelved.begin(), shop.shelved.end(),
                                  [&](const Good& good) { return good.material.slug == slug; });
  return found == shop.shelved.end() ? nullptr : &*found;
}

// Something that a plan needs and neither the shop file nor the log has: the plan is of another
// shop file.
Good unheard_of(const OpenNeed& need) {
  return {.material = {need.material, need.material, need.unit}};
}

}  // namespace

std::map<std::string, Shortage> shortages(const StockShop& shop, base::Notices& notices) {
  std::map<std::string, Shortage> all;
  if (!shop.log) return all;
  std::map<std::string, std::vector<OpenNeed>> needs;
  for (OpenNeed& need : open_needs(*shop.log, notices)) {
    const Good* known = good_of(shop, need.material);
    Shortage& shortage = all[need.material];
    shortage.good = known == nullptr ? unheard_of(need) : *known;
    if (shortage.good.any_unit) {
      shortage.good.material.unit = need.unit;
      shortage.good.any_unit = false;
    }
    if (shortage.good.material.unit == need.unit) {
      needs[need.material].push_back(std::move(need));
      continue;
    }
    notices.push_back({.code = "stock.unit",
                       .text = "the plan of " + need.job +
                               " counts it otherwise than stock does, so it is not in what is "
                               "planned",
                       .subject = need.material});
  }
  for (auto& [slug, shortage] : all) {
    const auto found =
        std::find_if(shop.shelf.begin(), shop.shelf.end(),
                     [&, &id = slug](const MaterialStock& one) { return one.material.slug == id; });
    shortage.shortfall =
        shortfall(found == shop.shelf.end() ? std::vector<LotStock>{} : found->lots,
                  std::move(needs[slug]), shop.now, shop.zone);
  }
  return all;
}

std::vector<report::StockItem> material_items(const StockShop& shop, base::Notices& notices) {
  auto missing = shortages(shop, notices);
  std::vector<report::StockItem> items;
  const auto plan = [](report::StockItem& item, const Shortage& shortage) {
    item.planned.count = shortage.shortfall.planned;
    item.missing.count = shortage.shortfall.missing;
  };
  for (const MaterialStock& stock : shop.shelf) {
    report::StockItem item = material_item(stock, shop);
    const auto found = missing.find(stock.material.slug);
    if (found != missing.end()) {
      plan(item, found->second);
      missing.erase(found);
    } else if (stock.quantity == 0 && stock.minor == 0) {
      continue;
    }
    items.push_back(std::move(item));
  }
  for (const auto& [slug, shortage] : missing) {
    report::StockItem item = item_of(shortage.good.material, shop);
    plan(item, shortage);
    items.push_back(std::move(item));
  }
  std::sort(items.begin(), items.end(),
            [](const auto& a, const auto& b) { return a.material < b.material; });
  return items;
}

std::vector<report::StockItem> material_items(const StockShop& shop,
                                              const std::vector<std::string>& slugs,
                                              base::Notices& notices) {
  std::vector<report::StockItem> items = material_items(shop, notices);
  std::erase_if(items, [&](const report::StockItem& item) {
    return std::find(slugs.begin(), slugs.end(), item.material) == slugs.end();
  });
  return items;
}

std::vector<report::StockItem> lot_items(const StockShop& shop, const MaterialStock& stock) {
  std::vector<report::StockItem> items;
  for (const LotStock& lot : stock.lots) {
    report::StockItem item = item_of(stock.material, shop);
    item.lot = lot.label;
    if (!lot.batch.empty()) item.batch = lot.batch;
    item.received = time::print(day_of(lot.received, shop.zone));
    item.on_hand.count = lot.quantity;
    item.value.minor = lot.minor;
    if (lot.expires) item.expires = time::print(*lot.expires);
    if (is_past(lot, shop)) item.expired.count = std::max<std::int64_t>(lot.quantity, 0);
    for (const joblog::LotInJob& board : shop.log->boards_with(stock.material.slug, lot.label)) {
      item.boards.push_back({board.job_slug,
                             board.job_name,
                             amount_of(board.quantity, stock.material.unit),
                             {board.minor, shop.currency}});
    }
    items.push_back(std::move(item));
  }
  return items;
}

}  // namespace wetout::work
