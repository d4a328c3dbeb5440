// What is wrong, for programs and for people.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace wetout::report {

inline constexpr std::string_view problems_format = "wetout.problems/1";

/// {"format": "wetout.problems/1", "problems": [...]} on one line; what does not apply is null.
/// docs/formats/problems.schema.json.
std::string problems_json(const base::Problems& problems);

/// Each with file, line, column, the line of the file with a caret under the place, what was found,
/// what is expected, and the next step; lines of at most 80 columns where no name is longer.
std::string problems_text(const base::Problems& problems);

}  // namespace wetout::report
