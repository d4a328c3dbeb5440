// A plan out of the log, with the files it was made from.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "job_and_shop.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/plan_document.hpp"

namespace wetout::work {

struct StoredPlan {
  report::PlanDocument document;
  std::string job_text, job_name;
  std::string shop_text, shop_name;
  std::string options;
  std::string learned;  ///< as JobAndShop has it
  std::string outline;  ///< the drawing that the job file names; empty without one
};

/// The id that `typed` means. Problems "job.unknown", "job.ambiguous".
base::Result<std::string> job_named(const joblog::Log& log, std::string_view typed);

/// The revision, or the last. Problems "revision.unknown", "plan.none" (records only).
base::Result<StoredPlan> stored_plan(const joblog::Log& log, const std::string& slug,
                                     std::optional<int> revision);

/// The stored job file read again.
base::Result<files::JobFile> job_of(const StoredPlan& stored);
/// The stored files read again, without what was learned and with it.
base::Result<JobAndShop> files_as_written(const StoredPlan& stored);
base::Result<JobAndShop> files_of(const StoredPlan& stored);

/// The log for reading, or "log.none" where there is no log yet.
base::Result<joblog::Log> open_log(const Workshop& workshop);

}  // namespace wetout::work
