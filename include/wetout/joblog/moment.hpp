// What every row of the log is dated and named with.
#pragma once

#include <chrono>

#include "wetout/base/sha256.hpp"

namespace wetout::joblog {

using base::Digest;
using Instant = std::chrono::sys_seconds;

}  // namespace wetout::joblog
