// What is wrong with files: the answer of `check`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view check_format = "wetout.check/1";

struct CheckedFile {
  std::string name;  ///< as the user named it
  base::Problems problems;
  base::Notices notices;
};
struct CheckDocument {
  std::string program;
  std::string made;
  std::vector<CheckedFile> files;
};

/// One line; `ok` of a file is true when it has no problems. docs/formats/check.schema.json.
std::string to_json(const CheckDocument& document);
std::string to_text(const CheckDocument& document, units::System system);

}  // namespace wetout::report
