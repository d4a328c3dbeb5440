// What is told of a step of a schedule, in phrases: the same in text, calendar and page.
#pragma once

#include <string>
#include <vector>

#include "schedule_view.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// "gel 22:25", "trim until Tue 01:18", "recoat Mon 22:25 to Tue 12:04": each with its spaces
/// glued.
std::vector<std::string> film_phrases(const ScheduleView& view, const Entry& wet, Spoken& spoken);

/// "room 84 °F", "board 28 °F above the dew point", "core warms 0.5 °F"; nothing where no room is
/// known.
std::vector<std::string> room_phrases(const Entry& wet, units::System system);

/// Cautions of a step, in their order: at the wet of its coat as long as that is to come.
std::vector<const laminate::Caution*> cautions_at(const ScheduleView& view, const Entry& entry);

}  // namespace wetout::report
