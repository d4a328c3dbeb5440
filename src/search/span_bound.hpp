// How good can boards be that share places? A bound by working spans.
//
// Of each part only the operations are kept that hold a place which is short, such as a stand, in
// their order; of each start only the working span. What is possible from span to span, and when
// the part may end, comes from arc consistency over all of its rules and alternatives. Places are
// then priced at the ends of spans (Lagrangian relaxation), each part takes its cheapest way, and
// the prices follow the demand. Every price gives a bound; the best is kept.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "wetout/search/objective.hpp"

namespace wetout::search {

struct SpanBoundInput {
  std::vector<std::vector<int>> parts = {};
  std::vector<std::int64_t> least = {};  ///< LastEnd of each part alone, at least
  std::int64_t known = 0;                ///< LastEnd of a known schedule, whole
};

/// A lower bound of LastEnd; nothing when its sets do not follow the parts or nothing is short.
std::optional<std::int64_t> span_bound(const Problem& problem, const LastEnd& term,
                                       const SpanBoundInput& input,
                                       const std::function<bool()>& stop);

}  // namespace wetout::search
