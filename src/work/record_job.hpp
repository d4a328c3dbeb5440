// The job that something is recorded of: its last plan, and whose clock its times are told by.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/files/shop_file.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct JobOfRecord {
  std::string slug;
  std::string name;
  std::optional<report::PlanDocument> plan;  ///< the last one; nothing of a job never planned
  /// Stored with that plan, else the one that a job here would use, else none.
  std::optional<files::ShopFile> shop;
  time::Zone zone;                                          ///< of the shop, UTC without one
  std::optional<std::vector<joblog::ScheduledStep>> steps;  ///< of its last schedule
};

/// The job of the log that `typed` means; with `begin` a new one by that name when the log, which
/// may then be null, knows none exactly so. Problems: "job.unknown", "job.ambiguous", "job.id",
/// "log.none".
base::Result<JobOfRecord> job_of_record(const Workshop& workshop, const joblog::Log* log,
                                        const std::string& typed, bool begin);

}  // namespace wetout::work
