// One record on its way into the log: read, then kept or foreseen with what is booked for it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "record_bookings.hpp"
#include "record_goods.hpp"
#include "record_job.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/work/record.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// A request that can be kept: whose it is, its facts, its goods.
struct RecordToKeep {
  JobOfRecord job;
  schedule::StepName step;
  GoodsOfRecord goods;
  std::optional<resin::Product> resin;   ///< that was named
  std::vector<joblog::EventRow> before;  ///< of the job
  joblog::NewEvents events;
  base::Notices notices;
};

/// `log`, which may be null, is only read. Problems: those of record(), from the log's apart.
base::Result<RecordToKeep> record_to_keep(const Workshop& workshop, const joblog::Log* log,
                                          const RecordRequest& request);

/// The events of a record, as they are in the log, and what is to be booked for them.
struct KeptEvents {
  joblog::RecordedEvents events;
  Bookings bookings;
};
/// Records them; to be called in Log::together(), with the bookings after it.
base::Result<KeptEvents> keep_events(joblog::Log& log, const RecordToKeep& record);
/// What keep_events() would say, writing nothing. `log` may be null.
base::Result<KeptEvents> foresee_events(const joblog::Log* log, const RecordToKeep& record);

/// For reading, or nothing where there is none yet.
std::optional<joblog::Log> log_so_far(const Workshop& workshop);
/// For writing. A place that may be a slip of the hand is not made; a log that is there is only
/// opened.
joblog::Log log_to_write(const Workshop& workshop);

}  // namespace wetout::work
