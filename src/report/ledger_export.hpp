// What the exports of the ledger share.
#pragma once

#include <string>

#include "wetout/report/ledger_document.hpp"

namespace wetout::report {

/// All digits of an amount in its unit: "178.123", "9.144000", "2".
std::string exact(const GoodsAmount& amount);

}  // namespace wetout::report
