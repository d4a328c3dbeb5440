// Events of the log as the document that shows them, and what they come to.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "record_job.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/record_document.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Head and job of a document; `action` as RecordDocument says.
report::RecordDocument record_document(const JobOfRecord& job, std::string action,
                                       time::Instant now);

report::RecordedFact fact_of(const joblog::EventRow& row, bool already, const time::Zone& zone);

/// Of one step, or of all steps that something was recorded of, in the order of the plan's coats.
/// Undone events do not count.
std::vector<report::StepTotal> totals_of(const std::vector<joblog::EventRow>& events,
                                         const JobOfRecord& job,
                                         const std::optional<std::string>& step);

/// What the totals of a step should make one look at again.
base::Notices notices_of(const report::StepTotal& total);

/// Of resin that is left in a cup.
std::string leftover_caution(const JobOfRecord& job, const std::string& step);

}  // namespace wetout::work
