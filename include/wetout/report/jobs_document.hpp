// The jobs of the log: the answer of `jobs list`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::report {

inline constexpr std::string_view jobs_format = "wetout.jobs/1";

struct JobLine {
  std::string id;
  std::string name;
  std::string created;                  ///< RFC 3339 with offset
  std::optional<std::string> archived;  ///< when, or nothing
  std::optional<int> revision;          ///< of the last plan, nothing without one
  std::optional<std::string> made;      ///< when that was
};
struct JobsDocument {
  std::string program;
  std::string made;
  std::vector<JobLine> jobs;
};

/// One line; docs/formats/jobs.schema.json.
std::string to_json(const JobsDocument& document);
std::string to_text(const JobsDocument& document);

}  // namespace wetout::report
