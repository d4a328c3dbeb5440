#include "lines.hpp"

#include <algorithm>

#include "wetout/base/shown.hpp"

namespace wetout::files {
namespace {

constexpr int widest_shown = 400;     // characters of a line in a message
constexpr int widest_counted = 4000;  // columns worth counting to
constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }

// A terminal must not obey what a file holds.
std::string without_controls(std::string_view text) {
  std::string out(text);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const auto c = static_cast<unsigned char>(out[i]);
    if (c == '\t') continue;
    if (c < 0x20 || c == 0x7f) out[i] = '?';
    // C1 controls are two bytes in UTF-8; one character stays one character for the caret.
    if (c == 0xc2 && i + 1 < out.size() && static_cast<unsigned char>(out[i + 1]) < 0xa0) {
      out.replace(i, 2, "?");
    }
  }
  return out;
}

}  // namespace

std::size_t bytes_of(std::string_view text, int characters) {
  int seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!starts_character(text[i])) continue;
    if (seen == characters) return i;
    ++seen;
  }
  return text.size();
}

int characters_of(std::string_view text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), starts_character));
}

Lines::Lines(std::string_view text) : text_(text) {
  if (text_.starts_with(byte_order_mark)) text_.remove_prefix(byte_order_mark.size());
  starts_.push_back(0);
  for (std::size_t i = text_.find('\n'); i != std::string_view::npos; i = text_.find('\n', i + 1)) {
    starts_.push_back(i + 1);
  }
}

std::string_view Lines::line(int number) const {
  if (number < 1 || static_cast<std::size_t>(number) > starts_.size()) return {};
  const auto index = static_cast<std::size_t>(number - 1);
  const std::size_t begin = starts_[index];
  const std::size_t end = index + 1 < starts_.size() ? starts_[index + 1] - 1 : text_.size();
  std::string_view line = text_.substr(begin, end - begin);
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

std::string Lines::shown(Position position) const {
  if (position.column > widest_shown) return {};
  const std::string_view whole = line(position.line);
  const std::size_t bytes = bytes_of(whole, widest_shown);
  return without_controls(whole.substr(0, bytes)) + (bytes < whole.size() ? "..." : "");
}

std::string Lines::slice(Position begin, Position end) const {
  if (begin.column > widest_counted) return {};
  const std::string_view whole = line(begin.line);
  const std::size_t from = bytes_of(whole, begin.column - 1);
  std::string_view rest = whole.substr(from);
  const bool more = end.line > begin.line;
  if (!more) rest = rest.substr(0, bytes_of(rest, std::max(0, end.column - begin.column)));
  while (rest.ends_with(' ')) rest.remove_suffix(1);
  return base::shown(rest) + (more ? " ..." : "");
}

Position Lines::position(std::size_t byte) const {
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), byte);
  const auto index = static_cast<std::size_t>(after - starts_.begin()) - 1;
  const std::string_view before = text_.substr(starts_[index], byte - starts_[index]);
  return {static_cast<int>(index) + 1, characters_of(before) + 1};
}

}  // namespace wetout::files
