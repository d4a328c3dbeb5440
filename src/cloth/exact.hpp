// The shortest cutting of a few pieces, by branch and bound.
#pragma once

#include "wetout/cloth/cutting.hpp"

namespace wetout::cloth {

/// Makes `best` (a whole cutting) shorter until it is proved or too many nodes have been seen.
void shorten(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn,
             Cutting& best);

}  // namespace wetout::cloth
