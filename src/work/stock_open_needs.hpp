// What boards that are scheduled or begun still need.
#pragma once

#include <vector>

#include "stock_shortfall.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/joblog/log.hpp"

namespace wetout::work {

/// Of every job that is not archived and has a schedule or has been begun: what its last plan
/// needs for coats that are not done, less what was taken from stock for them or recorded as
/// mixed, whichever is more. Notices: "stock.plan_unread" for a plan that cannot be read any more.
std::vector<OpenNeed> open_needs(const joblog::Log& log, base::Notices& notices);

}  // namespace wetout::work
