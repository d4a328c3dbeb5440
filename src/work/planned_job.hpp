// The plan of a job as it stands in the log, or of a file without saving it.
#pragma once

#include <string>

#include "job_and_shop.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct PlannedJob {
  JobAndShop files;
  report::PlanDocument document;
};

/// `job`: of the log, or a job file. Planned anew where the day's choices differ from those of the
/// plan; with the files stored with it, and a word through the sink when the shop file has changed
/// since. Problems: "log.none", "job.unknown", "job.ambiguous", those of plan().
base::Result<PlannedJob> planned_job(const Workshop& workshop, const std::string& job,
                                     const MixingChoices& choices);

}  // namespace wetout::work
