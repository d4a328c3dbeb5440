// What is wrong, as text for stderr.
#pragma once

#include <cstddef>
#include <string>

#include "wetout/base/problem.hpp"

namespace wetout::cli {

/// The first `most` problems as report::problems_text lays them out, marked "error:", those without
/// a file as from wetout itself; then how many more there are. Lines of at most 80 columns.
std::string problems_text(const base::Problems& problems, std::size_t most, bool colour);

}  // namespace wetout::cli
