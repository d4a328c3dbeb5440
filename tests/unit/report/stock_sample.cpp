#include "ledger_sample.hpp"

namespace wetout::report::sample {
namespace {

units::Money euros(std::int64_t minor) { return {minor, "EUR"}; }

StockDocument head(std::string action) {
  StockDocument document;
  document.program = "wetout 0.1.0";
  document.made = "2026-05-09T19:00:00-07:00";
  document.action = std::move(action);
  document.currency = "EUR";
  return document;
}

StockItem item(std::string material, std::string name, GoodsUnit unit) {
  StockItem out;
  out.material = std::move(material);
  out.name = std::move(name);
  out.value = euros(0);
  for (GoodsAmount* amount : {&out.on_hand, &out.planned, &out.missing, &out.expired}) {
    amount->unit = unit;
  }
  return out;
}

StockItem resin() { return item("resin-a", "Laminating resin, part A", GoodsUnit::gram); }
StockItem cloth() { return item("e4", "4 oz E-glass", GoodsUnit::metre); }

StockItem full_lot() {
  StockItem lot = resin();
  lot.lot = "jugs of \x1b[31mJune, as they were called by somebody long ago";
  lot.batch = "KA-2207";
  lot.received = "2026-05-01";
  lot.expires = "2026-05-08";
  lot.on_hand.count = lot.expired.count = 1'200'000;
  lot.value = euros(1896);
  lot.boards = {
      {.job = "sandpiper-6-4",
       .name = "Sandpiper 6-4",
       .amount = {178'123, GoodsUnit::gram},
       .cost = euros(281)},
      {.job = "pico", .name = "Pico", .amount = {4'500, GoodsUnit::gram}, .cost = euros(7)}};
  return lot;
}

}  // namespace

StockDocument stock_list() {
  StockDocument document = head("list");
  StockItem a = resin();
  a.on_hand.count = 5'000'000;
  a.planned.count = 763'000;
  a.value = euros(7900);
  a.expires = "2027-06-30";
  a.expired.count = 400'000;
  StockItem roll = cloth();
  roll.on_hand.count = 1'000'000;
  roll.planned.count = 3'220'000;
  roll.missing.count = 2'220'000;
  roll.value = euros(580);
  StockItem box = item("a-box-whose-id-is-far-too-long-for-its-column", "Box", GoodsUnit::piece);
  box.on_hand.count = -1;
  box.value = euros(-900);
  document.items = {box, roll, a};
  document.notices = {{.code = "stock.unit", .text = "counted otherwise", .subject = "white"}};
  return document;
}

StockDocument stock_lots() {
  StockDocument document = head("lots");
  StockItem roll = cloth();
  roll.lot = "2026-05-02";
  roll.received = "2026-05-02";
  roll.on_hand.count = -500'000;
  roll.value = euros(-118);
  document.items = {roll, full_lot()};
  StockItem second = resin();
  second.lot = "2026-05-03";
  second.received = "2026-05-03";
  document.items.push_back(second);
  return document;
}

StockDocument stock_reorder() {
  StockDocument document = head("reorder");
  ReorderLine a;
  a.material = "resin-a";
  a.name = "Laminating resin, part A";
  a.missing = {1'300'000, GoodsUnit::gram};
  a.job = "pico";
  a.coat = "bottom-lam";
  a.jobs = {"pico", "sandpiper-6-4", "faial"};
  a.packs = {
      {.size = "1 kg", .holds = {1'000'000, GoodsUnit::gram}, .count = 1, .price = euros(2150)},
      {.size = "500 g", .holds = {500'000, GoodsUnit::gram}, .count = 1, .price = euros(1200)}};
  a.buys = GoodsAmount{1'500'000, GoodsUnit::gram};
  a.cost = euros(3350);
  ReorderLine roll;
  roll.material = "e4";
  roll.name = "4 oz E-glass";
  roll.missing = {2'220'000, GoodsUnit::metre};
  roll.by = "2026-05-12T18:00:00-07:00";
  roll.job = "sandpiper-6-4";
  roll.coat = "deck-lam";
  roll.jobs = {"sandpiper-6-4"};
  ReorderLine box = roll;
  box.material = "fin-box";
  box.name = "Fin box";
  box.missing = {2, GoodsUnit::piece};
  box.packs = {
      {.size = "1 piece", .holds = {1, GoodsUnit::piece}, .count = 2, .price = std::nullopt}};
  box.buys = GoodsAmount{2, GoodsUnit::piece};
  document.reorder = {a, roll, box};
  document.reorder_cost = euros(3350);
  return document;
}

StockDocument stock_received() {
  StockDocument document = head("receive");
  document.saved = true;
  document.entries = {entries()[0]};
  StockItem a = resin();
  a.on_hand.count = 5'000'000;
  a.value = euros(7900);
  StockItem roll = cloth();
  roll.on_hand.count = 27'432'000;
  roll.value = euros(6500);
  document.items = {roll, a};
  // Of a taking that was just booked.
  LedgerEntry wasted = entries()[2];
  wasted.undone_by.reset();
  wasted.lines[0].expired = true;
  wasted.lines[0].overdrawn = GoodsAmount{1'000, GoodsUnit::gram};
  document.entries.push_back(wasted);
  return document;
}

}  // namespace wetout::report::sample
