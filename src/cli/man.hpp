// Manual pages, made from the description, in the roff of the man macros.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"

namespace wetout::cli {

/// wetout(1).
std::string program_manual(const Program& program);

/// wetout-plan(1); a command with subcommands has one page for all of them.
std::string command_manual(const Program& program, std::string_view command);

}  // namespace wetout::cli
