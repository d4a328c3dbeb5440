// One part seen by working spans: which of its operations hold short places, from which span to
// which they can go on, and when it may end.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "domains.hpp"
#include "model.hpp"

namespace wetout::search {

/// Consecutive starts [first, end) that are not told apart; nothing starts in the gaps.
struct Cell {
  Slot first = 0;
  Slot end = 0;
};

/// A place kept for sure during [from, to).
struct Sure {
  int place = -1;
  int amount = 0;
  Slot from = 0;
  Slot to = 0;
};

struct Stage {
  int op = -1;                               ///< in the model of the part
  std::vector<bool> open = {};               ///< per cell
  std::vector<std::vector<Sure>> sure = {};  ///< per cell
  /// Per cell: cells of the next stage that can follow. Of the last stage: nothing.
  std::vector<std::vector<int>> next = {};
};

struct Ways {
  std::vector<Stage> stages = {};
  std::vector<std::int64_t> last_end = {};  ///< least, per cell of the last stage
};

/// Cells of the calendar that the problem's operations share, or of equal size.
std::vector<Cell> make_cells(const Problem& problem);

/// Empty stages when the part holds none of `short_places` for certain.
Ways make_ways(const Model& model, const std::vector<Cell>& cells,
               const std::vector<bool>& short_places, const std::function<bool()>& stop);

}  // namespace wetout::search
