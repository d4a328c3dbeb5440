#include "wetout/work/stock.hpp"

#include <algorithm>
#include <utility>

#include "stock_booking.hpp"
#include "stock_items.hpp"
#include "stock_packs.hpp"
#include "wetout/base/check.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialStock;

// A material by its name and an amount of it, as typed.
struct Meant {
  Good good;
  std::int64_t quantity = 0;
};

base::Result<Meant> meant(const std::vector<Good>& goods, const std::string& material,
                          const std::string& amount, Least least) {
  auto good = good_meant(material, goods);
  if (!good) return tl::unexpected(good.error());
  const auto quantity = read_amount(amount, *good, least);
  if (!quantity) return tl::unexpected(quantity.error());
  return Meant{std::move(*good), *quantity};
}

std::int64_t micrometres(units::Length length) {
  return std::llround(units::in_metres(length) * 1e6);
}

base::Problem other_currency(const units::Money& cost, const std::string& currency) {
  return {.code = "currency.other",
          .message = "--cost: the shop's currency is " + currency,
          .key = "--cost",
          .found = units::print(cost),
          .expected = "an amount in " + currency};
}

std::vector<report::PackLine> pack_lines(const PacksToBuy& bought,
                                         const std::vector<const laminate::Pack*>& packs,
                                         const Good& good) {
  std::vector<report::PackLine> lines;
  for (std::size_t i = 0; i < packs.size(); ++i) {
    if (bought.counts[i] == 0) continue;
    lines.push_back({.size = pack_text(*packs[i]),
                     .holds = amount_of(holds(*packs[i], good).value(), good.material.unit),
                     .count = bought.counts[i],
                     .price = packs[i]->price});
  }
  return lines;
}

report::ReorderLine reorder_line(const Shortage& shortage, const StockShop& shop,
                                 base::Notices& notices) {
  const Good& good = shortage.good;
  const OpenNeed& first = *shortage.shortfall.first;
  report::ReorderLine line;
  line.material = good.material.slug;
  line.name = good.material.name;
  line.missing = amount_of(shortage.shortfall.missing, good.material.unit);
  if (first.when) line.by = time::rfc3339(*first.when, shop.zone);
  line.job = first.job;
  line.coat = first.coat;
  line.jobs = shortage.shortfall.jobs;
  std::vector<const laminate::Pack*> packs;
  std::vector<PackSize> sizes;
  for (const laminate::Pack& pack : good.packs) {
    const auto size = holds(pack, good);
    if (!size || *size <= 0) continue;
    packs.push_back(&pack);
    sizes.push_back({*size, pack.price ? std::optional(pack.price->minor) : std::nullopt});
  }
  const auto bought = packs_to_buy(shortage.shortfall.missing, sizes);
  if (!bought) return line;
  line.packs = pack_lines(*bought, packs, good);
  line.buys = amount_of(bought->holds, good.material.unit);
  if (bought->minor) line.cost = units::Money{*bought->minor, shop.file.shop.currency};
  if (!bought->proved) {
    notices.push_back({.code = "reorder.unproved",
                       .text = "there are too many ways to buy it: a cheaper one may exist",
                       .subject = good.material.slug});
  }
  return line;
}

}  // namespace

base::Result<StockAnswer> list_stock(const Workshop& workshop) {
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  StockAnswer answer = stock_answer(*shop, "list");
  answer.document.items = material_items(*shop, answer.document.notices);
  return answer;
}

base::Result<StockAnswer> list_lots(const Workshop& workshop,
                                    const std::optional<std::string>& material) {
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  StockAnswer answer = stock_answer(*shop, "lots");
  std::vector<MaterialStock> listed = shop->shelf;
  if (material) {
    const auto good = good_meant(*material, shop->shelved);
    if (!good) return tl::unexpected(good.error());
    listed.clear();
    if (shop->log) {
      if (auto all = shop->log->stock_of(good->material.slug, joblog::Lots::all)) {
        listed.push_back(std::move(*all));
      }
    }
  }
  for (const MaterialStock& stock : listed) {
    for (report::StockItem& item : lot_items(*shop, stock)) {
      answer.document.items.push_back(std::move(item));
    }
  }
  return answer;
}

base::Result<StockAnswer> reorder_stock(const Workshop& workshop) {
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  StockAnswer answer = stock_answer(*shop, "reorder");
  report::StockDocument& document = answer.document;
  for (const auto& [slug, shortage] : shortages(*shop, document.notices)) {
    if (shortage.shortfall.missing == 0) continue;
    document.reorder.push_back(reorder_line(shortage, *shop, document.notices));
  }
  // What is needed first is bought first; a board that is begun waits already.
  std::stable_sort(document.reorder.begin(), document.reorder.end(),
                   [](const auto& a, const auto& b) { return a.by < b.by; });
  for (const report::ReorderLine& line : document.reorder) {
    if (!line.cost) continue;
    if (!document.reorder_cost) document.reorder_cost = units::Money{0, line.cost->currency};
    document.reorder_cost->minor += line.cost->minor;
  }
  return answer;
}

base::Result<StockAnswer> receive_stock(const Workshop& workshop, const ReceiveRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  base::Problems problems;
  const auto goods = meant(shop->goods, request.material, request.amount, Least::something);
  if (!goods) problems = goods.error();
  if (request.cost.currency != shop->file.shop.currency) {
    problems.push_back(other_currency(request.cost, shop->file.shop.currency));
  }
  const auto at = moment_on(request.on, *shop);
  if (!at) problems.insert(problems.end(), at.error().begin(), at.error().end());
  if (!problems.empty()) return base::fail(std::move(problems));

  joblog::Received part{.material = goods->good.material,
                        .quantity = goods->quantity,
                        .cost_minor = request.cost.minor,
                        .lot = request.lot.value_or(""),
                        .batch = request.batch.value_or(""),
                        .expires = request.expires,
                        .width_um = std::nullopt};
  if (goods->good.width) part.width_um = micrometres(*goods->good.width);
  joblog::NewReceipt receipt;
  receipt.head = head_of(request.token + "/receive", *at, *shop, request.note);
  receipt.currency = request.cost.currency;
  receipt.parts = {part};
  auto answer = book(workshop, *shop, "receive", {Wanted(receipt)});
  if (answer && request.expires &&
      std::chrono::sys_days(*request.expires) < std::chrono::sys_days(receipt.head.on)) {
    answer->document.notices.push_back({.code = "stock.received_expired",
                                        .text = "it was past its last good day when it came",
                                        .subject = goods->good.material.slug});
  }
  return answer;
}

base::Result<StockAnswer> count_stock(const Workshop& workshop, const CountRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto goods = meant(shop->shelved, request.material, request.amount, Least::nothing);
  if (!goods) return tl::unexpected(goods.error());
  joblog::NewCount count;
  count.head = head_of(request.token + "/count", shop->now, *shop, request.note);
  count.counts = {{goods->good.material, goods->quantity, request.lot.value_or("")}};
  return book(workshop, *shop, "count", {Wanted(count)});
}

base::Result<StockAnswer> waste_stock(const Workshop& workshop, const WasteRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto goods = meant(shop->shelved, request.material, request.amount, Least::something);
  const auto at = moment_on(request.on, *shop);
  base::Problems problems;
  if (!goods) problems = goods.error();
  if (!at) problems.insert(problems.end(), at.error().begin(), at.error().end());
  if (!problems.empty()) return base::fail(std::move(problems));
  joblog::NewWaste waste;
  waste.head = head_of(request.token + "/waste", *at, *shop, request.note);
  waste.takings = {{goods->good.material, goods->quantity, request.lot.value_or("")}};
  return book(workshop, *shop, "waste", {Wanted(waste)});
}

}  // namespace wetout::work
