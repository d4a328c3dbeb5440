// What a label's windows say about the cost of the rest.
#pragma once

#include <vector>

#include "label_space.hpp"

namespace wetout::search {

class RestBound {
 public:
  RestBound(const Model& model, const ChainFrame& frame);

  /// Visits still to come at least. Two operations whose windows share no working block need two.
  std::int64_t visits(const Bucket& bucket, const Slot* columns);
  /// What the sum grows by at least, beyond the bucket's least_rest.
  [[nodiscard]] std::int64_t sum(const Bucket& bucket, const Slot* columns) const;

 private:
  const Model& model_;
  const ChainFrame& frame_;
  /// Per slot: number of the working block; between blocks, that of the one before. Blocks are
  /// further apart than what ends a visit. Empty: no such blocks.
  std::vector<int> block_;
  std::vector<std::pair<int, int>> ranges_;
};

}  // namespace wetout::search
