// A whole run of the program but for the process around it.
#pragma once

#include <string>
#include <vector>

#include "context.hpp"

namespace wetout::cli {

/// `args` without the program's name. Sets context.program. Throws what a command throws.
int run(const std::vector<std::string>& args, Context& context);

}  // namespace wetout::cli
