// What every text for a terminal must be.
#pragma once

#include <cstdint>
#include <sstream>
#include <string>
#include <vector>

namespace wetout::report {

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

inline std::size_t characters(const std::string& line) {
  std::size_t n = 0;
  for (const char c : line) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++n;
  }
  return n;
}

/// Empty when all is well, else the first offending line. Wide characters of the generator
/// (U+6CE2, U+1F3C4) count twice.
inline std::string unfit_line(const std::string& text) {
  for (const std::string& line : lines_of(text)) {
    std::size_t columns = characters(line);
    for (const char* wide : {"\xe6\xb3\xa2", "\xf0\x9f\x8f\x84"}) {
      for (std::size_t at = line.find(wide); at != std::string::npos;
           at = line.find(wide, at + 1)) {
        ++columns;
      }
    }
    for (std::size_t at = line.find("\xcc\x81"); at != std::string::npos;
         at = line.find("\xcc\x81", at + 1)) {
      --columns;
    }
    const bool blank_end = !line.empty() && line.back() == ' ';
    bool control = false;
    for (const char c : line)
      control = control || static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    if (columns > 80 || blank_end || control) return line + "|";
  }
  return {};
}

}  // namespace wetout::report
