// What is on the shelf, what boards need of it, and what to buy: the answer of `stock`.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view stock_format = "wetout.stock/1";

/// A board that holds some of a lot.
struct LotBoard {
  std::string job;  ///< id
  std::string name;
  GoodsAmount amount;
  units::Money cost;
};

/// A material, or one lot of it.
struct StockItem {
  std::string material;  ///< id
  std::string name;
  std::optional<std::string> lot;       ///< label; nothing: the material with all its lots
  std::optional<std::string> batch;     ///< of a lot: the maker's
  std::optional<std::string> received;  ///< of a lot: "2026-06-13"
  GoodsAmount on_hand;                  ///< below zero: more was taken than came in
  units::Money value;
  GoodsAmount planned;                 ///< of a material: what boards still need
  GoodsAmount missing;                 ///< of a material: what of that is not there; "short"
  std::optional<std::string> expires;  ///< of a lot its last good day; of a material the next one
  GoodsAmount expired;                 ///< what of it is past its day
  std::vector<LotBoard> boards;        ///< of a lot
};

struct PackLine {
  std::string size;  ///< "5 kg"
  GoodsAmount holds;
  std::int64_t count = 0;
  std::optional<units::Money> price;  ///< of each
};

/// What to buy of a material.
struct ReorderLine {
  std::string material;  ///< id
  std::string name;
  GoodsAmount missing;               ///< "short"
  std::optional<std::string> by;     ///< RFC 3339 with offset; nothing: a board has been begun
  std::string job;                   ///< id of the first board that runs short
  std::string coat;                  ///< id
  std::vector<std::string> jobs;     ///< all of them
  std::vector<PackLine> packs;       ///< empty: the shop file has none that fit
  std::optional<GoodsAmount> buys;   ///< what the packs hold
  std::optional<units::Money> cost;  ///< nothing: no price is known
};

struct StockDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string action;   ///< list | lots | reorder | receive | count | waste | import
  bool saved = false;   ///< false of a dry run, and of what only reads
  std::string currency;
  std::vector<StockItem> items;
  std::vector<ReorderLine> reorder;
  std::optional<units::Money> reorder_cost;  ///< of all that has a price
  std::vector<LedgerEntry> entries;          ///< what this call booked
  base::Notices notices;
};

/// One line; docs/formats/stock.schema.json.
std::string to_json(const StockDocument& document);
std::string to_text(const StockDocument& document, units::System system);

}  // namespace wetout::report
