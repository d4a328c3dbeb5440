// A first look at a command line: which command it is, and slips that are best told before values
// are handed out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "describe.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::cli {

struct Scanned {
  std::vector<std::string_view> path = {};  ///< {"jobs", "show"}, names of the description
  std::vector<std::string> rest = {};       ///< the arguments without the words of the path
  bool help = false;
  bool version = false;
  base::Problems problems = {};
};

/// Options may stand before the command; `--` ends them. A default subcommand is filled in unless
/// help is asked for.
Scanned scan(const Program& program, const std::vector<std::string>& args);

}  // namespace wetout::cli
