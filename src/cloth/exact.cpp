#include "exact.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_set>

namespace wetout::cloth {
namespace {

constexpr std::size_t most_nodes = 3'000'000;
constexpr std::size_t most_kept = 400'000;  // states seen, to be seen once only

struct Corner {
  std::int64_t edge = 0, along = 0;
};

// What is placed reaches as far as a staircase; nothing is placed below it again. Some shortest
// cutting is made so, each piece at an inner corner of the stairs, in an order in which none lies
// beyond a later one both ways [martello2003].
class Search {
 public:
  Search(const std::vector<Piece>& pieces, std::int64_t width, bool may_turn, Cutting& best)
      : pieces_(pieces), width_(width), may_turn_(may_turn), best_(best) {
    for (const Piece& piece : pieces) area_left_ += piece.length * piece.width;
  }

  void run() {
    if (best_.length > best_.bound) {
      std::vector<Corner> ground{{0, 0}};
      place(0U, ground);
    }
    best_.proved = best_.length == best_.bound || nodes_ < most_nodes;
    if (best_.proved) best_.bound = best_.length;
  }

 private:
  // Stairs: corners with `edge` rising and `along` falling; the last stair ends at along 0. Between
  // two corners lies what reaches to the one's along.
  [[nodiscard]] std::int64_t under(const std::vector<Corner>& stairs) const {
    std::int64_t area = 0;
    for (std::size_t i = 0; i < stairs.size(); ++i) {
      const std::int64_t to = i + 1 < stairs.size() ? stairs[i + 1].edge : width_;
      area += (to - stairs[i].edge) * stairs[i].along;
    }
    return area;
  }

  static std::vector<Corner> with(const std::vector<Corner>& stairs, std::int64_t edge_end,
                                  std::int64_t along_end) {
    // The stairs over what both cover: where the piece reaches farther, it is the stair.
    std::vector<Corner> next;
    const auto add = [&](Corner corner) {
      if (!next.empty() && next.back().along == corner.along) return;
      if (!next.empty() && next.back().edge == corner.edge) {
        next.back() = corner;
        return;
      }
      next.push_back(corner);
    };
    std::int64_t beyond = 0;  // along of the stairs at edge_end
    for (const Corner& corner : stairs) {
      if (corner.edge <= edge_end) beyond = corner.along;
    }
    for (const Corner& corner : stairs) {
      if (corner.edge < edge_end) {
        add({corner.edge, std::max(corner.along, along_end)});
      }
    }
    add({edge_end, std::min(beyond, along_end)});
    for (const Corner& corner : stairs) {
      if (corner.edge > edge_end) add(corner);
    }
    return next;
  }

  [[nodiscard]] std::string state(unsigned mask, const std::vector<Corner>& stairs) const {
    std::string key(reinterpret_cast<const char*>(&mask), sizeof mask);
    key.append(reinterpret_cast<const char*>(stairs.data()), stairs.size() * sizeof(Corner));
    return key;
  }

  void place(unsigned mask, const std::vector<Corner>& stairs) {
    if (done_ || ++nodes_ >= most_nodes) return;
    const unsigned all = (1U << pieces_.size()) - 1U;
    if (mask == all) {
      std::int64_t reached = 0;
      for (std::size_t i = 0; i < placed_.size(); ++i) reached = std::max(reached, ends_[i]);
      if (reached < best_.length) {
        best_.length = reached;
        best_.pieces.assign(placed_.begin(), placed_.end());
        seen_.clear();
        done_ = best_.length == best_.bound;
      }
      return;
    }
    // Strictly shorter than the best; what lies under the stairs is used or lost.
    if (area_left_ > width_ * (best_.length - 1) - under(stairs)) return;
    if (seen_.size() < most_kept && !seen_.insert(state(mask, stairs)).second) return;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      if ((mask >> i & 1U) != 0U || has_twin_before(mask, i)) continue;
      for (const bool turned : {false, true}) {
        if (turned && (!may_turn_ || pieces_[i].length == pieces_[i].width)) continue;
        const std::int64_t length = turned ? pieces_[i].width : pieces_[i].length;
        const std::int64_t width = turned ? pieces_[i].length : pieces_[i].width;
        for (const Corner& corner : stairs) {
          if (corner.edge + width > width_ || corner.along + length >= best_.length) continue;
          placed_.push_back({i, corner.along, corner.edge, turned});
          ends_.push_back(corner.along + length);
          area_left_ -= length * width;
          place(mask | 1U << i, with(stairs, corner.edge + width, corner.along + length));
          area_left_ += length * width;
          placed_.pop_back();
          ends_.pop_back();
          if (done_ || nodes_ >= most_nodes) return;
        }
      }
    }
  }

  // Of equal pieces the first one goes first.
  [[nodiscard]] bool has_twin_before(unsigned mask, std::size_t i) const {
    for (std::size_t j = 0; j < i; ++j) {
      if ((mask >> j & 1U) == 0U && pieces_[j].length == pieces_[i].length &&
          pieces_[j].width == pieces_[i].width) {
        return true;
      }
    }
    return false;
  }

  const std::vector<Piece>& pieces_;
  std::int64_t width_;
  bool may_turn_;
  Cutting& best_;
  std::int64_t area_left_ = 0;
  std::vector<Placed> placed_;
  std::vector<std::int64_t> ends_;
  std::unordered_set<std::string> seen_;
  std::size_t nodes_ = 0;
  bool done_ = false;
};

}  // namespace

void shorten(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn,
             Cutting& best) {
  Search(pieces, roll_width, may_turn, best).run();
}

}  // namespace wetout::cloth
