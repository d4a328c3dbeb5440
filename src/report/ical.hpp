// Content lines of iCalendar, RFC 5545.
#pragma once

#include <string>
#include <string_view>

#include "wetout/time/zone.hpp"

namespace wetout::report::ical {

/// Section 3.3.11: backslash, semicolon, comma and line break escaped. What TEXT cannot hold
/// (control characters, bytes that are not UTF-8) is made plain as in layout::plain.
std::string text(std::string_view value);

/// Section 3.3.5, form 2: "20260613T161500Z".
std::string utc(time::Instant at);

/// Section 3.1: lines of at most 75 octets before CRLF, those that go on begin with a space; never
/// broken inside a character.
std::string folded(std::string_view line);

/// Lines on their way out.
class Writer {
 public:
  /// `value` as it stands.
  void line(std::string_view name, std::string_view value);
  void begin(std::string_view component) { line("BEGIN", component); }
  void end(std::string_view component) { line("END", component); }
  [[nodiscard]] const std::string& written() const { return out_; }

 private:
  std::string out_;
};

}  // namespace wetout::report::ical
