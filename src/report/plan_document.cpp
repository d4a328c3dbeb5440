#include "wetout/report/plan_document.hpp"

#include "json_reader.hpp"
#include "json_writer.hpp"
#include "plan_fields.hpp"
#include "wetout/base/check.hpp"

namespace wetout::report {

std::string to_json(const PlanDocument& document) { return document_json(plan_format, document); }

base::Result<PlanDocument> read_plan(std::string_view json) {
  const nlohmann::json parsed =
      nlohmann::json::parse(json.begin(), json.end(), nullptr, /*allow_exceptions=*/false);
  if (!parsed.is_object()) {
    return base::fail({.code = "document.syntax",
                       .message = "the document is not a JSON object",
                       .expected = R"({"format": "wetout.plan/1", ...})"});
  }
  base::Problems problems;
  const Path format{nullptr, "format", {}};
  const auto at = parsed.find("format");
  if (at == parsed.end()) {
    note_missing(format, problems);
    return base::fail(std::move(problems));
  }
  if (*at != plan_format) {
    note_wrong(*at, plan_format, format, problems);
    problems.back().code = "document.format";
    problems.back().message = "the document is not of a format that this version reads";
    problems.back().hint = "a newer version of the program may have written it";
    return base::fail(std::move(problems));
  }
  PlanDocument document;
  JsonReader reader(parsed, nullptr, problems);
  Fields<PlanDocument>::visit(reader, document);
  if (!problems.empty()) return base::fail(std::move(problems));
  return document;
}

PlanDocument as_kept(const PlanDocument& document) {
  base::Result<PlanDocument> kept = read_plan(to_json(document));
  base::promise(kept.has_value(), "a plan document that was written can be read");
  return *std::move(kept);
}

}  // namespace wetout::report
