// What a step has to spare, in words.
#pragma once

#include <optional>
#include <string>

#include "schedule_view.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// How tight, as schedules are compared: slack over its scale.
double tightness(const StepSlack& slack);
/// The tightest of a step; null where nothing is told.
const StepSlack* tightest(const TimelineStep& step);

/// "dew margin 0.6 °F to spare Tue 04:10, breaks if the room is 2 °F colder". `spoken`: of
/// WallClock::when().
std::string slack_text(const ScheduleView& view, const StepSlack& slack, units::System system,
                       Spoken& spoken);

/// A chance that is not worth a line, and above.
inline constexpr double surely = 0.95;
std::string percent_of_chance(double chance);
/// "chance that the recoat window of bottom lam is still open: 88 %"; nothing where that is sure.
std::optional<std::string> chance_text(const ScheduleView& view, const StepSlack& slack);

}  // namespace wetout::report
