// The commands that exist in this build: made from WETOUT_COMMANDS of CMakeLists.txt.
#pragma once

#include <string_view>
#include <vector>

#include "context.hpp"
#include "parsed.hpp"

namespace wetout::cli {

/// Each stands in its own command_<name>.cpp.
using Run = int (*)(const Parsed&, Context&);

struct Row {
  std::string_view name;
  Run run;
};

const std::vector<Row>& registry();

/// True for a command with a row.
bool is_offered(std::string_view command);

/// The description of the commands that are offered.
const Program& offered_program();

}  // namespace wetout::cli
