// What the ledger is read with: the log, and of the shop its clock, currency and wage.
#pragma once

#include <optional>
#include <string>

#include "ledger_entries.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct LedgerShop {
  joblog::Log log;  ///< for reading
  time::Instant now;
  units::System units = units::System::us;
  std::optional<units::Money> wage;  ///< for an hour, in the currency of the ledger
  bool other_wage = false;           ///< the shop file has one in another currency
  EntryContext context;
};

/// Problems: "log.none", those of a shop file that is there but cannot be read.
base::Result<LedgerShop> ledger_shop(const Workshop& workshop);

/// The minutes at the wage, to the nearest minor unit; nothing without a wage.
std::optional<units::Money> wages(const LedgerShop& shop, std::int64_t minutes);

}  // namespace wetout::work
