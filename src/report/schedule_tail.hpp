// What stands around the days of a schedule's text: why it is this one, what else there is, and
// what to change where nothing fits.
#pragma once

#include "layout.hpp"
#include "schedule_view.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// Chosen options, proof or gap, alternatives, what changed.
void add_choices(layout::Page& page, const ScheduleView& view);
void add_quality(layout::Page& page, const ScheduleView& view);
void add_alternatives(layout::Page& page, const ScheduleView& view);
void add_changes(layout::Page& page, const ScheduleView& view);
/// When each coat could start, day by day.
void add_windows(layout::Page& page, const ScheduleView& view);
/// Why nothing fits, what to type, what else would help; or that nothing was found in time.
void add_impossible(layout::Page& page, const ScheduleView& view);

}  // namespace wetout::report
