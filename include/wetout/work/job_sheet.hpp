// `sheet`: everything for one board on one page, to print or to open on a phone.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct JobSheetRequest {
  std::string job;                            ///< of the log, or a job file
  std::optional<std::filesystem::path> file;  ///< else JOB-sheet.html
  std::optional<units::System> units;         ///< else the shop's
};

struct MadeJobSheet {
  std::string file;
  std::optional<int> schedule;  ///< its number in the log
  std::string no_schedule;      ///< why the page has no times, a sentence; else empty
};

/// From the job's last plan and its last schedule, as they stand in the log. A file is planned as
/// by plan(), without being saved, and has no schedule unless the last plan of its board in the log
/// is the same. Batches are those for the room's air at the time each coat is scheduled. Problems:
/// those of plan() and of files::write_made(), "job.unknown", "job.ambiguous", "log.none". Throws
/// joblog::StoreError.
base::Result<MadeJobSheet> make_job_sheet(const Workshop& workshop, const JobSheetRequest& request);

}  // namespace wetout::work
