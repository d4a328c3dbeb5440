#include "wetout/base/shown.hpp"

#include <cstddef>

namespace wetout::base {
namespace {

/// Length of the valid UTF-8 sequence at the start of `text`, 0 when there is none.
std::size_t sequence(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  std::size_t length = 0;
  if (first < 0x80) return 1;
  if (first >= 0xc2 && first < 0xe0) length = 2;
  if (first >= 0xe0 && first < 0xf0) length = 3;
  if (first >= 0xf0 && first < 0xf5) length = 4;
  if (length == 0 || length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if (byte(i) < 0x80 || byte(i) > 0xbf) return 0;
  }
  // Overlong forms, surrogates and what lies beyond U+10FFFF.
  if ((first == 0xe0 && byte(1) < 0xa0) || (first == 0xed && byte(1) > 0x9f) ||
      (first == 0xf0 && byte(1) < 0x90) || (first == 0xf4 && byte(1) > 0x8f)) {
    return 0;
  }
  return length;
}

}  // namespace

std::string shown(std::string_view typed) {
  constexpr std::size_t most = 60;
  std::string out;
  for (std::size_t i = 0; i < typed.size();) {
    if (out.size() >= most) return out + "...";
    const std::size_t length = sequence(typed.substr(i));
    const auto byte = static_cast<unsigned char>(typed[i]);
    const bool control =
        byte < 0x20 || byte == 0x7f ||
        (byte == 0xc2 && length == 2 && static_cast<unsigned char>(typed[i + 1]) < 0xa0);
    if (length == 0 || control) {
      out += '?';
      i += length == 0 ? 1 : length;
    } else {
      out += typed.substr(i, length);
      i += length;
    }
  }
  return out;
}

}  // namespace wetout::base
