#include "layout.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace wetout::report::layout {
namespace {

constexpr std::string_view ellipsis = "...";

struct Range {
  std::uint32_t first, last;
};
// East Asian Width W and F in broad strokes (Unicode Standard Annex 11), and emoji.
constexpr std::array wide = {
    Range{0x1100, 0x115F},   Range{0x2E80, 0xA4CF},   Range{0xAC00, 0xD7A3},
    Range{0xF900, 0xFAFF},   Range{0xFE30, 0xFE6F},   Range{0xFF00, 0xFF60},
    Range{0xFFE0, 0xFFE6},   Range{0x1F300, 0x1F64F}, Range{0x1F680, 0x1F6FF},
    Range{0x1F900, 0x1F9FF}, Range{0x20000, 0x3FFFD}};
// Combining marks, joiners and direction marks.
constexpr std::array narrow = {Range{0x0300, 0x036F}, Range{0x200B, 0x200F}, Range{0x202A, 0x202E},
                               Range{0x2060, 0x206F}, Range{0x20D0, 0x20FF}, Range{0xFE00, 0xFE0F},
                               Range{0xFEFF, 0xFEFF}};

bool within(const auto& ranges, std::uint32_t code) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [code](Range r) { return code >= r.first && code <= r.last; });
}

struct Character {
  std::size_t bytes = 1;
  std::uint32_t code = 0;
  bool valid = true;
};

// The character that begins at `at`; a byte that begins none stands alone and is not valid.
Character character_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(at);
  if (first < 0x80) return {1, first, true};
  const std::size_t bytes = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + bytes > text.size()) return {1, '?', false};
  std::uint32_t code = first & (0x7FU >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(at + i) & 0xC0U) != 0x80U) return {1, '?', false};
    code = (code << 6U) | (byte(at + i) & 0x3FU);
  }
  return {bytes, code, true};
}

std::size_t columns_of(Character c) {
  return within(narrow, c.code) ? 0 : within(wide, c.code) ? 2 : 1;
}

// Bytes of the longest beginning of `text` that is at most `width` columns.
std::size_t beginning(std::string_view text, std::size_t width) {
  std::size_t at = 0;
  std::size_t used = 0;
  while (at < text.size()) {
    const Character c = character_at(text, at);
    used += columns_of(c);
    if (used > width) break;
    at += c.bytes;
  }
  return at;
}

}  // namespace

std::string whole(std::string_view text) {
  std::string out(text);
  std::replace(out.begin(), out.end(), ' ', glue);
  return out;
}

std::size_t columns(std::string_view text) {
  std::size_t used = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    used += columns_of(c);
    at += c.bytes;
  }
  return used;
}

std::string plain(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    const bool control = c.code < 0x20 || (c.code >= 0x7F && c.code < 0xA0);
    const bool turns_text = c.code >= 0x202A && c.code <= 0x202E;
    if (control || turns_text) {
      out += ' ';
    } else if (c.valid) {
      out += text.substr(at, c.bytes);
    } else {
      out += '?';
    }
    at += c.bytes;
  }
  return out;
}

std::string fit(std::string_view text, std::size_t width) {
  if (columns(text) <= width) return std::string(text);
  if (width <= ellipsis.size()) return std::string(ellipsis.substr(0, width));
  std::string out(text.substr(0, beginning(text, width - ellipsis.size())));
  while (!out.empty() && (out.back() == ' ' || out.back() == glue)) out.pop_back();
  return out += ellipsis;
}

std::string left(std::string_view text, std::size_t width) {
  std::string out = fit(text, width);
  return out.append(width - columns(out), ' ');
}

std::string right(std::string_view text, std::size_t width) {
  const std::string cut = fit(text, width);
  return std::string(width - columns(cut), ' ') + cut;
}

std::string ends(std::string_view left_end, std::string_view right_end) {
  constexpr std::size_t gap = 2;
  const std::string aside = fit(right_end, page_columns * 5 / 8);
  if (aside.empty()) return fit(left_end, page_columns);
  return left(left_end, page_columns - columns(aside) - gap) + std::string(gap, ' ') + aside;
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  std::string line;
  const auto finish = [&] {
    if (!line.empty()) lines.push_back(std::move(line));
    line.clear();
  };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    std::string_view word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    if (!line.empty() && columns(line) + 1 + columns(word) > width) finish();
    while (columns(word) > width) {
      // A character wider than the line would never fit: take it whole.
      const std::size_t cut = std::max(beginning(word, width), character_at(word, 0).bytes);
      lines.emplace_back(word.substr(0, cut));
      word.remove_prefix(cut);
    }
    if (word.empty()) continue;
    if (!line.empty()) line += ' ';
    line += word;
  }
  finish();
  return lines;
}

void Page::line(std::string_view text) {
  std::string out = fit(text, page_columns);
  std::replace(out.begin(), out.end(), glue, ' ');
  out.erase(out.find_last_not_of(' ') + 1);
  if (out.empty()) return blank();
  lines_.push_back(std::move(out));
}

void Page::blank() {
  if (!lines_.empty() && !lines_.back().empty()) lines_.emplace_back();
}

void Page::item(std::string_view label, std::string_view text) {
  const std::size_t indent = columns(label);
  std::string before(label);
  for (const std::string& part : wrap(text, page_columns - indent)) {
    line(before + part);
    before.assign(indent, ' ');
  }
}

void Page::heading(std::string_view text, std::string_view aside) {
  blank();
  line(ends(text, aside));
  line(std::string(page_columns, '-'));
}

void Page::verbatim(std::string_view text) { lines_.emplace_back(text); }

std::string Page::text() const {
  std::string out;
  for (const std::string& each : lines_) {
    out += each;
    out += '\n';
  }
  return out;
}

}  // namespace wetout::report::layout
