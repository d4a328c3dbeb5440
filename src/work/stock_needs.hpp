// What a plan takes off the shelf, coat by coat.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "stored_plan.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/ledger.hpp"

namespace wetout::work {

struct CoatGoods {
  std::string coat;      ///< id
  std::string material;  ///< id
  joblog::MaterialUnit unit = joblog::MaterialUnit::milligram;
  std::int64_t quantity = 0;
};

/// Parts, additives, cloth off the roll, and what is set into the board: in all what the plan's
/// totals say. In the order of the coats, each material once in a coat. Problems: the stored job
/// file cannot be read any more (looked into only where something is set into the board).
base::Result<std::vector<CoatGoods>> goods_of_plan(const StoredPlan& stored);

}  // namespace wetout::work
