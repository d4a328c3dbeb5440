#include "outline_sides.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace wetout::board {
namespace {

// Roots of a quadratic inside (0, 1).
std::vector<double> roots(double a, double b, double c) {
  std::vector<double> out;
  const auto keep = [&](double t) {
    if (t > 1e-9 && t < 1.0 - 1e-9) out.push_back(t);
  };
  if (std::abs(a) <= 1e-14 * (std::abs(b) + std::abs(c))) {
    if (b != 0.0) keep(-c / b);
    return out;
  }
  const double d = b * b - 4.0 * a * c;
  if (d <= 0.0) return out;
  const double q = -0.5 * (b + std::copysign(std::sqrt(d), b));
  keep(q / a);
  if (q != 0.0) keep(c / q);
  std::sort(out.begin(), out.end());
  return out;
}

bool is_flat(const Cubic& piece, double y, double near) {
  return std::all_of(piece.p.begin(), piece.p.end(),
                     [&](const Vec& v) { return std::abs(v.y - y) <= near; });
}

std::vector<Cubic> turned(const std::vector<Cubic>& pieces) {
  std::vector<Cubic> back;
  for (auto one = pieces.rbegin(); one != pieces.rend(); ++one) back.push_back(one->reversed());
  return back;
}

base::Problem doubles_back(double x) {
  return {.code = "outline.doubles_back",
          .message = fmt::format(
              "the outline doubles back {:.0f} mm from the tail: it has two widths there", x * 1e3),
          .expected = "a rail that runs from tail to nose without turning back"};
}

// Only pieces that go on; what stands still along the length (a cut end) is left out at the ends.
base::Result<Side> side_of(std::vector<Cubic> pieces, double near) {
  while (!pieces.empty() && std::abs(pieces.front().p[3].x - pieces.front().p[0].x) <= near * 1e-3)
    pieces.erase(pieces.begin());
  while (!pieces.empty() && std::abs(pieces.back().p[3].x - pieces.back().p[0].x) <= near * 1e-3)
    pieces.pop_back();
  for (const Cubic& piece : pieces) {
    if (piece.p[3].x < piece.p[0].x - near * 1e-3) return base::fail(doubles_back(piece.p[0].x));
    if (piece.p[3].x <= piece.p[0].x && std::abs(piece.p[3].y - piece.p[0].y) > near)
      return base::fail(doubles_back(piece.p[0].x));
  }
  std::erase_if(pieces, [](const Cubic& piece) { return piece.p[3].x <= piece.p[0].x; });
  if (pieces.empty()) {
    return base::fail(base::Problem{.code = "outline.open",
                                    .message = "the outline has no line from tail to nose"});
  }
  return Side(std::move(pieces));
}

}  // namespace

std::vector<Cubic> cut_at_turns(const std::vector<Cubic>& pieces) {
  std::vector<Cubic> out;
  for (const Cubic& piece : pieces) {
    const double a = piece.p[1].x - piece.p[0].x, b = piece.p[2].x - piece.p[1].x,
                 c = piece.p[3].x - piece.p[2].x;
    double from = 0.0;
    for (const double t : roots(a - 2.0 * b + c, 2.0 * (b - a), a)) {
      out.push_back(piece.part(from, t));
      from = t;
    }
    out.push_back(from == 0.0 ? piece : piece.part(from, 1.0));
    if (from > 0.0) out.back().p[3] = piece.p[3];
  }
  return out;
}

Side::Value Side::at(double x, bool ahead) const {
  // The piece that ends at x or holds it; the next one where what is ahead is asked for.
  auto piece = std::lower_bound(pieces_.begin(), pieces_.end(), x,
                                [](const Cubic& one, double at) { return one.p[3].x < at; });
  if (piece == pieces_.end()) --piece;
  if (ahead && piece->p[3].x <= x && piece + 1 != pieces_.end()) ++piece;
  double low = 0.0, high = 1.0;
  const double span = piece->p[3].x - piece->p[0].x;
  double t = std::clamp((x - piece->p[0].x) / span, 0.0, 1.0);
  if (x <= piece->p[0].x) {
    t = 0.0;
  } else if (x >= piece->p[3].x) {
    t = 1.0;
  } else {
    for (int i = 0; i < 80; ++i) {
      const double miss = piece->at(t).x - x;
      (miss < 0.0 ? low : high) = t;
      const double speed = piece->derivative(t).x;
      const double next = speed > 0.0 ? t - miss / speed : 0.5 * (low + high);
      const double to = next > low && next < high ? next : 0.5 * (low + high);
      if (to == t || std::abs(miss) < 1e-15) break;
      t = to;
    }
  }
  Vec d = piece->derivative(t);
  // At an end whose handle has no length the direction is that of the curve beside it.
  if (length(d) < 1e-9 * span) d = piece->derivative(t < 0.5 ? 1e-4 : 1.0 - 1e-4);
  return {piece->at(t).y, d.y / std::max(d.x, 1e-12 * std::max(1e-9, std::abs(d.y)))};
}

std::optional<double> Side::tip_radius(bool at_nose, double axis) const {
  const Cubic& piece = at_nose ? pieces_.back() : pieces_.front();
  const double t = at_nose ? 1.0 : 0.0;
  const Vec d = piece.derivative(t), dd = piece.second_derivative(t);
  const double bend = std::abs(cross(d, dd));
  if (board::length(d) > 0.0 && bend > 0.0 && std::abs(d.x) <= 1e-3 * board::length(d)) {
    return std::pow(board::length(d), 3) / bend;
  }
  // Handles without length, or not quite square: by how it looks a little farther on.
  constexpr double little = 1e-5, square = 30.0;
  const double away = little * (last() - first());
  const Value seen = at(at_nose ? last() - away : first() + away, true);
  if (std::abs(seen.slope) < square) return std::nullopt;
  return (seen.y - axis) * (seen.y - axis) / (2.0 * away);
}

base::Result<Sides> sides_of(const Chain& chain, double length, const Ends& ends,
                             double straight_within) {
  const double near = straight_within;
  const std::vector<Cubic> pieces = cut_at_turns(chain.pieces);
  const std::size_t n = pieces.size();
  const auto at_tail = [&](const Vec& v) { return v.x <= ends.tail; };
  const auto at_nose = [&](const Vec& v) { return v.x >= length - ends.nose; };
  Sides out;
  std::vector<std::vector<Cubic>> lines;
  if (!chain.closed) {
    // One half, from one end to the other.
    std::vector<Cubic> line = pieces;
    if (line.front().p[0].x > line.back().p[3].x) line = turned(line);
    lines.push_back(std::move(line));
  } else {
    // Runs between the two ends that touch neither on the way. Those that go from the nose to the
    // tail are turned.
    for (std::size_t start = 0; start < n; ++start) {
      const Vec& from = pieces[start].p[0];
      const bool tail = at_tail(from), nose = at_nose(from);
      if (!tail && !nose) continue;
      std::vector<Cubic> line;
      for (std::size_t k = 0; k < n; ++k) {
        const Cubic& piece = pieces[(start + k) % n];
        line.push_back(piece);
        if (at_tail(piece.p[3]) || at_nose(piece.p[3])) break;
      }
      const Vec& to = line.back().p[3];
      if (tail && at_nose(to))
        lines.push_back(std::move(line));
      else if (nose && at_tail(to))
        lines.push_back(turned(line));
      else if (tail && at_tail(to)) {
        for (const Cubic& piece : line)
          out.notch = std::max({out.notch, piece.p[0].x, piece.p[3].x});
      }
    }
    if (out.notch <= 2.0 * ends.tail + near) out.notch = 0.0;
    if (lines.size() != 2) {
      return base::fail(
          {.code = "outline.open",
           .message = "the outline does not run from the tail to the nose on both sides",
           .expected = "one closed line around the board, or around one half of it"});
    }
  }
  std::vector<std::optional<double>> flat;
  for (const auto& line : lines) {
    const double y = line.front().p[0].y;
    const bool is = std::all_of(line.begin(), line.end(),
                                [&](const Cubic& piece) { return is_flat(piece, y, near); });
    flat.push_back(is ? std::optional(y) : std::nullopt);
  }
  if (lines.size() == 2 && flat[0].has_value() != flat[1].has_value()) {
    // The straight edge is the centre line.
    out.axis = flat[0] ? *flat[0] : *flat[1];
    lines.erase(lines.begin() + (flat[0] ? 0 : 1));
  } else if (lines.size() == 2) {
    double low = lines[0].front().p[0].y, high = low;
    for (const auto& line : lines) {
      for (const Cubic& piece : line) {
        for (int i = 0; i <= 8; ++i) {
          const double y = piece.at(i / 8.0).y;
          low = std::min(low, y);
          high = std::max(high, y);
        }
      }
    }
    out.axis = 0.5 * (low + high);
  } else {
    // From the ends the rail goes to one side: the centre line is at the end that is farther from
    // it.
    const double tail = lines[0].front().p[0].y, nose = lines[0].back().p[3].y;
    double sum = 0.0;
    for (const Cubic& piece : lines[0]) sum += piece.at(0.5).y;
    const bool above = sum / static_cast<double>(lines[0].size()) > 0.5 * (tail + nose);
    out.axis = above ? std::min(tail, nose) : std::max(tail, nose);
  }
  for (auto& line : lines) {
    auto side = side_of(std::move(line), near);
    if (!side) return tl::unexpected(side.error());
    out.list.push_back(std::move(*side));
  }
  return out;
}

}  // namespace wetout::board
