// What a calendar must know beside its schedule: which events earlier ones have made.
#pragma once

#include "wetout/report/calendar.hpp"
#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Steps that any earlier schedule of these jobs had in the future and this one has not are
/// cancelled: whichever of them a calendar knows, it is brought up to date. Throws
/// joblog::StoreError.
report::CalendarFacts calendar_facts(const Workshop& workshop,
                                     const report::ScheduleDocument& document, time::Instant now);

}  // namespace wetout::work
