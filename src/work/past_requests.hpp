// Steps of a file of past boards as records.
#pragma once

#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/files/past_boards.hpp"
#include "wetout/work/record.hpp"

namespace wetout::work {

struct PastRequest {
  const files::PastStep* step = nullptr;
  RecordRequest request;
  std::string from;  ///< the day
};

struct PastRequests {
  std::vector<PastRequest> all;  ///< in the order of the file, without what could not be read
  base::Problems problems;       ///< with their places
};

/// Quantities and times are read; names are not looked at yet. Each request has a token made of
/// what its step says: the second of equal steps is a second one.
PastRequests past_requests(const files::PastBoards& past);

/// A problem of recording the step, at the fact that it is about.
base::Problem at_fact(base::Problem problem, const files::PastBoards& past,
                      const files::PastStep& step);

}  // namespace wetout::work
