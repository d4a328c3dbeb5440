// The best schedule of one board, by trying all of them.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "rules.hpp"

namespace wetout::schedule::sample {

struct Way {
  /// Terms in the order that is preferred, then the sum of starts.
  std::vector<std::int64_t> value;
  std::vector<Slot> start;  ///< of each step, -1: done, or does not take place
  std::vector<int> chosen;  ///< option of each group
};

/// Nothing where nothing keeps the rules. Takes as long as it takes: for few steps on few slots.
std::optional<Way> best_way(const Setting& setting);

}  // namespace wetout::schedule::sample
