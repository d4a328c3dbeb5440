// Several programs at one log at the same time.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

/// Starts all writers at once, each of which says lines; returns the lines of all. A writer that
/// ends badly is a failure of the test.
std::vector<std::string> run_writers(
    int writers,
    const std::function<void(int writer, const std::function<void(std::string)>& say)>& work);

/// For writing, with a minute's patience.
OpenOptions patient();

}  // namespace wetout::joblog::testing
