// From what somebody says of a step to the events that are kept.
#pragma once

#include <string>
#include <vector>

#include "record_job.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/work/record.hpp"

namespace wetout::work {

struct FactsOfRecord {
  std::vector<joblog::NewEvent> events;  ///< at least one
  base::Notices notices;
};

/// `before` holds the job's events so far. Problems are those of record() from "record.nothing" on.
base::Result<FactsOfRecord> facts_of(const RecordRequest& request, const JobOfRecord& job,
                                     const schedule::StepName& step,
                                     const std::vector<joblog::EventRow>& before,
                                     time::Instant now);

}  // namespace wetout::work
