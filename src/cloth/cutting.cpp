#include "wetout/cloth/cutting.hpp"

#include <algorithm>
#include <numeric>
#include <set>

#include "exact.hpp"
#include "skyline.hpp"
#include "wetout/base/check.hpp"

namespace wetout::cloth {
namespace {

constexpr std::int64_t most_parts = 20;

std::int64_t divided_up(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

bool fits(const Piece& piece, std::int64_t width, bool may_turn) {
  return piece.length > 0 && piece.width > 0 &&
         (piece.width <= width || (may_turn && piece.length <= width));
}

void in_order_of_cutting(std::vector<Placed>& pieces) {
  std::sort(pieces.begin(), pieces.end(), [](const Placed& a, const Placed& b) {
    return a.along != b.along ? a.along < b.along : a.edge < b.edge;
  });
}

}  // namespace

std::int64_t least_length(const std::vector<Piece>& pieces, std::int64_t roll_width,
                          bool may_turn) {
  std::int64_t area = 0, longest = 0;
  std::set<std::int64_t> widths{0};
  for (const Piece& piece : pieces) {
    base::promise(fits(piece, roll_width, may_turn), "a piece fits the roll");
    area += piece.length * piece.width;
    std::int64_t least = piece.length;
    if (may_turn && piece.length <= roll_width) least = std::min(least, piece.width);
    if (piece.width > roll_width) least = piece.width;  // lies across by its length only
    longest = std::max(longest, least);
    if (2 * piece.width <= roll_width) widths.insert(piece.width);
  }
  std::int64_t bound = std::max(longest, divided_up(area, roll_width));
  if (may_turn) return bound;
  // What is wider than all but `narrow` of the roll has it to itself, and what is narrower than
  // that counts for nothing.
  for (const std::int64_t narrow : widths) {
    std::int64_t sum = 0;
    for (const Piece& piece : pieces) {
      const bool alone = piece.width > roll_width - narrow;
      if (alone || piece.width >= narrow) sum += piece.length * (alone ? roll_width : piece.width);
    }
    bound = std::max(bound, divided_up(sum, roll_width));
  }
  // Of what is wider than half the roll one lies beside the other nowhere, than a third two at
  // most, and so on: widths rounded to parts of the roll.
  for (std::int64_t k = 1; k <= most_parts; ++k) {
    std::int64_t sum = 0;  // k times what counts
    for (const Piece& piece : pieces) {
      const std::int64_t parts = (k + 1) * piece.width;
      sum += piece.length *
             (parts % roll_width == 0 ? k * piece.width : parts / roll_width * roll_width);
    }
    bound = std::max(bound, divided_up(sum, k * roll_width));
  }
  return bound;
}

Cutting cut(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn) {
  Cutting best;
  best.bound = least_length(pieces, roll_width, may_turn);
  if (pieces.empty()) {
    best.proved = true;
    return best;
  }
  const std::int64_t bound = best.bound;
  best = by_skylines(pieces, roll_width, may_turn, bound);
  best.bound = bound;
  best.proved = best.length == bound;
  if (pieces.size() <= most_proved) shorten(pieces, roll_width, may_turn, best);
  in_order_of_cutting(best.pieces);
  return best;
}

Shares use_remnants(const std::vector<Piece>& pieces, const std::vector<Remnant>& remnants,
                    bool may_turn) {
  Shares shares;
  std::vector<std::size_t> by_size(remnants.size()), left(pieces.size());
  std::iota(by_size.begin(), by_size.end(), std::size_t{0});
  std::iota(left.begin(), left.end(), std::size_t{0});
  std::stable_sort(by_size.begin(), by_size.end(), [&](std::size_t a, std::size_t b) {
    return remnants[a].length * remnants[a].width < remnants[b].length * remnants[b].width;
  });
  std::stable_sort(left.begin(), left.end(), [&](std::size_t a, std::size_t b) {
    return pieces[a].length * pieces[a].width > pieces[b].length * pieces[b].width;
  });
  for (const std::size_t r : by_size) {
    const Remnant& remnant = remnants[r];
    std::vector<std::size_t> taken;
    std::vector<Piece> on_it;
    Cutting cutting;
    for (const std::size_t i : left) {
      if (taken.size() == most_proved) break;
      if (!fits(pieces[i], remnant.width, may_turn)) continue;
      on_it.push_back(pieces[i]);
      if (least_length(on_it, remnant.width, may_turn) > remnant.length) {
        on_it.pop_back();
        continue;
      }
      Cutting with = cut(on_it, remnant.width, may_turn);
      if (with.length > remnant.length) {
        on_it.pop_back();
        continue;
      }
      cutting = std::move(with);
      taken.push_back(i);
    }
    if (taken.empty()) continue;
    for (Placed& placed : cutting.pieces) placed.piece = taken[placed.piece];
    shares.remnants.push_back({r, std::move(cutting.pieces)});
    std::erase_if(left, [&](std::size_t i) {
      return std::find(taken.begin(), taken.end(), i) != taken.end();
    });
  }
  std::sort(left.begin(), left.end());
  shares.left = std::move(left);
  return shares;
}

}  // namespace wetout::cloth
