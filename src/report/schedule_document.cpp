#include "wetout/report/schedule_document.hpp"

#include "json_reader.hpp"
#include "json_writer.hpp"
#include "plan_fields.hpp"
#include "schedule_answer_fields.hpp"
#include "schedule_input_fields.hpp"

namespace wetout::report {

std::string_view to_string(StepState state) {
  constexpr std::array<std::string_view, 3> words = {"planned", "fixed", "done"};
  return words[static_cast<std::size_t>(state)];
}

/// Everything but `format`.
template <>
struct Fields<ScheduleDocument> {
  static void visit(auto& v, auto& document) {
    v("program", document.program);
    v("made", document.made);
    visit_count(v, "number", document.number);
    v("saved", document.saved);
    v("prefer", document.prefer);
    v("jobs", document.jobs);
    v("horizon", document.horizon);
    v("weather", document.weather);
    v("calendars", document.calendars);
    v("resources", document.resources);
    v("resins", document.resins);
    v("steps", document.steps);
    v("choices", document.choices);
    v("timeline", document.timeline);
    v("finish", document.finish);
    v("ride_from", document.ride_from);
    v("objective", document.objective);
    v("optimal", document.optimal);
    v("bound", document.bound);
    v("gap", document.gap, as::Share{});
    v("bound_leaves_out", document.bound_leaves_out);
    v("stopped", document.stopped);
    v("windows", document.windows);
    v("alternatives", document.alternatives);
    v("changed", document.changed);
    v("changed_since", document.changed_since);
    v("impossible", document.impossible);
    v("assumptions", document.assumptions);
    v("cautions", document.cautions);
    v("notices", document.notices);
  }
};

std::string to_json(const ScheduleDocument& document) {
  return document_json(schedule_format, document);
}

base::Result<ScheduleDocument> read_schedule(std::string_view json) {
  return read_document<ScheduleDocument>(json, schedule_format);
}

}  // namespace wetout::report
