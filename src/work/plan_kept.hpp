// A plan that was made and kept, with the files as they were planned with.
#pragma once

#include "job_and_shop.hpp"
#include "wetout/work/plan.hpp"

namespace wetout::work {

struct PlanKept {
  Printable printable;
  JobAndShop files;  ///< with what was learned, as the plan used it
};

/// As `plan` does; for who goes on with the board.
base::Result<PlanKept> plan_and_keep(const Workshop& workshop, const PlanRequest& request);

}  // namespace wetout::work
