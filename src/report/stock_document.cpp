#include "wetout/report/stock_document.hpp"

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "ledger_fields.hpp"

namespace wetout::report {

template <>
struct Fields<LotBoard> {
  static void visit(auto& v, const LotBoard& board) {
    v("job", board.job);
    v("name", board.name);
    v("amount", in_units(board.amount), as::Plain{});
    v("cost", known(board.cost));
  }
};
template <>
struct Fields<StockItem> {
  static void visit(auto& v, const StockItem& item) {
    const bool is_lot = item.lot.has_value();
    // A lot is of nobody's plan.
    const auto of_material = [&](const GoodsAmount& amount) {
      return is_lot ? std::nullopt : std::optional(in_units(amount));
    };
    v("material", item.material);
    v("name", item.name);
    v("lot", item.lot);
    v("batch", item.batch);
    v("received", item.received);
    v("on_hand", in_units(item.on_hand), as::Plain{});
    v("unit", item.on_hand.unit);
    v("value", known(item.value));
    v("planned", of_material(item.planned), as::Plain{});
    v("short", of_material(item.missing), as::Plain{});
    v("expires", item.expires);
    v("expired", in_units(item.expired), as::Plain{});
    v("boards", item.boards);
  }
};
template <>
struct Fields<PackLine> {
  static void visit(auto& v, const PackLine& pack) {
    v("size", pack.size);
    v("holds", in_units(pack.holds), as::Plain{});
    v("count", pack.count);
    v("price", pack.price);
  }
};
template <>
struct Fields<ReorderLine> {
  static void visit(auto& v, const ReorderLine& line) {
    v("material", line.material);
    v("name", line.name);
    v("short", in_units(line.missing), as::Plain{});
    v("unit", line.missing.unit);
    v("by", line.by);
    v("job", line.job);
    v("coat", line.coat);
    v("jobs", line.jobs);
    v("packs", line.packs);
    v("buys", in_units(line.buys), as::Plain{});
    v("cost", line.cost);
  }
};
template <>
struct Fields<StockDocument> {
  static void visit(auto& v, const StockDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("action", document.action);
    v("saved", document.saved);
    v("currency", document.currency);
    v("items", document.items);
    v("reorder", document.reorder);
    v("reorder_cost", document.reorder_cost);
    v("entries", document.entries);
    v("notices", document.notices);
  }
};

std::string to_json(const StockDocument& document) { return document_json(stock_format, document); }

}  // namespace wetout::report
