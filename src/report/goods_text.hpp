// Amounts, money and entries of the ledger, for people.
#pragma once

#include <string>

#include "layout.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// "5.00 kg" or "178 g", "10.94 m", "12 pieces", "1 h 25 min"; for `us` "11 lb 0.4 oz", "6.3 oz",
/// "11.96 yd".
std::string amount_text(const GoodsAmount& amount, units::System system);
/// "79.00 EUR"; "-" where nothing is known to cost anything.
std::string money_text(const units::Money& money);

/// An entry with its number and day, one line for each way of goods.
void entry_lines(layout::Page& page, const LedgerEntry& entry, units::System system);

}  // namespace wetout::report
