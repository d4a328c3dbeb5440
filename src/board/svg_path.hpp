// Numbers, path data and transforms as SVG writes them [svg2].
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cubic.hpp"

namespace wetout::board {

/// A row of numbers and letters, read one after the other.
class SvgText {
 public:
  explicit SvgText(std::string_view text) : text_(text) {}
  void skip_space();
  void skip_comma();  ///< spaces, at most one comma among them
  [[nodiscard]] bool done() const { return at_ >= text_.size(); }
  [[nodiscard]] char next() const { return done() ? '\0' : text_[at_]; }
  char take() { return text_[at_++]; }
  /// "-.5", "1e3", "1.": as much as is a number; nothing where none begins. Never infinite.
  std::optional<double> number();
  /// 0 or 1, which need no space after them.
  std::optional<bool> flag();
  [[nodiscard]] std::size_t place() const { return at_; }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

/// What is wrong, and after how many characters.
struct SvgWrong {
  std::size_t place = 0;
  std::string expected;
};

/// Every command of path data; arcs as cubics, within 1e-7 of their radius. Sub-paths without
/// length are left out. Where it is wrong, `wrong` says how and nothing is returned.
std::vector<Chain> read_path(std::string_view d, std::optional<SvgWrong>& wrong);

/// matrix, translate, scale, rotate, skewX, skewY, one after the other.
std::optional<Affine> read_transform(std::string_view text);

/// An ellipse about a centre, from its right side, as SVG draws it.
Chain ellipse(Vec centre, double rx, double ry);

}  // namespace wetout::board
