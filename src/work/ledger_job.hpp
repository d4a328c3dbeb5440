// What one board used and cost, against its plan.
#pragma once

#include <string>

#include "ledger_shop.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/report/ledger_document.hpp"

namespace wetout::work {

/// Fills job, cost, plan_vs_actual, work and notices of a document. A plan that cannot be read any
/// more is left out with a notice.
void tell_job(const LedgerShop& shop, const std::string& slug, report::LedgerDocument& document);

}  // namespace wetout::work
