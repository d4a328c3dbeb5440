#include "svg.hpp"

#include <fmt/format.h>

#include "layout.hpp"

namespace wetout::report {

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : layout::plain(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

void Svg::line(double x1, double y1, double x2, double y2, std::string_view attributes) {
  body_ += fmt::format("<line x1=\"{:.2f}\" y1=\"{:.2f}\" x2=\"{:.2f}\" y2=\"{:.2f}\" {}/>\n", x1,
                       y1, x2, y2, attributes);
}

void Svg::rect(double x, double y, double width, double height, std::string_view attributes) {
  body_ += fmt::format("<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" {}/>\n",
                       x, y, width, height, attributes);
}

void Svg::text(double x, double y, std::string_view text, std::string_view anchor,
               std::string_view attributes) {
  body_ += fmt::format("<text x=\"{:.2f}\" y=\"{:.2f}\" text-anchor=\"{}\" {}>{}</text>\n", x, y,
                       anchor, attributes, escaped(text));
}

}  // namespace wetout::report
