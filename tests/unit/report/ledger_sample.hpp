// Stock and ledger of an invented shop.
#pragma once

#include "wetout/report/ledger_document.hpp"
#include "wetout/report/stock_document.hpp"

namespace wetout::report::sample {

/// One entry of every kind, by number; the last is work that is not booked.
std::vector<LedgerEntry> entries();

LedgerDocument ledger_of_job();
LedgerDocument ledger_list();
LedgerDocument ledger_by_material();
LedgerDocument ledger_by_job();
LedgerDocument ledger_undo();
/// No shop file, no money: everything that can be missing is.
LedgerDocument ledger_bare();

StockDocument stock_list();
StockDocument stock_lots();
StockDocument stock_reorder();
StockDocument stock_received();

}  // namespace wetout::report::sample
