// What is cut off each roll, and where it lies on it.
#include <fmt/format.h>

#include <algorithm>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "svg.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;

constexpr double width = 340.0, edge = 1.0, letter = 11.0;
// A short cut off a wide roll is not drawn larger than this.
constexpr double most_height = 150.0;

// The roll lies to the right, its cut end at the left, its left edge at the top.
Markup cutting(const CutFrom& from) {
  const double scale = std::min((width - 2.0 * edge) / units::in_metres(from.take),
                                most_height / units::in_metres(from.width));
  const auto shown = [&](units::Length length) { return scale * units::in_metres(length); };
  Svg svg;
  svg.rect(edge, edge, shown(from.take), shown(from.width), "class=\"roll\"");
  for (const CutPiece& piece : from.pieces) {
    const double x = edge + shown(piece.along), y = edge + shown(piece.edge);
    svg.rect(x, y, shown(piece.length), shown(piece.width), "class=\"piece\"");
    svg.text(x + 0.5 * shown(piece.length), y + 0.5 * (shown(piece.width) + 0.7 * letter),
             std::to_string(piece.n), "middle", "class=\"letter\"");
  }
  return Markup::ours(
      fmt::format("<svg class=\"chart cutting\" role=\"img\" viewBox=\"0 0 {:.0f} {:.0f}\">"
                  "<title>Pieces on {}</title>\n{}</svg>\n",
                  width, shown(from.width) + 2.0 * edge, escaped(from.name), svg.body()));
}

}  // namespace

void SheetWriter::cut() {
  section("cut", "2. Cut");
  if (sheet_.cloth.rolls.empty()) page_.put("p", "No cloth is cut for this board.");
  page_.open("div", {{"class", "cuts"}});
  for (const CutFrom& from : sheet_.cloth.rolls) roll(from);
  page_.close("div");
  if (!sheet_.cloth.rolls.empty()) {
    page_.put(
        "p",
        "Numbered in the order of cutting. The warp runs to the right; what is drawn begins at "
        "the cut end of the roll, with its left edge above.",
        {{"class", "small"}});
  }
  page_.open("ul", {{"class", "cautions"}});
  for (const base::Notice& notice : sheet_.cloth.notices) {
    page_.put("li", subject_text(notice) + notice_text(notice, system_));
  }
  for (const std::string& caution : sheet_.cloth.cautions) page_.put("li", caution);
  page_.close("ul").close("section");
}

void SheetWriter::roll(const CutFrom& from) {
  page_.open("figure", {{"class", "cut"}});
  page_.open("h3");
  name(from.name, "span");
  page_.text((from.is_remnant ? ": a remnant of " : ": take ") +
             whole(units::print(from.take, system_)));
  page_.close("h3");
  page_.raw(cutting(from));
  page_.open("ol", {{"class", "pieces"}});
  for (const CutPiece& piece : from.pieces) {
    page_.open("li").open("label");
    // Kept by the piece: numbers change when a coat is done.
    page_.single(
        "input",
        {{"type", "checkbox"},
         {"name", fmt::format("cut/{}/{}/{}", piece.coat, piece.ply, piece.strip.value_or(""))}});
    page_.text(" ").put("b", std::to_string(piece.n)).text(" ");
    name(piece.ply);
    if (piece.strip) page_.text(", strip " + *piece.strip);
    page_.text(", ");
    name(coat_name(piece.coat));
    page_.close("label");
    page_.open("span", {{"class", "size"}});
    page_.put("b", whole(units::print(piece.length, system_)) + " x " +
                       whole(units::print_inches(piece.width, system_)));
    page_.text(" at " + whole(units::print(piece.along, system_)) + " along, " +
               whole(units::print(piece.edge, system_)) + " from the left edge");
    page_.close("span").close("li");
  }
  page_.close("ol").close("figure");
}

}  // namespace wetout::report
