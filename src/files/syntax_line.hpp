// The line on which the parser gave up, taken apart as far as that can be done without its help.
#pragma once

#include <cstddef>
#include <string_view>

namespace wetout::files {

inline constexpr std::size_t none = std::string_view::npos;

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_blank(char c) { return c == ' ' || c == '\t'; }
inline bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::size_t skip_blanks(std::string_view line, std::size_t at);
std::string_view trimmed(std::string_view text);

/// Index of the quote that closes the one at `open`, or none.
std::size_t closing(std::string_view line, std::size_t open);

/// What stands around the place where the parser gave up, on that line alone.
struct Around {
  std::string_view line;
  std::size_t error = 0;      ///< byte
  std::size_t value = 0;      ///< where the value (or key) at fault begins
  std::size_t equals = none;  ///< the last '=' before it
  std::size_t brace = none;   ///< the '{' that is open there
  bool in_list = false;
  bool member = false;  ///< of a list in brackets: the key stands before the bracket

  [[nodiscard]] std::string_view rest() const { return line.substr(value); }
  /// The value up to a comma, a closing bracket or a comment.
  [[nodiscard]] std::string_view token() const;
  /// The same for a value with quotes in it; `from` lies behind the first that closes one.
  [[nodiscard]] std::string_view token_with_quotes(std::size_t from) const;
  /// Before the last '='.
  [[nodiscard]] std::string_view key() const;
};

/// `error` is the byte at which the parser gave up.
Around look(std::string_view line, std::size_t error);

}  // namespace wetout::files
