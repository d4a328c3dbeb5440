// A text and its lines: from line and column, as the parser counts them, to the bytes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::files {

/// A place in a text: line and column from 1, columns in characters (code points).
struct Position {
  int line = 1;
  int column = 1;
  friend auto operator<=>(const Position&, const Position&) = default;
};

class Lines {
 public:
  /// `text` must outlive this. A byte-order mark is no part of the first line.
  explicit Lines(std::string_view text);

  /// Without its line end; empty beyond the last line.
  [[nodiscard]] std::string_view line(int number) const;
  /// The line for a message: empty when it is so long that the column lies beyond what is shown.
  [[nodiscard]] std::string shown(Position position) const;
  /// What stands from `begin` up to `end`, first line only ("..." after it), cut to be shown. Empty
  /// when it begins so far to the right that counting to it would cost more than it tells.
  [[nodiscard]] std::string slice(Position begin, Position end) const;
  [[nodiscard]] Position position(std::size_t byte) const;

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
};

/// Bytes of the first `characters` code points, or of the whole when there are fewer.
std::size_t bytes_of(std::string_view text, int characters);
int characters_of(std::string_view text);

}  // namespace wetout::files
