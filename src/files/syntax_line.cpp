#include "syntax_line.hpp"

#include <array>
#include <string>

namespace wetout::files {

std::size_t skip_blanks(std::string_view line, std::size_t at) {
  while (at < line.size() && is_blank(line[at])) ++at;
  return at;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::size_t closing(std::string_view line, std::size_t open) {
  const char quote = line[open];
  for (std::size_t i = open + 1; i < line.size(); ++i) {
    if (line[i] == '\\' && quote == '"') {
      ++i;
    } else if (line[i] == quote) {
      return i;
    }
  }
  return none;
}

std::string_view Around::token() const {
  return trimmed(rest().substr(0, rest().find_first_of(",]}#")));
}

std::string_view Around::token_with_quotes(std::size_t from) const {
  const std::string_view whole = rest();
  std::size_t end = from;
  while (end < whole.size()) {
    const bool comment = whole[end] == '#' && is_blank(whole[end - 1]);
    if (comment || (in_list && std::string_view(",]}").find(whole[end]) != none)) break;
    ++end;
  }
  return trimmed(whole.substr(0, end));
}

std::string_view Around::key() const {
  if (equals == none) return {};
  const std::string_view before = trimmed(line.substr(0, equals));
  const std::size_t cut = before.find_last_of(",{ \t");
  return cut == none ? before : trimmed(before.substr(cut + 1));
}

Around look(std::string_view line, std::size_t error) {
  Around around{line, error, skip_blanks(line, 0)};
  std::string open;  // brackets, as a stack
  std::array<std::size_t, 32> braces{};
  std::size_t depth = 0;
  for (std::size_t i = 0; i < error && i < line.size(); ++i) {
    const char c = line[i];
    if (c == '"' || c == '\'') {
      const std::size_t close = closing(line, i);
      if (close == none || close >= error) break;
      i = close;
    } else if (c == '=' || c == ',' || c == '[' || c == '{') {
      around.value = skip_blanks(line, i + 1);
      if (c == '=') around.equals = i;
      if (c == '=' || c == '[') around.member = c == '[';
      if (c == '{' && depth < braces.size()) braces[depth++] = i;
      if (c == '[') open += c;
    } else if (c == '}' && depth > 0) {
      --depth;
    } else if (c == ']' && !open.empty()) {
      open.pop_back();
    } else if (c == '#') {
      break;
    }
  }
  if (depth > 0) around.brace = braces[depth - 1];
  around.in_list = !open.empty() || depth > 0;
  return around;
}

}  // namespace wetout::files
