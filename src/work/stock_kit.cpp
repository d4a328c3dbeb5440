// Several things bought for one price.
#include <algorithm>
#include <cmath>
#include <utility>

#include "job_and_shop.hpp"
#include "stock_booking.hpp"
#include "wetout/base/check.hpp"
#include "wetout/files/kit_file.hpp"

namespace wetout::work {
namespace {

// What an amount costs at the pack that is cheapest for its size, in thousandths of a minor unit.
std::optional<std::int64_t> usual_price(const Good& good, std::int64_t quantity) {
  std::optional<double> cheapest;
  for (const laminate::Pack& pack : good.packs) {
    const auto size = holds(pack, good);
    if (!size || *size <= 0 || !pack.price) continue;
    const double each = static_cast<double>(pack.price->minor) / static_cast<double>(*size);
    if (!cheapest || each < *cheapest) cheapest = each;
  }
  if (!cheapest) return std::nullopt;
  constexpr double most = 1e15;  // no shop's price; a whole number all the same
  return std::llround(std::min(*cheapest * static_cast<double>(quantity) * 1e3, most));
}

std::string key_of(std::size_t part, std::string_view key) {
  return "part[" + std::to_string(part) + "]." + std::string(key);
}

struct Parts {
  std::vector<joblog::Received> received;
  std::vector<std::int64_t> weights;
};

base::Result<Parts> parts_of(const files::KitFile& kit, const StockShop& shop) {
  Parts out;
  base::Problems problems;
  for (std::size_t i = 0; i < kit.parts.size(); ++i) {
    const files::KitPart& part = kit.parts[i];
    const auto add = [&](base::Problem problem, std::string_view key) {
      problem.key = key_of(i, key);
      problems.push_back(std::move(problem));
    };
    auto good = good_meant(part.material, shop.goods);
    if (!good) {
      for (base::Problem& problem : good.error()) add(std::move(problem), "material");
      continue;
    }
    const auto quantity = read_amount(part.amount, *good, Least::something);
    if (!quantity) {
      for (const base::Problem& problem : quantity.error()) add(problem, "amount");
      continue;
    }
    const auto weight =
        part.worth ? std::optional(part.worth->minor) : usual_price(*good, *quantity);
    if (!weight) {
      add({.code = "kit.no_price",
           .message = "no pack of \"" + good->material.slug +
                      "\" has a price in the shop file, so the kit's price cannot be shared",
           .expected = "what it would cost alone, in every part, e.g. worth = \"12.00 " +
                       shop.currency + "\""},
          "worth");
      continue;
    }
    joblog::Received received{.material = good->material,
                              .quantity = *quantity,
                              .cost_minor = 0,
                              .lot = part.lot,
                              .batch = part.batch,
                              .expires = part.expires,
                              .width_um = std::nullopt};
    if (good->width) received.width_um = std::llround(units::in_metres(*good->width) * 1e6);
    out.received.push_back(std::move(received));
    out.weights.push_back(*weight);
  }
  if (!problems.empty()) return base::fail(files::locate(std::move(problems), kit.source));
  return out;
}

}  // namespace

base::Result<StockAnswer> receive_kit(const Workshop& workshop, const KitRequest& request) {
  base::promise(!request.token.empty(), "a call has a token");
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto kit = files::read_kit(request.file, shop->file.shop.currency);
  if (!kit) return tl::unexpected(kit.error());
  const auto at = moment_on(request.on, *shop);
  if (!at) return tl::unexpected(at.error());
  auto parts = parts_of(*kit, *shop);
  if (!parts) return tl::unexpected(parts.error());
  // Parts that are worth nothing share alike.
  std::vector<std::int64_t>& weights = parts->weights;
  if (std::all_of(weights.begin(), weights.end(), [](std::int64_t w) { return w == 0; })) {
    std::fill(weights.begin(), weights.end(), 1);
  }
  const std::vector<std::int64_t> shares = joblog::split_price(kit->price.minor, weights);
  for (std::size_t i = 0; i < shares.size(); ++i) parts->received[i].cost_minor = shares[i];

  joblog::NewReceipt receipt;
  const std::optional<std::string> name =
      kit->name.empty() ? std::nullopt : std::optional(kit->name);
  receipt.head =
      head_of(request.token + "/receive", *at, *shop, request.note ? request.note : name);
  receipt.currency = kit->price.currency;
  receipt.parts = std::move(parts->received);
  return book(workshop, *shop, "receive", {Wanted(std::move(receipt))});
}

}  // namespace wetout::work
