#include "wetout/report/plan_document.hpp"

#include "json_reader.hpp"
#include "json_writer.hpp"
#include "plan_fields.hpp"
#include "wetout/base/check.hpp"

namespace wetout::report {

std::string to_json(const PlanDocument& document) { return document_json(plan_format, document); }

base::Result<PlanDocument> read_plan(std::string_view json) {
  return read_document<PlanDocument>(json, plan_format);
}

PlanDocument as_kept(const PlanDocument& document) {
  base::Result<PlanDocument> kept = read_plan(to_json(document));
  base::promise(kept.has_value(), "a plan document that was written can be read");
  return *std::move(kept);
}

}  // namespace wetout::report
