// The shelf for people: what is there, lot by lot, what to buy, what was just booked.
#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "goods_text.hpp"
#include "phrases.hpp"
#include "wetout/report/stock_document.hpp"

namespace wetout::report {
namespace {

using layout::left;
using layout::plain;
using layout::right;
using units::System;

std::string minute_text(std::string_view rfc3339) {
  constexpr std::size_t to_the_minute = 16;
  std::string text = when_text(rfc3339);
  if (text.size() > to_the_minute) text.resize(to_the_minute);
  return text;
}

class Writer {
 public:
  Writer(const StockDocument& document, System system) : document_(document), system_(system) {}

  std::string run() {
    booked();
    if (document_.action == "lots") {
      lots();
    } else if (document_.action == "reorder") {
      reorder();
    } else if (document_.action != "import") {
      list();
    }
    for (const base::Notice& notice : document_.notices) {
      page_.item("  * ", subject_text(notice) + notice_text(notice, system_));
    }
    return page_.text();
  }

 private:
  std::string text(const GoodsAmount& amount) const { return amount_text(amount, system_); }
  std::string some(const GoodsAmount& amount) const {
    return amount.count == 0 ? "-" : text(amount);
  }

  void booked() {
    if (document_.entries.empty()) return;
    page_.line(document_.saved ? "Booked" : "Would be booked");
    for (const LedgerEntry& entry : document_.entries) entry_lines(page_, entry, system_);
    page_.blank();
  }

  void list() {
    if (document_.items.empty()) {
      if (document_.entries.empty())
        page_.line("Nothing is in stock, and no board needs anything.");
      return;
    }
    constexpr std::size_t name = 17, column = 13, date = 11;
    const auto row = [&](std::string_view a, std::string_view b, std::string_view c,
                         std::string_view d, std::string_view e, std::string_view f) {
      page_.line(left(a, name) + right(b, column) + right(c, column) + right(d, column) +
                 right(e, column) + right(f, date));
    };
    row("material", "on hand", "value", "planned", "short", "expires");
    for (const StockItem& item : document_.items) {
      row(plain(item.material), text(item.on_hand), money_text(item.value), some(item.planned),
          some(item.missing), item.expires.value_or("-"));
    }
    for (const StockItem& item : document_.items) past_day(item);
  }

  void past_day(const StockItem& item) {
    if (item.expired.count == 0) return;
    page_.item("  * ", plain(item.material) + ": " + layout::whole(text(item.expired)) +
                           " of it is past its day");
  }

  void lots() {
    if (document_.items.empty()) page_.line("No lots.");
    const std::string* material = nullptr;
    for (const StockItem& item : document_.items) {
      if (material == nullptr || *material != item.material) {
        page_.blank();
        page_.line(plain(item.material) +
                   (item.name == item.material ? "" : ", " + plain(item.name)));
        lot_row("lot", "received", "last good day", "on hand", "value");
        material = &item.material;
      }
      lot(item);
    }
  }

  void lot_row(std::string_view label, std::string_view received, std::string_view expires,
               std::string_view on_hand, std::string_view value) {
    page_.line("  " + left(label, 18) + "  " + left(received, 10) + "  " + left(expires, 13) +
               right(on_hand, 14) + right(value, 15));
  }

  void lot(const StockItem& item) {
    lot_row(plain(item.lot.value_or("")), item.received.value_or(""), item.expires.value_or("-"),
            text(item.on_hand), money_text(item.value));
    constexpr std::string_view indent = "      ";
    if (item.expired.count > 0) page_.item(indent, "past its last good day");
    if (item.on_hand.count < 0) page_.item(indent, "more was taken than came in: count it");
    if (item.batch) page_.item(indent, "maker's batch " + plain(*item.batch));
    std::vector<std::string> boards;
    for (const LotBoard& board : item.boards) {
      boards.push_back(plain(board.job) + " (" + layout::whole(text(board.amount)) + ")");
    }
    if (!boards.empty()) page_.item(indent, "in " + joined(boards, ", "));
  }

  void reorder() {
    if (document_.reorder.empty()) {
      page_.line("Nothing runs short.");
      return;
    }
    const auto row = [&](std::string_view material, std::string_view missing, std::string_view by,
                         std::string_view cost) {
      page_.line(left(material, 26) + right(missing, 16) + "   " + left(by, 18) + right(cost, 17));
    };
    row("material", "short", "needed", "cost");
    for (const ReorderLine& line : document_.reorder) {
      row(plain(line.material), text(line.missing), line.by ? minute_text(*line.by) : "now",
          line.cost ? units::print(*line.cost) : "-");
      buy(line);
    }
    if (document_.reorder_cost) {
      page_.blank();
      page_.line(layout::ends("all that has a price", units::print(*document_.reorder_cost)));
    }
  }

  void buy(const ReorderLine& line) {
    constexpr std::string_view indent = "    ";
    std::vector<std::string> packs;
    for (const PackLine& pack : line.packs) {
      std::string each = fmt::format("{} x {}", pack.count, pack.size);
      if (pack.price) each += " at " + units::print(*pack.price);
      packs.push_back(layout::whole(each));
    }
    page_.item(indent, packs.empty() ? "the shop file has no packs of it"
                                     : "buy " + joined(packs, " and "));
    std::string why = "for " + plain(line.job) + " (" + plain(line.coat) + ")";
    std::vector<std::string> others;
    for (const std::string& job : line.jobs) {
      if (job != line.job) others.push_back(plain(job));
    }
    if (!others.empty()) why += ", then " + joined(others, ", ");
    page_.item(indent, why);
  }

  const StockDocument& document_;
  System system_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const StockDocument& document, System system) {
  return Writer(document, system).run();
}

}  // namespace wetout::report
