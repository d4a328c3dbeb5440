// What is tried on schedules and events.
#include "raw_log.hpp"

namespace wetout::joblog::testing {
namespace {

#define SCHEDULE                                                                \
  "made, program, input_key, format, result, replaces, weather, weather_name, " \
  "weather_format"

const Attack attacks[] = {
    {"ChangesASchedule", "schedule_no_update", "UPDATE schedule SET made = 0"},
    {"RenumbersASchedule", "schedule_no_update",
     "UPDATE OR REPLACE schedule SET id = 3 WHERE id = 2"},
    {"DeletesASchedule", "schedule_no_delete", "DELETE FROM schedule WHERE id = 3"},
    {"ReplacesASchedule", "schedule_no_replace",
     "INSERT OR REPLACE INTO schedule SELECT 3, " SCHEDULE ", 2, 2 FROM schedule WHERE id = 2",
     "schedule_is_next"},
    {"SkipsASchedule", "schedule_is_next",
     "INSERT INTO schedule SELECT 5, " SCHEDULE ", 2, 2 FROM schedule WHERE id = 2"},
    {"LetsTheDatabaseNumberASchedule", "schedule_is_next",
     "INSERT INTO schedule SELECT NULL, " SCHEDULE ", 2, 2 FROM schedule WHERE id = 2"},

    {"ChangesAJobOfASchedule", "schedule_job_no_update", "UPDATE schedule_job SET revision = 1"},
    {"DeletesAJobOfASchedule", "schedule_job_no_delete", "DELETE FROM schedule_job WHERE job = 2"},
    {"ReplacesAJobOfASchedule", "schedule_job_no_replace",
     "INSERT OR REPLACE INTO schedule_job VALUES(3, 1, 1)"},
    {"AddsAJobToAScheduleAfterwards", "schedule_job_late",
     "INSERT INTO schedule_job VALUES(2, 2, 1)"},

    {"ChangesAStepOfASchedule", "schedule_step_no_update", "UPDATE schedule_step SET start = 0"},
    {"DeletesAStepOfASchedule", "schedule_step_no_delete",
     "DELETE FROM schedule_step WHERE schedule = 1"},
    {"ReplacesAStepOfASchedule", "schedule_step_no_replace",
     "INSERT OR REPLACE INTO schedule_step VALUES(3, 1, 'weigh', 5, 6, 'done')"},
    {"AddsAStepToAScheduleAfterwards", "schedule_step_late",
     "INSERT INTO schedule_step VALUES(2, 1, 'weigh', 5, 6, 'planned')"},

    {"ChangesALesson", "lesson_no_update", "UPDATE lesson SET event = 2 WHERE id = 1"},
    {"DeletesALesson", "lesson_no_delete", "DELETE FROM lesson WHERE id = 2"},
    {"ReplacesALesson", "lesson_no_replace", "INSERT OR REPLACE INTO lesson VALUES(2, 1, 5, 0)",
     "lesson_is_next"},
    {"SkipsALesson", "lesson_is_next", "INSERT INTO lesson VALUES(4, 1, 5, 0)"},
    {"LetsTheDatabaseNumberALesson", "lesson_is_next", "INSERT INTO lesson VALUES(NULL, 1, 5, 0)"},
    {"SaysALessonTwice", "lesson_changes", "INSERT INTO lesson VALUES(3, 1, 5, 1)"},

    {"ChangesAnEvent", "event_no_update", "UPDATE event SET mass_mg = 900000 WHERE id = 1"},
    {"RenumbersAnEvent", "event_no_update", "UPDATE OR REPLACE event SET id = 9 WHERE id = 4"},
    {"TakesATokenByUpdate", "event_no_update",
     "UPDATE OR REPLACE event SET token = 'undo-2' WHERE id = 4"},
    {"DeletesAnEvent", "event_no_delete", "DELETE FROM event WHERE id = 4"},
    {"ReplacesAnEvent", "event_no_replace",
     "INSERT OR REPLACE INTO event(id, EVENT) SELECT 4, 'new', job, step, at, recorded, kind,"
     " milestone, mass_mg, part_a_mg, part_b_mg, air_mk, rh_ppm, 'other', undoes FROM event"
     " WHERE id = 4",
     "event_is_next"},
    {"ReplacesAnEventByToken", "event_no_replace",
     "INSERT OR REPLACE INTO event(id, EVENT) SELECT 5, EVENT FROM event WHERE id = 4"},
    {"ReplacesAnUndo", "event_no_replace",
     "INSERT OR REPLACE INTO event(id, EVENT) SELECT 5, 'new', job, step, at, recorded, kind,"
     " milestone, mass_mg, part_a_mg, part_b_mg, air_mk, rh_ppm, 'other', undoes FROM event"
     " WHERE id = 3"},
    {"SkipsAnEvent", "event_is_next",
     "INSERT INTO event(id, token, job, at, recorded, kind, note)"
     " VALUES(9, 'new', 1, 5, 6, 'note', 'x')"},
    {"LetsTheDatabaseNumberAnEvent", "event_is_next",
     "INSERT INTO event(token, job, at, recorded, kind, note)"
     " VALUES('new', 1, 5, 6, 'note', 'x')"},
    {"UndoesAnUndo", "event_undoes",
     "INSERT INTO event(id, token, job, at, recorded, kind, undoes)"
     " VALUES(5, 'new', 1, 5, 6, 'undo', 3)"},
    {"UndoesTheEventOfAnotherJob", "event_undoes",
     "INSERT INTO event(id, token, job, at, recorded, kind, undoes)"
     " VALUES(5, 'new', 2, 5, 6, 'undo', 1)"},
};

// The third schedule, with one column spoilt.
#define ROW(values) "INSERT INTO schedule SELECT " values " FROM schedule WHERE id = 1"
// A third schedule of one job and one step, and one of its rows spoilt.
#define OPEN "INSERT INTO schedule SELECT 3, " SCHEDULE ", 1, 1 FROM schedule WHERE id = 1;"
#define JOB(values) OPEN "INSERT INTO schedule_job VALUES(" values ")"
#define STEP(values)                               \
  OPEN "INSERT INTO schedule_job VALUES(3, 1, 3);" \
       "INSERT INTO schedule_step VALUES(" values ")"
// The fifth event, with one column spoilt: token, job, step, at, recorded, kind, milestone, mass,
// parts, air, humidity, note, undoes.
#define EVENT_ROW(values) "INSERT INTO event(id, EVENT) VALUES(5, " values ")"
#define WET "'new', 1, 'bottom-lam/wet', 5, 6, "

const BadRow bad_rows[] = {
    {"ScheduleIdZero", trigger, ROW("0, " SCHEDULE ", 1, 1")},
    {"ScheduleMadeNull", not_null,
     ROW("3, NULL, program, input_key, format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleMadeText", datatype,
     ROW("3, 'now', program, input_key, format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleProgramEmpty", check,
     ROW("3, made, '', input_key, format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleProgramNull", not_null,
     ROW("3, made, NULL, input_key, format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleKeyTooShort", check,
     ROW("3, made, program, x'00', format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleKeyNull", not_null,
     ROW("3, made, program, NULL, format, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleFormatEmpty", check,
     ROW("3, made, program, input_key, '', result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleFormatNull", not_null,
     ROW("3, made, program, input_key, NULL, result, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleResultNowhere", foreign,
     ROW("3, made, program, input_key, format, X32, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleResultNull", not_null,
     ROW("3, made, program, input_key, format, NULL, 1, NULL, NULL, NULL, 1, 1")},
    {"ScheduleReplacesItself", check,
     ROW("3, made, program, input_key, format, result, 3, NULL, NULL, NULL, 1, 1")},
    {"ScheduleReplacesALaterOne", check,
     ROW("3, made, program, input_key, format, result, 4, NULL, NULL, NULL, 1, 1")},
    {"ScheduleReplacesNone", foreign,
     ROW("3, made, program, input_key, format, result, 0, NULL, NULL, NULL, 1, 1")},
    {"ScheduleWeatherNowhere", foreign,
     ROW("3, made, program, input_key, format, result, 1, X32, 'w', 'csv', 1, 1")},
    {"ScheduleWeatherWithoutName", check,
     ROW("3, made, program, input_key, format, result, 1, weather, NULL, 'csv', 1, 1")},
    {"ScheduleWeatherWithoutFormat", check,
     ROW("3, made, program, input_key, format, result, 1, weather, 'w', NULL, 1, 1")},
    {"ScheduleNameWithoutWeather", check,
     ROW("3, made, program, input_key, format, result, 1, NULL, 'w', NULL, 1, 1")},
    {"ScheduleFormatWithoutWeather", check,
     ROW("3, made, program, input_key, format, result, 1, NULL, NULL, 'csv', 1, 1")},
    {"ScheduleWeatherFormatEmpty", check,
     ROW("3, made, program, input_key, format, result, 1, weather, 'w', '', 1, 1")},
    {"ScheduleOfNoJobs", check, ROW("3, " SCHEDULE ", 0, 1")},
    {"ScheduleJobsNull", not_null, ROW("3, " SCHEDULE ", NULL, 1")},
    {"ScheduleStepsNegative", check, ROW("3, " SCHEDULE ", 1, -1")},
    {"ScheduleStepsNull", not_null, ROW("3, " SCHEDULE ", 1, NULL")},

    {"ScheduleJobOfNoSchedule", foreign, JOB("4, 1, 3")},
    {"ScheduleJobOfNoPlan", foreign, JOB("3, 1, 4")},
    {"ScheduleJobOfNoJob", foreign, JOB("3, 99, 1")},
    {"ScheduleJobNull", not_null, JOB("3, NULL, 1")},
    {"ScheduleJobRevisionNull", not_null, JOB("3, 1, NULL")},

    {"StepOfAJobNotScheduled", foreign, STEP("3, 2, 'weigh', 5, 6, 'planned'")},
    {"StepOfNoSchedule", foreign, STEP("4, 1, 'weigh', 5, 6, 'planned'")},
    {"StepNameEmpty", check, STEP("3, 1, '', 5, 6, 'planned'")},
    {"StepNameNull", not_null, STEP("3, 1, NULL, 5, 6, 'planned'")},
    {"StepStartNull", not_null, STEP("3, 1, 'weigh', NULL, 6, 'planned'")},
    {"StepStartText", datatype, STEP("3, 1, 'weigh', 'noon', 6, 'planned'")},
    {"StepFinishNull", not_null, STEP("3, 1, 'weigh', 5, NULL, 'planned'")},
    {"StepEndsBeforeItBegins", check, STEP("3, 1, 'weigh', 5, 4, 'planned'")},
    {"StepStateUnknown", check, STEP("3, 1, 'weigh', 5, 6, 'late'")},
    {"StepStateNull", not_null, STEP("3, 1, 'weigh', 5, 6, NULL")},

    {"EventTokenEmpty", check,
     EVENT_ROW("'', 1, NULL, 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventTokenNull", not_null,
     EVENT_ROW("NULL, 1, NULL, 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventTokenAgain", trigger,
     EVENT_ROW("'undo-2', 1, NULL, 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventOfNoJob", foreign,
     EVENT_ROW("'new', 99, NULL, 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventJobNull", not_null,
     EVENT_ROW("'new', NULL, NULL, 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventStepEmpty", check,
     EVENT_ROW("'new', 1, '', 5, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventAtNull", not_null,
     EVENT_ROW("'new', 1, NULL, NULL, 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventAtText", datatype,
     EVENT_ROW("'new', 1, NULL, 'noon', 6, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventRecordedNull", not_null,
     EVENT_ROW("'new', 1, NULL, 5, NULL, 'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventKindUnknown", check,
     EVENT_ROW(WET "'poured', NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventKindNull", not_null,
     EVENT_ROW(WET "NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventMixedWithoutAStep", check,
     EVENT_ROW("'new', 1, NULL, 5, 6, 'mixed', NULL, 9, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventDoneWithoutAStep", check,
     EVENT_ROW("'new', 1, NULL, 5, 6, 'done', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMilestoneMissing", check,
     EVENT_ROW(WET "'milestone', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMilestoneEmpty", check,
     EVENT_ROW(WET "'milestone', '', NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMilestoneOfANote", check,
     EVENT_ROW(WET "'note', 'gel', NULL, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventMassMissing", check,
     EVENT_ROW(WET "'left', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMassOfANote", check,
     EVENT_ROW(WET "'note', NULL, 9, NULL, NULL, NULL, NULL, 'x', NULL")},
    {"EventMassNegative", check,
     EVENT_ROW(WET "'left', NULL, -1, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMassText", datatype,
     EVENT_ROW(WET "'left', NULL, 'much', NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMassReal", datatype,
     EVENT_ROW(WET "'left', NULL, 1.5, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventMixOfNothing", check,
     EVENT_ROW(WET "'mixed', NULL, 0, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventPartAAlone", check, EVENT_ROW(WET "'mixed', NULL, 9, 6, NULL, NULL, NULL, NULL, NULL")},
    {"EventPartBAlone", check, EVENT_ROW(WET "'mixed', NULL, 9, NULL, 3, NULL, NULL, NULL, NULL")},
    {"EventPartsAboveTheMix", check,
     EVENT_ROW(WET "'mixed', NULL, 9, 6, 4, NULL, NULL, NULL, NULL")},
    {"EventPartANegative", check, EVENT_ROW(WET "'mixed', NULL, 9, -1, 4, NULL, NULL, NULL, NULL")},
    {"EventPartBNegative", check, EVENT_ROW(WET "'mixed', NULL, 9, 6, -4, NULL, NULL, NULL, NULL")},
    {"EventPartsOfWhatWasLeft", check,
     EVENT_ROW(WET "'left', NULL, 9, 6, 3, NULL, NULL, NULL, NULL")},
    {"EventConditionsWithout", check,
     EVENT_ROW(WET "'conditions', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventAirOfANote", check,
     EVENT_ROW(WET "'note', NULL, NULL, NULL, NULL, 293000, NULL, 'x', NULL")},
    {"EventHumidityOfANote", check,
     EVENT_ROW(WET "'note', NULL, NULL, NULL, NULL, NULL, 500000, 'x', NULL")},
    {"EventAirZero", check,
     EVENT_ROW(WET "'conditions', NULL, NULL, NULL, NULL, 0, NULL, NULL, NULL")},
    {"EventHumidityNegative", check,
     EVENT_ROW(WET "'conditions', NULL, NULL, NULL, NULL, NULL, -1, NULL, NULL")},
    {"EventHumidityAboveTheWhole", check,
     EVENT_ROW(WET "'conditions', NULL, NULL, NULL, NULL, NULL, 1000001, NULL, NULL")},
    {"LessonOfNone", foreign, "INSERT INTO lesson VALUES(3, 0, 5, 0)"},
    {"LessonOfHalf", check, "INSERT INTO lesson VALUES(3, 2, 5, 2)"},
    {"EventNoteMissing", check,
     EVENT_ROW(WET "'note', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventNoteEmpty", check,
     EVENT_ROW(WET "'done', NULL, NULL, NULL, NULL, NULL, NULL, '', NULL")},
    {"EventUndoOfNothing", check,
     EVENT_ROW(WET "'undo', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL")},
    {"EventUndoInANote", check,
     EVENT_ROW(WET "'note', NULL, NULL, NULL, NULL, NULL, NULL, 'x', 1")},
    {"EventUndoneTwice", trigger,
     EVENT_ROW(WET "'undo', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 2")},
    {"EventUndoOfItself", check,
     EVENT_ROW(WET "'undo', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 5")},
    {"EventUndoOfNone", foreign,
     EVENT_ROW(WET "'undo', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 0")},
};

}  // namespace

std::span<const Attack> attacks_on_records() { return attacks; }
std::span<const BadRow> bad_rows_of_records() { return bad_rows; }

}  // namespace wetout::joblog::testing
