// What was booked for a record, as its document shows it.
#pragma once

#include <vector>

#include "record_bookings.hpp"
#include "record_job.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/ledger_document.hpp"

namespace wetout::work {

/// Entries just booked or foreseen. `log` may be null.
std::vector<report::LedgerEntry> booked_entries(const std::vector<joblog::NewEntry>& entries,
                                                const std::vector<joblog::Booked>& booked,
                                                const std::vector<joblog::Material>& materials,
                                                const JobOfRecord& job, const joblog::Log* log);

/// Entries of an event that were booked by an earlier call.
std::vector<report::LedgerEntry> earlier_entries(std::int64_t event, const JobOfRecord& job,
                                                 const joblog::Log& log);

/// What is short, past its date, or was never received; each material once.
base::Notices notices_of(const std::vector<joblog::Booked>& booked, const Bookings& bookings);

}  // namespace wetout::work
