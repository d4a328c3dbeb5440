// What --help and `help` print, made from the description: plain text of at most 80 columns.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"

namespace wetout::cli {

/// How to use the program: its commands, and the options that all of them take.
std::string program_help(const Program& program);

/// A few lines for someone who typed the program's name alone.
std::string short_help(const Program& program);

/// How to use the command or subcommand at `path`.
std::string command_help(const Program& program, const std::vector<std::string_view>& path);

/// The exit codes with the command's own meanings in place of the shared ones.
std::vector<ExitMeaning> exits_of(const Command& command);

}  // namespace wetout::cli
