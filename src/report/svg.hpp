// Pieces of an SVG drawing, in millimetres of paper.
#pragma once

#include <string>
#include <string_view>

namespace wetout::report {

/// Text between tags or quotes, for XML; what it cannot hold as layout::plain() shows it.
std::string escaped(std::string_view text);

class Svg {
 public:
  /// `attributes` as they stand in the tag: `stroke-dasharray="2 1"`.
  void line(double x1, double y1, double x2, double y2, std::string_view attributes = {});
  void rect(double x, double y, double width, double height, std::string_view attributes);
  /// `anchor`: "start", "middle", "end".
  void text(double x, double y, std::string_view text, std::string_view anchor = "start",
            std::string_view attributes = {});
  /// As it stands.
  void raw(std::string_view xml) { body_ += xml; }
  [[nodiscard]] const std::string& body() const { return body_; }

 private:
  std::string body_;
};

}  // namespace wetout::report
