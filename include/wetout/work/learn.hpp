// `learn`: the shop's own losses and speeds, from what was recorded.
#pragma once

#include <cstdint>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/learn_document.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct LearnRequest {
  std::vector<std::int64_t> forget = {};    ///< events that shall not count any more
  std::vector<std::int64_t> remember = {};  ///< that count again
};

/// What is to be forgotten and remembered is kept in the log, all or nothing (nothing on a dry
/// run), then all is learned anew. A log that does not exist yet says nothing. Problems: those of
/// joblog::Log::set_lesson; "event.both" for one that is to be forgotten and remembered;
/// "log.none".
base::Result<report::LearnDocument> learn(const Workshop& workshop,
                                          const LearnRequest& request = {});

}  // namespace wetout::work
