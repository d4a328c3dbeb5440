#include "wetout/report/outline_file.hpp"

#include <fmt/format.h>

#include <iterator>
#include <vector>

namespace wetout::report {
namespace {

using board::Hull;
using units::in_millimetres;

// Millionths of a millimetre: far below what the curves are off by.
constexpr std::string_view number = "{:.6f}";

std::string shown(double mm) {
  std::string text = fmt::format(fmt::runtime(number), mm);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

class SvgPath {
 public:
  explicit SvgPath(const Hull& hull)
      : length_(in_millimetres(hull.length())), half_(0.5 * in_millimetres(hull.max_width())) {}

  // Side 1: y above the centre line.
  [[nodiscard]] std::string at(Hull::Point p, int side) const {
    return shown(half_ + side * in_millimetres(p.y)) + ' ' + shown(length_ - in_millimetres(p.x));
  }

 private:
  double length_, half_;
};

}  // namespace

std::string outline_svg(const Hull& hull) {
  const SvgPath page(hull);
  const std::vector<Hull::Bezier> rail = hull.rail_beziers();
  std::string path = "M" + page.at(rail.front().p[0], 1);
  for (const Hull::Bezier& piece : rail) {
    path += "\nC" + page.at(piece.p[1], 1) + ' ' + page.at(piece.p[2], 1) + ' ' +
            page.at(piece.p[3], 1);
  }
  if (rail.back().p[3].y > units::Length()) path += "\nL" + page.at(rail.back().p[3], -1);
  for (auto piece = rail.rbegin(); piece != rail.rend(); ++piece) {
    path += "\nC" + page.at(piece->p[2], -1) + ' ' + page.at(piece->p[1], -1) + ' ' +
            page.at(piece->p[0], -1);
  }
  if (hull.notch() > units::Length()) path += "\nL" + page.at({hull.notch(), {}}, 1);
  const std::string width = shown(in_millimetres(hull.max_width()));
  const std::string height = shown(in_millimetres(hull.length()));
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}mm\" height=\"{}mm\" "
      "viewBox=\"0 0 {} {}\">\n{}\n<path id=\"outline\" fill=\"none\" stroke=\"#000\" "
      "stroke-width=\"0.2\" d=\"{}\nZ\"/>\n</svg>\n",
      width, height, width, height, outline_svg_mark, path);
}

std::string outline_dxf(const Hull& hull) {
  std::string text = fmt::format(
      "{}\n2\nHEADER\n999\n{}\n9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n"
      "0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\noutline\n66\n1\n10\n0.0\n20\n0.0\n30\n0.0\n70\n1\n",
      outline_dxf_begins, outline_dxf_mark);
  const auto vertex = [&](Hull::Point p, int side, double bulge) {
    fmt::format_to(std::back_inserter(text),
                   "0\nVERTEX\n8\noutline\n10\n{}\n20\n{}\n30\n0.0\n42\n{:.12f}\n",
                   shown(side * in_millimetres(p.y)), shown(in_millimetres(p.x)), bulge);
  };
  const std::vector<Hull::Bulge> rail = hull.rail_arcs();
  // x of the board is up the page and y to its right: what turns from x to y turns clockwise.
  for (const Hull::Bulge& one : rail) vertex(one.at, 1, -one.bulge);
  const bool is_tip = rail.back().at.y <= units::Length();
  for (std::size_t i = rail.size() - (is_tip ? 1 : 0); i-- > 0;) {
    if (i == 0 && rail.front().at.y <= units::Length()) break;
    vertex(rail[i].at, -1, i > 0 ? -rail[i - 1].bulge : 0.0);
  }
  if (hull.notch() > units::Length()) vertex({hull.notch(), {}}, 1, 0.0);
  return text + "0\nSEQEND\n8\noutline\n0\nENDSEC\n0\nEOF\n";
}

}  // namespace wetout::report
