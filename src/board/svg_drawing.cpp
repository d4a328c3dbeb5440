#include <fmt/format.h>

#include <algorithm>
#include <cstring>
#include <pugixml.hpp>

#include "drawing.hpp"
#include "svg_path.hpp"
#include "wetout/base/shown.hpp"

namespace wetout::board {
namespace {

constexpr int most_levels = 100;
constexpr std::size_t most_shapes = 10'000;

struct Unit {
  std::string_view name;
  double pixels;
  bool is_length;
};
constexpr Unit units_of_svg[] = {{"mm", 96.0 / 25.4, true}, {"cm", 96.0 / 2.54, true},
                                 {"in", 96.0, true},        {"pt", 96.0 / 72.0, true},
                                 {"pc", 16.0, true},        {"Q", 96.0 / 101.6, true},
                                 {"px", 1.0, false},        {"", 1.0, false}};

class Reader {
 public:
  Reader(std::string_view bytes, std::string_view name) : bytes_(bytes), name_(name) {}

  base::Result<Drawing> run() {
    if (bytes_.size() > most_drawing_bytes) {
      return base::fail(problem("outline.too_large", "the drawing is larger than 16 MiB"));
    }
    if (bytes_.find("<!ENTITY") != std::string_view::npos) {
      return base::fail(
          problem("outline.entities", "the drawing declares entities: such a file is not read"));
    }
    pugi::xml_document document;
    const pugi::xml_parse_result read = document.load_buffer(bytes_.data(), bytes_.size());
    if (!read) {
      base::Problem one =
          problem("outline.not_svg", std::string("not well-formed XML: ") + read.description());
      one.line = line_at(read.offset);
      return base::fail(one);
    }
    const pugi::xml_node root = document.document_element();
    if (local(root) != "svg") {
      base::Problem one = problem("outline.not_svg", "this is XML, but no SVG drawing");
      one.found = "<" + std::string(root.name()) + ">";
      one.expected = "<svg ...>";
      return base::fail(one);
    }
    size(root);
    children(root, view_of(root, true), 1);
    if (!problems_.empty()) return base::fail(std::move(problems_));
    return std::move(out_);
  }

 private:
  static std::string_view local(const pugi::xml_node& node) {
    const std::string_view name = node.name();
    const std::size_t colon = name.find(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
  }

  [[nodiscard]] int line_at(std::ptrdiff_t offset) const {
    if (offset < 0) return 0;
    const auto end = std::min(static_cast<std::size_t>(offset), bytes_.size());
    return 1 + static_cast<int>(std::count(
                   bytes_.begin(), bytes_.begin() + static_cast<std::ptrdiff_t>(end), '\n'));
  }

  [[nodiscard]] base::Problem problem(std::string code, std::string message) const {
    return {.code = std::move(code), .message = std::move(message), .file = std::string(name_)};
  }

  void add(const pugi::xml_node& node, std::string code, std::string message, std::string key,
           std::string found, std::string expected) {
    base::Problem one = problem(std::move(code), std::move(message));
    one.line = line_at(node.offset_debug());
    const std::string id = node.attribute("id").value();
    one.key = std::string(local(node)) + (id.empty() ? "" : "#" + id) + " " + std::move(key);
    one.found = base::shown(found);
    one.expected = std::move(expected);
    if (problems_.size() < 20) problems_.push_back(std::move(one));
  }

  // Of an attribute in pixels; nothing where it is not there or in percent.
  struct Size {
    double pixels = 0.0;
    bool is_length = false;
  };
  static std::optional<Size> size_of(std::string_view text) {
    SvgText in(text);
    in.skip_space();
    const auto value = in.number();
    if (!value) return std::nullopt;
    std::string unit;
    while (!in.done() && in.next() != ' ') unit += in.take();
    in.skip_space();
    if (!in.done()) return std::nullopt;
    for (const Unit& one : units_of_svg) {
      if (one.name == unit) return Size{*value * one.pixels, one.is_length};
    }
    return std::nullopt;
  }

  double number(const pugi::xml_node& node, const char* key, double otherwise = 0.0) {
    const pugi::xml_attribute attribute = node.attribute(key);
    if (attribute.empty()) return otherwise;
    if (const auto size = size_of(attribute.value())) return size->pixels;
    add(node, "outline.number", "this is not a length in the drawing", key, attribute.value(),
        "a number with or without mm, cm, in, pt, pc, px");
    return otherwise;
  }

  struct Box {
    double x = 0, y = 0, width = 0, height = 0;
  };
  static std::optional<Box> view_box(const pugi::xml_node& node) {
    SvgText in(node.attribute("viewBox").value());
    double v[4];
    for (double& one : v) {
      in.skip_comma();
      const auto value = in.number();
      if (!value) return std::nullopt;
      one = *value;
    }
    if (v[2] <= 0.0 || v[3] <= 0.0) return std::nullopt;
    return Box{v[0], v[1], v[2], v[3]};
  }

  // How large the drawing says it is.
  void size(const pugi::xml_node& root) {
    const auto width = size_of(root.attribute("width").value());
    const auto height = size_of(root.attribute("height").value());
    out_.has_size = (width && width->is_length) || (height && height->is_length);
  }

  // From the inside of an svg element to its parent: [svg2], 8.2 and 8.6.
  Affine view_of(const pugi::xml_node& node, bool is_root) {
    const auto width = size_of(node.attribute("width").value());
    const auto height = size_of(node.attribute("height").value());
    Affine placed;
    if (!is_root) {
      placed.e = number(node, "x");
      placed.f = number(node, "y");
    }
    const auto box = view_box(node);
    if (!box || (!width && !height)) return placed;
    double sx = width ? width->pixels / box->width : height->pixels / box->height;
    double sy = height ? height->pixels / box->height : sx;
    double dx = 0.0, dy = 0.0;
    if (std::strncmp(node.attribute("preserveAspectRatio").value(), "none", 4) != 0) {
      const double s = std::min(sx, sy);
      // In the middle; where it lies does not matter to an outline.
      dx = (sx - s) * box->width / 2.0;
      dy = (sy - s) * box->height / 2.0;
      sx = sy = s;
    }
    return placed.after({sx, 0, 0, sy, dx - sx * box->x, dy - sy * box->y});
  }

  static bool is_hidden(const pugi::xml_node& node) {
    const std::string_view style = node.attribute("style").value();
    return std::strcmp(node.attribute("display").value(), "none") == 0 ||
           style.find("display:none") != std::string_view::npos ||
           style.find("display: none") != std::string_view::npos;
  }

  void children(const pugi::xml_node& parent, const Affine& placed, int level) {
    if (level > most_levels) {
      if (!too_deep_)
        add(parent, "outline.too_deep", "groups are nested deeper than anyone draws", "", "",
            "at most 100 levels");
      too_deep_ = true;
      return;
    }
    for (const pugi::xml_node& node : parent.children()) {
      if (node.type() != pugi::node_element || is_hidden(node)) continue;
      Affine own = placed;
      if (const pugi::xml_attribute transform = node.attribute("transform"); !transform.empty()) {
        const auto moved = read_transform(transform.value());
        if (!moved) {
          add(node, "outline.transform", "this transform cannot be read", "transform",
              transform.value(), "e.g. translate(10 20) rotate(90)");
          continue;
        }
        own = placed.after(*moved);
      }
      const std::string_view what = local(node);
      if (what == "g" || what == "a" || what == "switch") {
        children(node, own, level + 1);
      } else if (what == "svg") {
        children(node, own.after(view_of(node, false)), level + 1);
      } else if (what == "use") {
        out_.has_copies = true;
      } else {
        shape(node, what, own);
      }
    }
  }

  void shape(const pugi::xml_node& node, std::string_view what, const Affine& placed) {
    std::vector<Chain> chains;
    if (what == "path") {
      chains = path(node);
    } else if (what == "polyline" || what == "polygon") {
      chains = points(node, what == "polygon");
    } else if (what == "line") {
      const Vec from{number(node, "x1"), number(node, "y1")},
          to{number(node, "x2"), number(node, "y2")};
      if (length(to - from) > 0.0) chains = {{{straight(from, to)}, false}};
    } else if (what == "rect") {
      chains = rectangle(node);
    } else if (what == "circle" || what == "ellipse") {
      const double r = number(node, "r");
      const double rx = what == "circle" ? r : number(node, "rx");
      const double ry = what == "circle" ? r : number(node, "ry");
      if (rx > 0.0 && ry > 0.0)
        chains = {ellipse({number(node, "cx"), number(node, "cy")}, rx, ry)};
    } else {
      return;  // texts, pictures, what is only defined
    }
    if (chains.empty()) return;
    DrawnShape out{
        node.attribute("id").value(), std::string(what), line_at(node.offset_debug()), {}};
    for (Chain& chain : chains) {
      for (Cubic& piece : chain.pieces) piece = placed.of(piece);
      pieces_ += chain.pieces.size();
    }
    out.chains = std::move(chains);
    out_.shapes.push_back(std::move(out));
    if ((pieces_ > most_drawing_pieces || out_.shapes.size() > most_shapes) && problems_.empty()) {
      add(node, "outline.too_many", "the drawing has more lines than any outline", "", "",
          "the outline alone, at most 1 000 000 pieces in 10 000 shapes");
    }
  }

  std::vector<Chain> path(const pugi::xml_node& node) {
    std::optional<SvgWrong> wrong;
    const std::string_view d = node.attribute("d").value();
    auto chains = read_path(d, wrong);
    if (wrong) {
      add(node, "outline.path",
          fmt::format("the path cannot be read after {} characters", wrong->place), "d",
          std::string(d.substr(std::min(wrong->place, d.size()), 24)), wrong->expected);
    }
    return chains;
  }

  std::vector<Chain> points(const pugi::xml_node& node, bool closed) {
    SvgText in(node.attribute("points").value());
    std::vector<Vec> list;
    for (in.skip_comma(); !in.done(); in.skip_comma()) {
      const auto x = in.number();
      in.skip_comma();
      const auto y = in.number();
      if (!x || !y) {
        add(node, "outline.path",
            fmt::format("the points cannot be read after {} characters", in.place()), "points", "",
            "pairs of numbers, e.g. 0,0 10,5");
        return {};
      }
      list.push_back({*x, *y});
    }
    if (closed && !list.empty()) list.push_back(list.front());
    Chain chain{{}, closed};
    for (std::size_t i = 1; i < list.size(); ++i) {
      if (length(list[i] - list[i - 1]) > 0.0)
        chain.pieces.push_back(straight(list[i - 1], list[i]));
    }
    if (chain.pieces.empty()) return {};
    return {std::move(chain)};
  }

  std::vector<Chain> rectangle(const pugi::xml_node& node) {
    const double x = number(node, "x"), y = number(node, "y");
    const double w = number(node, "width"), h = number(node, "height");
    if (w <= 0.0 || h <= 0.0) return {};
    const bool has_rx = !node.attribute("rx").empty(), has_ry = !node.attribute("ry").empty();
    double rx = number(node, "rx", number(node, "ry")), ry = number(node, "ry", number(node, "rx"));
    if (!has_rx && !has_ry) rx = ry = 0.0;
    rx = std::clamp(rx, 0.0, w / 2.0);
    ry = std::clamp(ry, 0.0, h / 2.0);
    std::optional<SvgWrong> none;
    return read_path(
        fmt::format("M{} {}H{}A{} {} 0 0 1 {} {}V{}A{} {} 0 0 1 {} {}H{}A{} {} 0 0 1 {} {}V{}A{} "
                    "{} 0 0 1 {} {}Z",
                    x + rx, y, x + w - rx, rx, ry, x + w, y + ry, y + h - ry, rx, ry, x + w - rx,
                    y + h, x + rx, rx, ry, x, y + h - ry, y + ry, rx, ry, x + rx, y),
        none);
  }

  std::string_view bytes_, name_;
  Drawing out_;
  base::Problems problems_;
  std::size_t pieces_ = 0;
  bool too_deep_ = false;
};

}  // namespace

base::Result<Drawing> read_svg(std::string_view bytes, std::string_view name) {
  return Reader(bytes, name).run();
}

}  // namespace wetout::board
