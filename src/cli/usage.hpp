// How a command is typed, made from its description.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"

namespace wetout::cli {

/// "wetout jobs show", then "JOB", "[--revision N]": parts that a line break may stand between.
struct Usage {
  std::string lead = {};
  std::vector<std::string> items = {};
};

/// One for each form; of a command with subcommands, those of all of them.
std::vector<Usage> usages(const Program& program, const std::vector<std::string_view>& path);

/// On one line.
std::string to_string(const Usage& usage);

}  // namespace wetout::cli
