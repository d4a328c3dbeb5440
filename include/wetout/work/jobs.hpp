// `jobs`: what the log holds.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "wetout/base/problem.hpp"
#include "wetout/report/jobs_document.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Jobs are named by their id or a unique beginning of it; "job.unknown" and "job.ambiguous" list
/// what there is. A log that does not exist yet holds no jobs.
base::Result<report::JobsDocument> jobs(const Workshop& workshop);
base::Result<Printable> show_job(const Workshop& workshop, std::string_view job,
                                 std::optional<int> revision);
/// Two revisions of a job, older first; without numbers the last two.
base::Result<std::pair<Printable, Printable>> compare_job(const Workshop& workshop,
                                                          std::string_view job,
                                                          std::optional<int> a,
                                                          std::optional<int> b);
/// The new name becomes the id (as a slug) and the name. The list after it.
base::Result<report::JobsDocument> rename_job(const Workshop& workshop, std::string_view job,
                                              const std::string& name);
base::Result<report::JobsDocument> archive_job(const Workshop& workshop, std::string_view job);

}  // namespace wetout::work
