// The parts of a shop file.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "fields.hpp"
#include "ids.hpp"
#include "wetout/files/shop_file.hpp"

namespace wetout::files {

/// Money that must be in the shop's currency, where that is known.
template <class T>
std::optional<T> read_in_currency(Fields& fields, std::string_view key, Measure<T> measure,
                                  const std::string& currency) {
  // What a bare number is most likely meant in.
  const std::string unit = currency + std::string(measure.unit.substr(3));
  if (!currency.empty()) measure.unit = unit;
  std::optional<T> money = fields.quantity(key, measure);
  if (money && !currency.empty() && money->currency != currency) {
    fields.wrong_value(key, {.code = "currency.other",
                             .message = "the shop's currency is " + currency,
                             .expected = "an amount in " + currency});
    return std::nullopt;
  }
  return money;
}

/// [shop]; its `cup` is a reference that read_goods() has to follow.
void read_shop_table(Fields& root, ShopFile& shop);

/// [[cup]], [[material]], [[cloth]] and the reference to a cup in [shop].
void read_goods(Fields& root, ShopFile& shop);

/// [[resin]]: what data sheets print.
void read_resins(Fields& root, ShopFile& shop);
/// Keys of a resin that hold times.
inline constexpr std::string_view sheet_keys[] = {"pot_life", "gel",       "tack_free", "handle",
                                                  "sand",     "full_cure", "trim",      "recoat"};
/// The times and windows of a sheet, and their order.
void read_sheet(Fields& resin, resin::Product& product);
/// Parts by mass, by volume or both; needs the densities.
void read_parts(Fields& resin, resin::Product& product, ShopFile& shop);

/// [losses], [pace], [costs].
void read_losses(Fields& root, laminate::Losses& losses);
void read_pace(Fields& root, laminate::Shop& shop);
void read_costs(Fields& root, ShopFile& shop);

/// [room].
void read_room(Fields& root, ShopFile& shop);

/// [hours], [[person]], [[resource]]; without a person one with the hours of the shop.
void read_hours(Fields& root, ShopFile& shop);

}  // namespace wetout::files
