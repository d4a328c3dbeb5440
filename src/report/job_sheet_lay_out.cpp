// What lies where.
#include <fmt/format.h>

#include <algorithm>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;

bool is_patch(const laminate::PlyNeed& ply) { return ply.from_tail || ply.to || ply.width; }

}  // namespace

void SheetWriter::lay_out() {
  section("lay-out", "1. Lay out");
  page_.open("div", {{"class", "beside"}});
  page_.open("figure");
  page_.raw(Markup::ours(plan_drawing(sheet_.plan, sheet_.board, system_, DrawnFor::page)));
  page_.put("figcaption",
            "Deck and bottom, each seen from its own side; patches by their numbers.");
  page_.close("figure");
  page_.open("div");
  for (const board::Face face : {board::Face::deck, board::Face::bottom}) {
    const bool some = std::any_of(plan_.plies.begin(), plan_.plies.end(),
                                  [&](const auto& ply) { return ply.face == face; });
    if (!some) continue;
    page_.put("h3", face == board::Face::deck ? "On the deck" : "On the bottom");
    page_.open("ul", {{"class", "plies"}});
    int number = 0;
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (ply.face != face) continue;
      page_.open("li");
      if (is_patch(ply)) page_.put("b", std::to_string(++number)).text(" ");
      name(ply.id, "b");
      if (ply.cloth != ply.id) {
        page_.text(" of ");
        name(ply.cloth);
      }
      page_.text(", ");
      name(coat_name(ply.coat));
      page_.text(": " + ply_placement(ply, system_));
      page_.close("li");
    }
    page_.close("ul");
  }
  if (!sheet_.board.across.empty()) {
    page_.put("h3", "Widths");
    page_.open("ul", {{"class", "plies"}});
    for (const DrawnBoard::Across& across : sheet_.board.across) {
      page_.put("li", across.place + ": " + whole(units::print(across.width, system_)));
    }
    page_.close("ul");
  }
  page_.close("div").close("div").close("section");
}

}  // namespace wetout::report
