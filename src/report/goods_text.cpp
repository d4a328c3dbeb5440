#include "goods_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "ledger_fields.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using units::System;

std::string mass_text(double grams, System system) {
  const units::Mass mass = units::grams(grams);
  const double size = std::abs(grams);
  if (system == System::us) {
    return size < units::in_grams(units::pounds(1)) ? units::print(mass, system)
                                                    : units::print_weight(mass, system);
  }
  if (size >= 1000.0) return units::print_weight(mass, system);
  // Pigment and catalyst go by tenths of a gram.
  return units::print_number(grams, size < 10.0 ? 1 : 0) + " g";
}

std::string length_text(double metres, System system) {
  if (system == System::metric) return fmt::format("{:.2f} m", metres);
  constexpr double metres_of_a_yard = 0.9144;
  return fmt::format("{:.2f} yd", metres / metres_of_a_yard);
}

std::string lot_text(const LedgerLine& line) {
  std::string text;
  if (line.lot) text = "lot " + plain(*line.lot);
  if (line.expired) text += ", past its day";
  return text.empty() ? text : " (" + text + ")";
}

std::string more_or_less(const LedgerLine& line) {
  if (line.amount.count == 0 && line.cost.minor == 0) return "as it was";
  return line.from == "adjustment" ? "found more" : "missing";
}

// "5.00 kg kelp-a (lot 2026-06-13), 79.00 EUR".
std::string line_text(const LedgerEntry& entry, const LedgerLine& line, System system) {
  const std::string cost =
      line.cost.currency.empty() ? "" : ", " + layout::whole(units::print(line.cost));
  if (!line.material) return layout::whole(amount_text(line.amount, system)) + cost;
  if (entry.kind == "count" && line.amount.count == 0 && line.cost.minor == 0) {
    return plain(*line.material) + lot_text(line);
  }
  const std::string amount = line.amount.count == 0
                                 ? "rest of the cost of"
                                 : layout::whole(amount_text(line.amount, system));
  return amount + " " + plain(*line.material) + lot_text(line) + cost;
}

std::string what(const LedgerEntry& entry, const LedgerLine& line) {
  std::string text;
  if (entry.kind == "receive") text = "received";
  if (entry.kind == "use") text = "used for " + plain(line.job.value_or("?"));
  if (entry.kind == "waste") text = "wasted";
  if (entry.kind == "count") text = "counted, " + more_or_less(line);
  if (entry.kind == "labour") text = "work on " + plain(line.job.value_or("?"));
  if (line.step) text += " (" + plain(*line.step) + ")";
  if (entry.undoes) text = fmt::format("takes back entry {}", *entry.undoes);
  return text;
}

std::string tail(const LedgerEntry& entry) {
  std::vector<std::string> words;
  if (entry.already) words.emplace_back("entered before");
  if (entry.undone_by) words.push_back(fmt::format("taken back by entry {}", *entry.undone_by));
  if (!entry.number) words.emplace_back("from start to done, not booked");
  return words.empty() ? "" : fmt::format(" ({})", fmt::join(words, ", "));
}

}  // namespace

std::string amount_text(const GoodsAmount& amount, System system) {
  const double value = in_units(amount);
  switch (amount.unit) {
    case GoodsUnit::gram:
      return mass_text(value, system);
    case GoodsUnit::metre:
      return length_text(value, system);
    case GoodsUnit::piece:
      return fmt::format("{} {}", amount.count,
                         amount.count == 1 || amount.count == -1 ? "piece" : "pieces");
    case GoodsUnit::minute:
      return units::print(units::minutes(value), system);
  }
  return "";
}

std::string money_text(const units::Money& money) {
  return money.currency.empty() ? "-" : units::print(money);
}

void entry_lines(layout::Page& page, const LedgerEntry& entry, System system) {
  const std::string number = entry.number ? std::to_string(*entry.number) : "";
  std::string label = fmt::format("{:>6}  {}  ", number, plain(entry.date));
  const std::string blank(label.size(), ' ');
  const std::string note = entry.note ? ", \"" + plain(*entry.note) + "\"" : "";
  if (entry.undoes) {
    page.item(label, what(entry, {}) + note + tail(entry));
    return;
  }
  std::string before;
  for (const LedgerLine& line : entry.lines) {
    const std::string said = what(entry, line);
    // A kit, or a taking from several lots: the word once.
    std::string text = said == before ? "" : said + ": ";
    text += line_text(entry, line, system);
    if (&line == &entry.lines.back()) text += note + tail(entry);
    page.item(said == before ? blank + "  " : label, text);
    before = said;
    label = blank;
  }
}

}  // namespace wetout::report
