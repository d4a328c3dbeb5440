// Every question to the ledger, answered once more by going through all lines of all entries.
#pragma once

#include <string>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

/// Empty when the log answers every question as the sum over its entries does, and neither goods
/// nor money are made or lost; else what differs.
std::string wrong_answers(const Log& log);

}  // namespace wetout::joblog::testing
