#include "skyline.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <random>
#include <utility>

namespace wetout::cloth {
namespace {

constexpr int most_orders = 40'000;
constexpr std::size_t most_work = 300'000'000;  // orders times pieces squared

struct Level {
  std::int64_t edge = 0, width = 0, along = 0;
};

class Skyline {
 public:
  Skyline(const std::vector<Piece>& pieces, std::int64_t width, bool may_turn)
      : pieces_(pieces), width_(width), may_turn_(may_turn) {}

  // `order`: of pieces, those to be preferred first.
  Cutting fill(const std::vector<std::size_t>& order) {
    Cutting cutting;
    levels_.assign(1, {0, width_, 0});
    std::vector<std::size_t> rest = order;
    while (!rest.empty()) {
      const auto lowest =
          std::min_element(levels_.begin(), levels_.end(),
                           [](const Level& a, const Level& b) { return a.along < b.along; });
      const auto at = static_cast<std::size_t>(lowest - levels_.begin());
      const auto [which, turned] = fitting(rest, levels_[at].width);
      if (which == rest.size()) {
        raise(at);
        continue;
      }
      put(cutting, rest[which], turned, at);
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(which));
    }
    return cutting;
  }

 private:
  // One that takes all of the gap's width, else the first that fits.
  [[nodiscard]] std::pair<std::size_t, bool> fitting(const std::vector<std::size_t>& rest,
                                                     std::int64_t gap) const {
    std::pair<std::size_t, bool> first{rest.size(), false};
    for (std::size_t i = 0; i < rest.size(); ++i) {
      for (const bool turned : {false, true}) {
        if (turned && !may_turn_) continue;
        const std::int64_t width = turned ? pieces_[rest[i]].length : pieces_[rest[i]].width;
        if (width == gap) return {i, turned};
        if (width < gap && first.first == rest.size()) first = {i, turned};
      }
    }
    return first;
  }

  void put(Cutting& cutting, std::size_t piece, bool turned, std::size_t at) {
    const std::int64_t length = turned ? pieces_[piece].width : pieces_[piece].length;
    const std::int64_t width = turned ? pieces_[piece].length : pieces_[piece].width;
    Level& level = levels_[at];
    // Beside the higher neighbour, so that what is left of the gap is next to the lower one.
    const std::int64_t before = at == 0 ? high : levels_[at - 1].along;
    const std::int64_t after = at + 1 == levels_.size() ? high : levels_[at + 1].along;
    const bool to_left = before >= after;
    const Level up{to_left ? level.edge : level.edge + level.width - width, width,
                   level.along + length};
    cutting.pieces.push_back({piece, level.along, up.edge, turned});
    cutting.length = std::max(cutting.length, up.along);
    if (level.width == width) {
      level = up;
    } else {
      level.width -= width;
      if (to_left) level.edge += width;
      const auto place = static_cast<std::ptrdiff_t>(to_left ? at : at + 1);
      levels_.insert(levels_.begin() + place, up);
    }
    join();
  }

  // Too narrow for what is left: lost, up to its lower neighbour.
  void raise(std::size_t at) {
    const std::int64_t before = at == 0 ? high : levels_[at - 1].along;
    const std::int64_t after = at + 1 == levels_.size() ? high : levels_[at + 1].along;
    levels_[at].along = std::min(before, after);
    join();
  }

  void join() {
    for (std::size_t i = 0; i + 1 < levels_.size();) {
      if (levels_[i].along == levels_[i + 1].along) {
        levels_[i].width += levels_[i + 1].width;
        levels_.erase(levels_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      } else {
        ++i;
      }
    }
  }

  static constexpr std::int64_t high = std::numeric_limits<std::int64_t>::max();
  const std::vector<Piece>& pieces_;
  std::int64_t width_;
  bool may_turn_;
  std::vector<Level> levels_;
};

}  // namespace

Cutting by_skylines(const std::vector<Piece>& pieces, std::int64_t roll_width, bool may_turn,
                    std::int64_t bound) {
  Skyline skyline(pieces, roll_width, may_turn);
  std::vector<std::size_t> order(pieces.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  Cutting best;
  std::vector<std::size_t> best_order;
  const auto offer = [&](const std::vector<std::size_t>& tried) {
    Cutting cutting = skyline.fill(tried);
    const bool is_better = best.pieces.empty() || cutting.length < best.length;
    const bool is_as_good = !is_better && cutting.length == best.length;
    if (is_better) best = std::move(cutting);
    if (is_better || is_as_good) best_order = tried;
  };
  const auto sorted_by = [&](auto&& size) {
    std::vector<std::size_t> sorted = order;
    std::stable_sort(sorted.begin(), sorted.end(), [&](std::size_t a, std::size_t b) {
      return size(pieces[a]) > size(pieces[b]);
    });
    offer(sorted);
  };
  sorted_by([](const Piece& p) { return p.width; });
  sorted_by([](const Piece& p) { return p.length; });
  sorted_by([](const Piece& p) { return p.length * p.width; });
  sorted_by([](const Piece& p) { return std::max(p.length, p.width); });
  // From the best order on: two pieces change places, or one moves.
  std::mt19937 random(20260613);
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
  const std::size_t squared = std::max<std::size_t>(1, order.size() * order.size());
  const int orders = static_cast<int>(std::min<std::size_t>(most_orders, most_work / squared));
  for (int n = 0; n < orders && best.length > bound && order.size() > 1; ++n) {
    std::vector<std::size_t> tried = best_order;
    for (std::size_t moves = 1 + below(3); moves > 0; --moves) {
      const std::size_t a = below(tried.size()), b = below(tried.size());
      if (below(2) == 0) {
        std::swap(tried[a], tried[b]);
      } else {
        const std::size_t piece = tried[a];
        tried.erase(tried.begin() + static_cast<std::ptrdiff_t>(a));
        tried.insert(tried.begin() + static_cast<std::ptrdiff_t>(b), piece);
      }
    }
    offer(tried);
  }
  return best;
}

}  // namespace wetout::cloth
