#include "wetout/report/ledger_document.hpp"

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "ledger_fields.hpp"

namespace wetout::report {

template <>
struct Fields<LedgerJob> {
  static void visit(auto& v, const LedgerJob& job) {
    v("id", job.id);
    v("name", job.name);
    v("revision", job.revision);
  }
};
template <>
struct Fields<PlanVsActual> {
  static void visit(auto& v, const PlanVsActual& row) {
    v("coat", row.coat);
    v("material", row.material);
    v("unit", row.used.unit);
    v("planned", in_units(row.planned), as::Plain{});
    v("recorded", in_units(row.recorded), as::Plain{});
    v("used", in_units(row.used), as::Plain{});
    v("planned_cost", row.planned_cost);
    v("cost", known(row.cost));
  }
};
template <>
struct Fields<StepWork> {
  static void visit(auto& v, const StepWork& work) {
    v("step", work.step);
    v("minutes", work.minutes);
    v("cost", work.cost);
    v("booked", work.booked);
  }
};
template <>
struct Fields<JobSums> {
  static void visit(auto& v, const JobSums& sums) {
    v("planned_goods", sums.planned_goods);
    v("goods", known(sums.goods));
    v("labour", known(sums.labour));
    v("minutes", sums.minutes);
    v("waste_pct", sums.waste_share, as::Percent{});
  }
};
template <>
struct Fields<GoodsFlow> {
  static void visit(auto& v, const GoodsFlow& flow) {
    v("amount", in_units(flow.amount), as::Plain{});
    v("cost", known(flow.cost));
  }
};
template <>
struct Fields<MaterialSums> {
  static void visit(auto& v, const MaterialSums& sums) {
    v("material", sums.material);
    v("name", sums.name);
    v("unit", sums.on_hand.amount.unit);
    v("received", sums.received);
    v("used", sums.used);
    v("wasted", sums.wasted);
    v("adjusted", sums.adjusted);
    v("on_hand", sums.on_hand);
  }
};
template <>
struct Fields<MonthSums> {
  static void visit(auto& v, const MonthSums& sums) {
    v("month", sums.month);
    v("received", known(sums.received));
    v("used", known(sums.used));
    v("wasted", known(sums.wasted));
    v("adjusted", known(sums.adjusted));
    v("labour", known(sums.labour));
    v("minutes", sums.minutes);
  }
};
template <>
struct Fields<BoardSums> {
  static void visit(auto& v, const BoardSums& sums) {
    v("job", sums.job);
    v("name", sums.name);
    v("goods", known(sums.goods));
    v("labour", known(sums.labour));
    v("minutes", sums.minutes);
    v("cost", known(sums.all));
  }
};
template <>
struct Fields<LedgerDocument> {
  static void visit(auto& v, const LedgerDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("action", document.action);
    v("saved", document.saved);
    v("currency", document.currency.empty() ? std::nullopt : std::optional(document.currency));
    v("job", document.job);
    v("entries", document.entries);
    v("earlier", document.earlier);
    v("undone", document.undone);
    v("cost", document.cost ? known(document.cost->all) : std::nullopt);
    v("sums", document.cost);
    v("plan_vs_actual", document.plan_vs_actual);
    v("work", document.work);
    v("by_month", document.months);
    v("by_material", document.materials);
    v("by_job", document.boards);
    v("notices", document.notices);
  }
};

std::string to_json(const LedgerDocument& document) {
  return document_json(ledger_format, document);
}

}  // namespace wetout::report
