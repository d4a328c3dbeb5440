// What a record takes from the shelf, and the work it tells of: its facts as entries of the ledger.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "record_goods.hpp"
#include "record_job.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {

/// What is recorded, beside the events themselves.
struct RecordContext {
  const JobOfRecord& job;
  schedule::StepName step;
  const GoodsOfRecord& goods;
  const resin::Product* resin;                  ///< named for what was mixed; null: none
  const std::vector<joblog::EventRow>& before;  ///< of the job, before this call
};

struct Bookings {
  std::vector<joblog::NewEntry> entries;    ///< each names its event
  std::vector<joblog::Material> materials;  ///< that they take
  std::set<std::string> unreceived;         ///< of those, what was never received
  std::set<std::string> never_received;     ///< of those, what the log sees for the first time
  base::Notices notices;
};

/// Of the events that are new; those that were there before have their entries. Goods are taken
/// only where stock is kept (joblog::Log::keeps_stock); work is booked at the shop's price of an
/// hour. Problem: "goods.lot" (a lot of what this record does not take). `log` may be null: nothing
/// is in it.
base::Result<Bookings> bookings_of(const RecordContext& context,
                                   const std::vector<joblog::RecordedEvent>& events,
                                   const joblog::Log* log);

/// Books them through `log` or, on a dry run, foresees them (`log` may then be null).
base::Result<std::vector<joblog::Booked>> book_all(joblog::Log& log,
                                                   const std::vector<joblog::NewEntry>& entries);
base::Result<std::vector<joblog::Booked>> foresee_all(const joblog::Log* log,
                                                      const std::vector<joblog::NewEntry>& entries);

/// The entries that came from an event and were not taken back, the last first, each taken back by
/// one that names the event `undo`.
std::vector<joblog::NewEntry> reversals_of(const joblog::Log& log, std::int64_t event,
                                           const joblog::EventRow& undo);

}  // namespace wetout::work
