#include "wetout/board/read_outline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "drawing.hpp"
#include "outline_knots.hpp"
#include "outline_sides.hpp"

namespace wetout::board {
namespace {

constexpr double join_within = 0.5e-3;  // metres on the board
constexpr double cut_within = 2e-3;     // a cut end drawn by hand
constexpr double tip_within = 1e-6;     // of the length
constexpr double same_length = 5e-3;    // share
constexpr double uneven_told = 1e-3;    // metres
constexpr double uneven_refused = 0.1;  // of the width
constexpr double notch_told = 3e-3;

bool is_cut(const End& end) {
  return end.shape == EndShape::square || end.shape == EndShape::swallow;
}

struct Frame {
  Vec low{1e300, 1e300}, high{-1e300, -1e300};
  void add(Vec v) {
    low = {std::min(low.x, v.x), std::min(low.y, v.y)};
    high = {std::max(high.x, v.x), std::max(high.y, v.y)};
  }
};
Frame frame_of(const std::vector<Chain>& chains) {
  Frame frame;
  for (const Chain& chain : chains) {
    for (const Cubic& piece : cut_at_turns(chain.pieces)) {
      frame.add(piece.p[0]);
      frame.add(piece.p[3]);
    }
    std::vector<Cubic> across;
    for (const Cubic& piece : chain.pieces) {
      across.push_back(Affine{0, 1, 1, 0, 0, 0}.of(piece));
    }
    for (const Cubic& piece : cut_at_turns(across)) {
      frame.add({piece.p[0].y, piece.p[0].x});
      frame.add({piece.p[3].y, piece.p[3].x});
    }
  }
  return frame;
}

class Reading {
 public:
  Reading(const Drawing& drawing, std::string_view name, const OutlineRequest& request)
      : drawing_(drawing), name_(name), request_(request) {}

  base::Result<ReadOutline> run() {
    if (auto wrong = choose()) return base::fail(std::move(*wrong));
    if (auto wrong = place()) return base::fail(std::move(*wrong));
    if (auto wrong = join()) return base::fail(std::move(*wrong));
    settle();
    const double length = request_.length.si();
    const Ends ends{is_cut(request_.tail_end) ? cut_within : tip_within * length,
                    is_cut(request_.nose_end) ? cut_within : tip_within * length};
    auto sides = sides_of(chains_.front(), length, ends, join_within);
    if (!sides) return base::fail(there(std::move(sides.error())));
    auto knots = knots_of(*sides, length, {!is_cut(request_.tail_end), !is_cut(request_.nose_end)});
    if (!knots) return base::fail(there(std::move(knots.error())));
    out_.is_half = sides->list.size() == 1;
    out_.drawn = std::move(knots->drawn);
    out_.asymmetry = units::metres(knots->uneven);
    tell(*sides, knots->widest);
    if (auto wrong = compare_ends(knots->widest)) return base::fail(std::move(*wrong));
    double widest = -1.0;
    for (const Knot& knot : out_.drawn.knots) {
      out_.width.push_back({knot.from_tail, 2.0 * knot.half_width});
      if (knot.half_width.si() > widest) {
        widest = knot.half_width.si();
        out_.wide_point = knot.from_tail;
      }
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] base::Problem problem(std::string code, std::string message) const {
    base::Problem one{
        .code = std::move(code), .message = std::move(message), .file = std::string(name_)};
    if (shape_ != nullptr) {
      one.line = shape_->line;
      one.key = shape_->what + (shape_->id.empty() ? "" : "#" + shape_->id);
    }
    return one;
  }
  [[nodiscard]] base::Problems there(base::Problems problems) const {
    for (base::Problem& one : problems) {
      const base::Problem placed = problem("", "");
      one.file = placed.file;
      one.line = placed.line;
      one.key = placed.key;
    }
    return problems;
  }

  [[nodiscard]] std::string ids() const {
    std::string list;
    for (const DrawnShape& shape : drawing_.shapes) {
      if (shape.id.empty() || list.size() > 200) continue;
      list += (list.empty() ? "" : ", ") + shape.id;
    }
    return list.empty() ? "shapes with an id" : list;
  }

  // The shape that is asked for; else the only one that is closed; else all of the lines.
  std::optional<base::Problem> choose() {
    if (drawing_.shapes.empty()) {
      base::Problem one = problem("outline.nothing", "there is no line in this drawing");
      one.expected = "a path, polygon or other shape of the outline";
      if (drawing_.has_copies) one.hint = "it uses copies (\"use\"): turn them into paths";
      return one;
    }
    std::vector<const DrawnShape*> closed;
    for (const DrawnShape& shape : drawing_.shapes) {
      if (!request_.id.empty()) {
        if (shape.id == request_.id) {
          shape_ = &shape;
          chains_ = shape.chains;
          return std::nullopt;
        }
        continue;
      }
      if (std::any_of(shape.chains.begin(), shape.chains.end(),
                      [](const Chain& c) { return c.closed; })) {
        closed.push_back(&shape);
      }
    }
    if (!request_.id.empty()) {
      base::Problem one = problem("outline.id", "the drawing has no shape of this id");
      one.found = request_.id;
      one.expected = ids();
      return one;
    }
    const bool several_closed =
        closed.size() > 1 || (closed.size() == 1 && closed.front()->chains.size() > 1);
    if (several_closed) {
      base::Problem one =
          problem("outline.which", "there are several closed shapes in this drawing");
      one.expected = "the outline's id: " + ids();
      one.hint = "name it, e.g. outline = \"" + std::string(name_.substr(name_.rfind('/') + 1)) +
                 "#outline\"";
      return one;
    }
    if (closed.size() == 1) {
      shape_ = closed.front();
      chains_ = shape_->chains;
      return std::nullopt;
    }
    for (const DrawnShape& shape : drawing_.shapes) {
      chains_.insert(chains_.end(), shape.chains.begin(), shape.chains.end());
    }
    return std::nullopt;
  }

  // Tail at 0, nose along x, in metres, as long as the board is.
  std::optional<base::Problem> place() {
    const Frame frame = frame_of(chains_);
    const double width = frame.high.x - frame.low.x, height = frame.high.y - frame.low.y;
    const bool stands = height >= width;
    const double drawn = std::max(width, height);
    if (!(drawn > 0.0) || !std::isfinite(drawn))
      return problem("outline.nothing", "the outline has no length");
    const Toward nose = request_.nose.value_or(Toward::up);
    const bool upright = nose == Toward::up || nose == Toward::down;
    if (stands != upright) {
      base::Problem one =
          problem("outline.nose", stands ? "the board stands upright in this drawing"
                                         : "the board lies across this drawing");
      one.found = request_.nose ? "nose = \"" + std::string(to_string(nose)) + "\"" : "";
      one.expected = stands ? "nose = \"up\" or \"down\"" : "nose = \"left\" or \"right\"";
      one.hint = std::string("outline = { file = \"board.svg\", nose = \"") +
                 (stands ? "up" : "right") + "\" }";
      return one;
    }
    const double s = request_.length.si() / drawn;
    Affine to;
    switch (nose) {
      case Toward::up:  // y down the page: the tail is at the largest
        to = {0, s, -s, 0, s * frame.high.y, -s * frame.low.x};
        break;
      case Toward::down:
        to = {0, s, s, 0, -s * frame.low.y, -s * frame.low.x};
        break;
      case Toward::right:
        to = {s, 0, 0, s, -s * frame.low.x, -s * frame.low.y};
        break;
      case Toward::left:
        to = {-s, 0, 0, s, s * frame.high.x, -s * frame.low.y};
        break;
    }
    for (Chain& chain : chains_) {
      for (Cubic& piece : chain.pieces) piece = to.of(piece);
    }
    if (drawing_.has_size) {
      out_.drawn_length = units::metres(drawn * drawing_.metres);
      if (std::abs(s / drawing_.metres - 1.0) > same_length) {
        out_.notices.push_back(
            {.code = "outline.scaled",
             .text = "the drawing is of another length: it is scaled to the board's",
             .subject = std::string(name_),
             .value = units::in_metres(out_.drawn_length),
             .limit = request_.length.si(),
             .unit = "m"});
      }
    }
    return std::nullopt;
  }

  // Into one line; pieces may run either way.
  std::optional<base::Problem> join() {
    std::vector<Chain> loose = std::move(chains_);
    std::stable_sort(loose.begin(), loose.end(), [](const Chain& a, const Chain& b) {
      return a.pieces.size() > b.pieces.size();
    });
    Chain line = std::move(loose.front());
    loose.erase(loose.begin());
    const auto near = [](Vec a, Vec b) { return board::length(a - b) <= join_within; };
    while (!loose.empty() && !line.closed) {
      bool found = false;
      for (std::size_t i = 0; i < loose.size() && !found; ++i) {
        std::vector<Cubic> more = loose[i].pieces;
        const auto turn = [&] {
          std::reverse(more.begin(), more.end());
          for (Cubic& piece : more) piece = piece.reversed();
        };
        const Vec begin = line.pieces.front().p[0], end = line.pieces.back().p[3];
        if (near(more.back().p[3], end) || near(more.front().p[0], begin)) turn();
        if (near(more.front().p[0], end)) {
          more.front().p[0] = end;
          line.pieces.insert(line.pieces.end(), more.begin(), more.end());
          found = true;
        } else if (near(more.back().p[3], begin)) {
          more.back().p[3] = begin;
          line.pieces.insert(line.pieces.begin(), more.begin(), more.end());
          found = true;
        }
        if (found) loose.erase(loose.begin() + static_cast<std::ptrdiff_t>(i));
      }
      if (!found) {
        base::Problem one =
            problem("outline.open", "the lines of this drawing do not join into one outline");
        one.expected =
            "one shape, or lines whose ends lie within 0.5 mm of each other on the board";
        return one;
      }
    }
    if (!line.closed && near(line.pieces.front().p[0], line.pieces.back().p[3])) {
      line.pieces.back().p[3] = line.pieces.front().p[0];
      line.closed = true;
    }
    chains_ = {std::move(line)};
    return std::nullopt;
  }

  // Joining may have moved an end.
  void settle() {
    const Frame frame = frame_of(chains_);
    const double s = request_.length.si() / (frame.high.x - frame.low.x);
    for (Cubic& piece : chains_.front().pieces) {
      piece = Affine{s, 0, 0, s, -s * frame.low.x, 0}.of(piece);
    }
  }

  void tell(const Sides& sides, double widest) {
    const auto say = [&](std::string code, std::string text, double value,
                         std::optional<double> limit) {
      out_.notices.push_back({.code = std::move(code),
                              .text = std::move(text),
                              .subject = std::string(name_),
                              .value = value,
                              .limit = limit,
                              .unit = "mm"});
    };
    if (out_.asymmetry.si() > uneven_told && out_.asymmetry.si() <= uneven_refused * 2.0 * widest) {
      say("outline.uneven", "the two sides differ: their mean is used", out_.asymmetry.si() * 1e3,
          std::nullopt);
    }
    const double said =
        request_.tail_end.shape == EndShape::swallow ? request_.tail_end.depth.si() : 0.0;
    if (sides.notch > 0.0 && std::abs(sides.notch - said) > notch_told) {
      say("outline.notch", "the drawing has a notch in the tail: the job file's is used",
          sides.notch * 1e3, said * 1e3);
    }
  }

  std::optional<base::Problem> compare_ends(double widest) {
    if (out_.asymmetry.si() > uneven_refused * 2.0 * widest) {
      base::Problem one = problem("outline.uneven", fmt::format("the two sides differ by {:.0f} mm",
                                                                out_.asymmetry.si() * 1e3));
      one.expected =
          "a board that lies along the page, or one half with its straight edge on the centre line";
      return one;
    }
    const auto end = [&](const End& said, const Knot& knot,
                         std::string_view which) -> std::optional<base::Problem> {
      const bool drawn_cut = knot.half_width.si() > 0.0;
      if (drawn_cut == is_cut(said)) return std::nullopt;
      base::Problem one =
          problem("outline.end", fmt::format("the {} of the drawing {}", which,
                                             drawn_cut ? fmt::format("is cut off, {:.0f} mm wide",
                                                                     2e3 * knot.half_width.si())
                                                       : "ends in a point or a curve"));
      one.expected = fmt::format("{} = \"{}\" in [board]", which, drawn_cut ? "square" : "round");
      return one;
    };
    if (auto wrong = end(request_.tail_end, out_.drawn.knots.front(), "tail")) return wrong;
    return end(request_.nose_end, out_.drawn.knots.back(), "nose");
  }

  const Drawing& drawing_;
  std::string_view name_;
  const OutlineRequest& request_;
  const DrawnShape* shape_ = nullptr;
  std::vector<Chain> chains_;
  ReadOutline out_;
};

}  // namespace

std::string_view to_string(Toward toward) {
  switch (toward) {
    case Toward::up:
      return "up";
    case Toward::down:
      return "down";
    case Toward::left:
      return "left";
    case Toward::right:
      return "right";
  }
  return "";
}

base::Result<ReadOutline> read_outline(std::string_view bytes, std::string_view name,
                                       const OutlineRequest& request) {
  const auto drawing = read_drawing(bytes, name);
  if (!drawing) return tl::unexpected(drawing.error());
  return Reading(*drawing, name, request).run();
}

}  // namespace wetout::board
