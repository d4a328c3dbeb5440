// Totals of the ledger, with the work that was recorded but not booked.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ledger_shop.hpp"
#include "wetout/report/ledger_document.hpp"

namespace wetout::work {

/// Work of boards that is in no entry, one entry without a number for each step, by board.
std::vector<report::LedgerEntry> unbooked_work(const LedgerShop& shop,
                                               const std::optional<std::string>& slug);

std::vector<report::MonthSums> month_sums(const LedgerShop& shop,
                                          const std::optional<std::string>& slug);
std::vector<report::MaterialSums> material_sums(const LedgerShop& shop,
                                                const std::optional<std::string>& slug);
std::vector<report::BoardSums> board_sums(const LedgerShop& shop,
                                          const std::optional<std::string>& slug);

}  // namespace wetout::work
