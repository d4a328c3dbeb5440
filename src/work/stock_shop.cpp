#include "stock_shop.hpp"

#include <algorithm>
#include <utility>

#include "job_and_shop.hpp"
#include "wetout/base/check.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {

base::Result<StockShop> stock_shop(const Workshop& workshop) {
  const auto path = find_shop(workshop, workshop.here / "x");
  if (!path) {
    base::Problems problems = path.error();
    for (base::Problem& problem : problems) {
      problem.message = "there is no shop file, which says what is bought";
      problem.file.clear();
      problem.expected = "shop.toml here or in a folder above";
    }
    return base::fail(std::move(problems));
  }
  auto file = files::read_shop(*path);
  if (!file) return tl::unexpected(file.error());
  StockShop shop;
  shop.file = std::move(*file);
  const auto zone = time::Zone::named(shop.file.time_zone);
  if (!zone) return tl::unexpected(zone.error());
  shop.zone = *zone;
  const auto now = workshop.now(shop.zone);
  if (!now) return tl::unexpected(now.error());
  shop.now = *now;
  shop.currency = shop.file.shop.currency;
  shop.goods = goods_of(shop.file.shop);
  if (joblog::Log::exists(workshop.log)) shop.log = joblog::Log::open(workshop.log);
  if (!shop.log) {
    shop.shelved = shop.goods;
    return shop;
  }
  if (const auto currency = shop.log->currency()) shop.currency = *currency;
  std::vector<Good> others;
  shop.shelf = shop.log->stock();
  for (const joblog::MaterialStock& kept : shop.shelf) {
    const auto good = std::find_if(shop.goods.begin(), shop.goods.end(), [&](const Good& one) {
      return one.material.slug == kept.material.slug;
    });
    if (good == shop.goods.end()) {
      others.push_back({.material = kept.material});
    } else {
      *good = as_kept(std::move(*good), kept.material);
    }
  }
  shop.shelved = shop.goods;
  shop.shelved.insert(shop.shelved.end(), others.begin(), others.end());
  return shop;
}

time::Date day_of(time::Instant at, const time::Zone& zone) {
  return time::Date(std::chrono::floor<std::chrono::days>(zone.wall(at)));
}

base::Result<time::Instant> moment_on(const std::optional<time::Date>& on, const StockShop& shop) {
  const time::Date today = day_of(shop.now, shop.zone);
  if (!on || *on == today) return shop.now;
  if (std::chrono::sys_days(*on) > std::chrono::sys_days(today)) {
    return base::fail({.code = "date.future",
                       .message = "this day is still to come",
                       .key = "--on",
                       .found = time::print(*on),
                       .expected = "a day up to today, " + time::print(today)});
  }
  constexpr std::chrono::hours noon{12};
  return shop.zone.read(std::chrono::local_days(*on) + noon).first;
}

report::GoodsUnit unit_of(joblog::MaterialUnit unit) {
  switch (unit) {
    case joblog::MaterialUnit::milligram:
      return report::GoodsUnit::gram;
    case joblog::MaterialUnit::micrometre:
      return report::GoodsUnit::metre;
    case joblog::MaterialUnit::piece:
      return report::GoodsUnit::piece;
  }
  base::broken_promise("unit of a material outside its list");
}

report::GoodsAmount amount_of(std::int64_t quantity, joblog::MaterialUnit unit) {
  return {quantity, unit_of(unit)};
}

StockAnswer stock_answer(const StockShop& shop, std::string action) {
  StockAnswer answer;
  answer.units = shop.file.units;
  answer.document.program = program();
  answer.document.made = time::rfc3339(shop.now, shop.zone);
  answer.document.action = std::move(action);
  answer.document.currency = shop.currency;
  return answer;
}

}  // namespace wetout::work
