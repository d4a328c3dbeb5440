// What lies where, and what is cut off the roll.
#include <fmt/format.h>

#include <algorithm>
#include <map>

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
      page_.text(" of ");
      name(ply.cloth);
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

void SheetWriter::cut() {
  section("cut", "2. Cut");
  if (plan_.plies.empty()) {
    page_.put("p", "No cloth is cut for this board.");
    page_.close("section");
    return;
  }
  std::map<std::string, std::vector<const laminate::PlyNeed*>> by_cloth;
  for (const laminate::PlyNeed& ply : plan_.plies) by_cloth[ply.cloth].push_back(&ply);
  page_.open("div", {{"class", "cuts"}});
  for (const auto& [cloth, plies] : by_cloth) {
    page_.open("table", {{"class", "cut"}});
    page_.open("caption");
    name(cloth, "b");
    units::Length all;
    for (const laminate::PlyNeed* ply : plies) all = all + ply->cut_length;
    page_.text(", " + whole(units::print(all, system_)) + " off the roll in all");
    page_.close("caption");
    page_.open("thead").open("tr");
    page_.put("th", "piece", {{"scope", "col"}});
    page_.put("th", "length", {{"scope", "col"}, {"class", "number"}});
    page_.put("th", "width", {{"scope", "col"}, {"class", "number"}});
    page_.close("tr").close("thead").open("tbody");
    for (const laminate::PlyNeed* ply : plies) {
      page_.open("tr").open("th", {{"scope", "row"}}).open("label");
      page_.single("input", {{"type", "checkbox"}, {"name", "cut/" + ply->coat + "/" + ply->id}});
      page_.text(" ");
      name(ply->id);
      page_.text(", ");
      name(coat_name(ply->coat));
      page_.close("label").close("th");
      page_.put("td", whole(units::print(ply->cut_length, system_)), {{"class", "number"}});
      page_.put("td", whole(units::print_inches(ply->cut_width, system_)), {{"class", "number"}});
      page_.close("tr");
    }
    page_.close("tbody").close("table");
  }
  page_.close("div");
  page_.put("p", "Glass itches and cuts: gloves and sleeves, a sharp blade, threads swept up.",
            {{"class", "caution"}});
  page_.close("section");
}

}  // namespace wetout::report
