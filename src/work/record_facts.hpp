// From what somebody says of a step to the events that are kept.
#pragma once

#include <string>
#include <vector>

#include "record_job.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/work/record.hpp"

namespace wetout::work {

struct FactsOfRecord {
  std::vector<joblog::NewEvent> events;  ///< at least one
  base::Notices notices;
};

/// What a request is said of.
struct FactsContext {
  const JobOfRecord& job;
  const schedule::StepName& step;
  const std::vector<joblog::EventRow>& before;  ///< of the job, so far
  /// In words what was named of goods, a note of its own with the token "CALL/used"; empty:
  /// nothing.
  std::string goods;
  const resin::Product* resin;  ///< of what was mixed, where no plan tells; null: none
  time::Instant now;
};

/// Problems are those of record() from "record.nothing" on.
base::Result<FactsOfRecord> facts_of(const RecordRequest& request, const FactsContext& context);

}  // namespace wetout::work
