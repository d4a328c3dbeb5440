// Any number of pieces, placed one after the other into the lowest gap.
#pragma once

#include "wetout/cloth/cutting.hpp"

namespace wetout::cloth {

/// A good cutting: many orders of the pieces, each with the first that fits into the lowest gap
/// [burke2004]; ends at `bound`. The same for the same pieces.
Cutting by_skylines(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn,
                    std::int64_t bound);

}  // namespace wetout::cloth
