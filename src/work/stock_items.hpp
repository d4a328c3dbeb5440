// The lines of a stock list.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "stock_shop.hpp"
#include "stock_shortfall.hpp"
#include "wetout/base/notice.hpp"

namespace wetout::work {

/// What is short of each material, by its id.
struct Shortage {
  Good good;
  Shortfall shortfall;
};

/// Of every material that boards still need. Needs that are in another unit than the log keeps are
/// left out, with the notice "stock.unit".
std::map<std::string, Shortage> shortages(const StockShop& shop, base::Notices& notices);

/// Materials that are on hand, overdrawn or needed, by id.
std::vector<report::StockItem> material_items(const StockShop& shop, base::Notices& notices);
/// Only these.
std::vector<report::StockItem> material_items(const StockShop& shop,
                                              const std::vector<std::string>& slugs,
                                              base::Notices& notices);

/// One material's lots, with the boards they are in.
std::vector<report::StockItem> lot_items(const StockShop& shop, const joblog::MaterialStock& stock);

}  // namespace wetout::work
