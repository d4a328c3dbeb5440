// The keys of entries and of amounts, which the documents of stock and ledger carry.
#pragma once

#include <cmath>
#include <optional>
#include <string_view>

#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/report/ledger_document.hpp"

namespace wetout::report {

/// "g", "m", "piece", "min".
inline std::string_view unit_word(GoodsUnit unit) {
  switch (unit) {
    case GoodsUnit::gram:
      return "g";
    case GoodsUnit::metre:
      return "m";
    case GoodsUnit::piece:
      return "piece";
    case GoodsUnit::minute:
      return "min";
  }
  return "";
}

/// Grams, metres, pieces, minutes.
inline double in_units(const GoodsAmount& amount) {
  const auto count = static_cast<double>(amount.count);
  if (amount.unit == GoodsUnit::gram) return count / 1e3;
  if (amount.unit == GoodsUnit::metre) return count / 1e6;
  return count;
}
inline std::optional<double> in_units(const std::optional<GoodsAmount>& amount) {
  return amount ? std::optional(in_units(*amount)) : std::nullopt;
}

/// Where neither log nor shop file name a currency nothing has cost anything.
inline std::optional<units::Money> known(const units::Money& money) {
  return money.currency.empty() ? std::nullopt : std::optional(money);
}

template <>
struct Words<GoodsUnit> {
  static std::string_view word(GoodsUnit unit) { return unit_word(unit); }
};

template <>
struct Fields<LedgerLine> {
  static void visit(auto& v, const LedgerLine& line) {
    v("from", line.from);
    v("to", line.to);
    v("material", line.material);
    v("lot", line.lot);
    v("job", line.job);
    v("step", line.step);
    v("amount", in_units(line.amount), as::Plain{});
    v("unit", line.amount.unit);
    v("cost", known(line.cost));
    v("expired", line.expired);
    v("overdrawn", in_units(line.overdrawn), as::Plain{});
  }
};
template <>
struct Fields<LedgerEntry> {
  static void visit(auto& v, const LedgerEntry& entry) {
    v("number", entry.number);
    v("already", entry.already);
    v("kind", entry.kind);
    v("date", entry.date);
    v("at", entry.at);
    v("recorded", entry.recorded);
    v("event", entry.event);
    v("undoes", entry.undoes);
    v("undone_by", entry.undone_by);
    v("note", entry.note);
    v("lines", entry.lines);
  }
};

}  // namespace wetout::report
