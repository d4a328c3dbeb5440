// Where pieces of cloth are cut off a roll: rectangles on a strip, as short as can be.
// Lengths are whole hundredths of a millimetre, so that what fits does so exactly
// (docs/models/cloth.md).
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace wetout::cloth {

struct Piece {
  std::int64_t length = 0;  ///< along the roll, with the warp
  std::int64_t width = 0;
};

/// `along`: from where the cutting begins; `edge`: from the roll's left edge.
struct Placed {
  std::size_t piece = 0;
  std::int64_t along = 0;
  std::int64_t edge = 0;
  bool turned = false;  ///< by 90 degrees; a half turn makes no difference to a rectangle
};

struct Cutting {
  std::int64_t length = 0;     ///< to take off the roll
  std::int64_t bound = 0;      ///< none can be shorter
  bool proved = false;         ///< this is the shortest
  std::vector<Placed> pieces;  ///< in order of cutting: by `along`, then by `edge`
};

/// From up to so many pieces the shortest is sought, and proved.
inline constexpr std::size_t most_proved = 8;

/// Pieces on a roll of this width. Every piece is larger than nothing and fits the width, else it
/// is a bug; none gives length 0. `may_turn`: of a cloth without a warp direction of its own.
/// Up to most_proved pieces by branch and bound, else skylines from many orders, the same for the
/// same pieces; with the best lower bound of several.
Cutting cut(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn = false);

/// A lower bound for any cutting: area, the longest piece, pieces that do not lie side by side
/// (dual feasible functions [fekete2001]).
std::int64_t least_length(const std::vector<Piece>& pieces, std::int64_t roll_width,
                          bool may_turn = false);

struct Remnant {
  std::int64_t length = 0;
  std::int64_t width = 0;
};
struct FromRemnant {
  std::size_t remnant = 0;
  std::vector<Placed> pieces;
};
struct Shares {
  std::vector<FromRemnant> remnants;  ///< those that are used
  std::vector<std::size_t> left;      ///< pieces that none holds: off the roll
};
/// Remnants first, the smallest that hold something first; of each, the largest pieces that fit.
Shares use_remnants(const std::vector<Piece>& pieces, const std::vector<Remnant>& remnants,
                    bool may_turn = false);

}  // namespace wetout::cloth
