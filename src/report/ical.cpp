#include "ical.hpp"

#include <algorithm>

#include "layout.hpp"
#include "wetout/time/print.hpp"

namespace wetout::report::ical {
namespace {

constexpr std::size_t most_octets = 75;

bool is_inside_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

}  // namespace

std::string text(std::string_view value) {
  std::string out;
  std::string_view rest = value;
  while (true) {
    const std::size_t end = rest.find('\n');
    for (const char c : layout::plain(rest.substr(0, end))) {
      if (c == '\\' || c == ';' || c == ',') out += '\\';
      out += c;
    }
    if (end == std::string_view::npos) return out;
    out += "\\n";
    rest.remove_prefix(end + 1);
  }
}

std::string utc(time::Instant at) {
  std::string out;
  // "2026-06-13T16:15:00Z"
  for (const char c : time::rfc3339(at, time::Zone())) {
    if (c != '-' && c != ':') out += c;
  }
  return out;
}

std::string folded(std::string_view line) {
  std::string out;
  std::size_t room = most_octets;
  while (line.size() > room) {
    std::size_t end = room;
    while (end > 0 && is_inside_character(line[end])) --end;
    if (end == 0) end = room;  // no UTF-8: broken somewhere rather than never
    out += line.substr(0, end);
    out += "\r\n ";
    line.remove_prefix(end);
    room = most_octets - 1;
  }
  out += line;
  return out + "\r\n";
}

void Writer::line(std::string_view name, std::string_view value) {
  out_ += folded(std::string(name) + ":" + std::string(value));
}

}  // namespace wetout::report::ical
