#include "wetout/report/record_document.hpp"

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "ledger_fields.hpp"

namespace wetout::report {

template <>
struct Fields<RecordedFact> {
  static void visit(auto& v, const RecordedFact& fact) {
    v("number", fact.number);
    v("token", fact.token);
    v("already", fact.already);
    v("kind", fact.kind);
    v("step", fact.step);
    v("at", fact.at);
    v("recorded", fact.recorded);
    v("mass_g", fact.mass, as::Grams{});
    v("part_a_g", fact.part_a, as::Grams{});
    v("part_b_g", fact.part_b, as::Grams{});
    v("milestone", fact.milestone);
    v("air_c", fact.air, as::Celsius{});
    v("rh_pct", fact.humidity, as::Percent{});
    v("note", fact.note);
    v("undoes", fact.undoes);
    v("undone_by", fact.undone_by);
    v("counts", fact.counts);
  }
};
template <>
struct Fields<StepTotal> {
  static void visit(auto& v, const StepTotal& total) {
    v("step", total.step);
    v("coat", total.coat);
    v("planned_g", total.planned, as::Grams{});
    v("mixed_g", total.mixed, as::Grams{});
    v("part_a_g", total.part_a, as::Grams{});
    v("part_b_g", total.part_b, as::Grams{});
    v("left_g", total.left, as::Grams{});
    v("spilled_g", total.spilled, as::Grams{});
    v("started", total.started);
    v("done", total.done);
  }
};
template <>
struct Fields<RecordedJob> {
  static void visit(auto& v, const RecordedJob& job) {
    v("id", job.id);
    v("name", job.name);
    v("revision", job.revision);
    v("began", job.began);
    v("brought_back", job.brought_back);
  }
};
template <>
struct Fields<RecordDocument> {
  static void visit(auto& v, const RecordDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("action", document.action);
    v("saved", document.saved);
    v("job", document.job);
    v("events", document.events);
    v("undone", document.undone);
    v("booked", document.booked);
    v("totals", document.totals);
    v("cautions", document.cautions);
    v("notices", document.notices);
  }
};

std::string to_json(const RecordDocument& document) {
  return document_json(record_format, document);
}

}  // namespace wetout::report
