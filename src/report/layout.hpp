// Lines of at most 80 columns for a terminal: cutting, padding and wrapping by displayed width.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::report::layout {

inline constexpr std::size_t page_columns = 80;

/// A space that wrapping leaves alone: "212 g" stays on one line. Page turns it into a space.
inline constexpr char glue = '\x1f';
/// `text` with its spaces glued.
std::string whole(std::string_view text);

/// Columns taken on a terminal; East Asian wide characters take two, combining marks none.
std::size_t columns(std::string_view text);

/// Names as they can be shown: control characters become spaces, bytes that are not UTF-8 '?'.
std::string plain(std::string_view text);

/// Cut to `width` columns, "..." marking the cut.
std::string fit(std::string_view text, std::size_t width);
/// Cut or padded to exactly `width` columns.
std::string left(std::string_view text, std::size_t width);
std::string right(std::string_view text, std::size_t width);
/// A line of the page with something at each end; the left end is cut when both do not fit.
std::string ends(std::string_view left_end, std::string_view right_end);

/// Broken at spaces into lines of at most `width` columns; a longer word is cut into pieces.
std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// Lines on their way out: no wider than the page, no blank at the end of one.
class Page {
 public:
  /// One line, cut to the page.
  void line(std::string_view text);
  /// At most one empty line in a row, none at the top.
  void blank();
  /// `label` and `text` wrapped beside it, each line indented.
  void item(std::string_view label, std::string_view text);
  /// Underlined across the page, `aside` at its right end.
  void heading(std::string_view text, std::string_view aside);
  /// A line that someone may copy, such as a path: never cut.
  void verbatim(std::string_view text);
  [[nodiscard]] const std::vector<std::string>& lines() const { return lines_; }
  [[nodiscard]] std::string text() const;

 private:
  std::vector<std::string> lines_;
};

}  // namespace wetout::report::layout
