// The plan as a document: what is kept in the log and what every printed form is made from.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/problems_document.hpp"

namespace wetout::report {

inline constexpr std::string_view plan_format = "wetout.plan/1";

struct JobRef {
  std::string id;
  int revision = 0;    ///< 0 when not saved
  bool saved = false;  ///< false for a dry run
};
struct InputRef {
  std::string role;  ///< job | shop | options
  std::string name;
  std::string sha256;  ///< lower-case hex
};

struct PlanDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  JobRef job;
  std::vector<InputRef> inputs;
  laminate::Plan plan;
};

/// One JSON object on one line, keys in the order of docs/formats/plan.schema.json, LF at the end.
/// Masses to 1 mg, areas to 1e-6 m², lengths to 1e-6 m, times to 0.01 min.
std::string to_json(const PlanDocument& document);

/// Reads what to_json wrote, by this version or an older one of the same format number; unknown
/// keys are ignored. Problems: "document.syntax", "document.format", "document.key".
base::Result<PlanDocument> read_plan(std::string_view json);

/// The document as it is kept: every number at the precision of the JSON. What is printed is made
/// from this, so that a plan reads the same on the day it was made and out of the log.
PlanDocument as_kept(const PlanDocument& document);

}  // namespace wetout::report
