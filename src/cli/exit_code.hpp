// What the process ends with. Scripts rely on these numbers.
#pragma once

namespace wetout::cli {

enum ExitCode : int {
  exit_done = 0,
  exit_input = 1,         ///< a file or name is not found, ambiguous or bad; the plan cannot be met
  exit_usage = 2,         ///< command, option or option value is bad
  exit_environment = 3,   ///< the log cannot be used, the disk is full, or a bug in wetout
  exit_interrupted = 130  ///< with nothing to show
};

}  // namespace wetout::cli
