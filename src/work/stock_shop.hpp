// The shop at whose shelf an action stands: its file, its clock, its goods, the log.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "stock_goods.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/files/shop_file.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/stock_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/work/stock.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct StockShop {
  files::ShopFile file;
  time::Zone zone;
  time::Instant now;
  std::optional<joblog::Log> log;            ///< for reading; nothing where there is none yet
  std::vector<joblog::MaterialStock> shelf;  ///< what the log says is there, by material
  std::vector<Good> goods;    ///< of the shop file, with the units in which the log keeps them
  std::vector<Good> shelved;  ///< those and what only the log knows
  std::string currency;       ///< of the log, else of the shop
};

/// The shop that a job here would use, the log opened for reading.
base::Result<StockShop> stock_shop(const Workshop& workshop);

/// The day of an instant on the shop's calendar.
time::Date day_of(time::Instant at, const time::Zone& zone);
/// Noon of that day; now, if it is today's. Problem "date.future", with the key --on.
base::Result<time::Instant> moment_on(const std::optional<time::Date>& on, const StockShop& shop);

report::GoodsUnit unit_of(joblog::MaterialUnit unit);
report::GoodsAmount amount_of(std::int64_t quantity, joblog::MaterialUnit unit);

/// Program, time, action, currency.
StockAnswer stock_answer(const StockShop& shop, std::string action);

}  // namespace wetout::work
