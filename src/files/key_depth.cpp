#include "key_depth.hpp"

#include <algorithm>

namespace wetout::files {
namespace {

constexpr std::size_t none = std::string_view::npos;

/// Behind the string that begins at `at`. One line only, unless it has three quotes.
std::size_t behind_string(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string_view three = quote == '"' ? R"(""")" : "'''";
  const bool lines = text.substr(at, 3) == three;
  for (std::size_t i = at + (lines ? 3 : 1); i < text.size(); ++i) {
    if (text[i] == '\\' && quote == '"') {
      ++i;
    } else if (lines && text.substr(i, 3) == three) {
      // Two more quotes may belong to the text before the three that close it.
      i += 3;
      for (int extra = 0; extra < 2 && i < text.size() && text[i] == quote; ++extra) ++i;
      return i;
    } else if (!lines && text[i] == quote) {
      return i + 1;
    } else if (!lines && text[i] == '\n') {
      return i;
    }
  }
  return text.size();
}

}  // namespace

std::optional<std::size_t> too_many_parts(std::string_view text) {
  int parts = 1;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (c == '"' || c == '\'') {
      i = behind_string(text, i);
      continue;
    }
    if (c == '#') {
      i = std::min(text.find('\n', i), text.size());
      continue;
    }
    if (c == '.') {
      if (++parts > most_key_parts) return i;
    } else if (std::string_view("\n=,[]{}").find(c) != none) {
      parts = 1;
    }
    ++i;
  }
  return std::nullopt;
}

}  // namespace wetout::files
