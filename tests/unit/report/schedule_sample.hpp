// Schedules to print and to read back: nothing here is a model's answer.
#pragma once

#include "wetout/report/schedule_document.hpp"

namespace wetout::report::sample {

/// A small board of five coats, evenings and Saturdays of June in UTC: laps ground, a step done,
/// one fixed, alternatives, a schedule before this one.
ScheduleDocument schedule();
/// Two boards and two people, proved only in part; one film of polyester.
ScheduleDocument schedule_of_two();
/// Nothing fits; four changes that would help.
ScheduleDocument schedule_impossible();
/// Everything that may be unknown is unknown, every list that may be empty is empty.
ScheduleDocument schedule_bare();

}  // namespace wetout::report::sample
