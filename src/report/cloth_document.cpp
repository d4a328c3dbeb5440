#include "wetout/report/cloth_document.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base_fields.hpp"
#include "json_writer.hpp"
#include "layout.hpp"

namespace wetout::report {

template <>
struct Fields<CutPiece> {
  static void visit(auto& v, const CutPiece& piece) {
    v("n", piece.n);
    v("job", piece.job);
    v("coat", piece.coat);
    v("ply", piece.ply);
    v("strip", piece.strip);
    v("length_m", piece.length, as::Metres{});
    v("width_m", piece.width, as::Metres{});
    v("along_m", piece.along, as::Metres{});
    v("edge_m", piece.edge, as::Metres{});
  }
};
template <>
struct Fields<CutFrom> {
  static void visit(auto& v, const CutFrom& from) {
    v("cloth", from.cloth);
    v("name", from.name);
    v("remnant", from.is_remnant);
    v("lot", from.lot);
    v("width_m", from.width, as::Metres{});
    v("take_m", from.take, as::Metres{});
    v("one_by_one_m", from.one_by_one, as::Metres{});
    v("bound_m", from.bound, as::Metres{});
    v("proved", from.proved);
    v("waste_m2", from.waste, as::SquareMetres{});
    v("waste_g", from.waste_weight, as::Grams{});
    v("waste_cost", from.waste_cost);
    v("pieces", from.pieces);
  }
};
template <>
struct Fields<ClothJob> {
  static void visit(auto& v, const ClothJob& job) {
    v("id", job.id);
    v("name", job.name);
    v("revision", job.revision);
  }
};
template <>
struct Fields<ClothDocument> {
  static void visit(auto& v, const ClothDocument& document) {
    v("program", document.program);
    v("made", document.made);
    v("jobs", document.jobs);
    v("rolls", document.rolls);
    v("notices", document.notices);
    v("cautions", document.cautions);
  }
};

namespace {

using layout::left;
using layout::right;

std::string piece_name(const CutPiece& piece, bool several_jobs) {
  std::string name = piece.coat + "/" + piece.ply;
  if (several_jobs) name = piece.job + " " + name;
  return piece.strip ? name + ", strip " + *piece.strip : name;
}

std::string how_short(const CutFrom& from) {
  if (from.proved) return "none is shorter";
  const double more = from.take / from.bound - 1.0;
  return fmt::format("within {:.1f} % of the shortest", 100.0 * more);
}

// Number, name; a name that is too long for its column has a line of its own.
constexpr std::size_t name_columns = 25;

void piece_line(layout::Page& page, const CutPiece& piece, units::System system,
                bool several_jobs) {
  const auto shown = [&](units::Length length) {
    return right(units::print_inches(length, system), 12);
  };
  const std::string number = "  " + right(std::to_string(piece.n), 3) + "  ";
  std::string name = layout::plain(piece_name(piece, several_jobs));
  std::string begin = number;
  if (layout::columns(name) > name_columns) {
    page.line(number + name);
    begin = std::string(number.size(), ' ');
    name.clear();
  }
  page.line(begin + left(name, name_columns) + shown(piece.length) + shown(piece.width) +
            shown(piece.along) + shown(piece.edge));
}

void roll(layout::Page& page, const CutFrom& from, units::System system, bool several_jobs) {
  const auto shown = [&](units::Length length) {
    return layout::whole(units::print_inches(length, system));
  };
  page.blank();
  page.item(
      "", layout::plain(from.name) + ", " + shown(from.width) + " wide: " +
              (from.is_remnant ? "a remnant of " + shown(from.take) +
                                     (from.lot ? ", lot " + layout::plain(*from.lot) : "")
                               : "take " + shown(from.take) + " off the roll; " + how_short(from)));
  page.line(std::string(7, ' ') + left("piece", name_columns) + right("long", 12) +
            right("wide", 12) + right("along", 12) + right("left edge", 12));
  for (const CutPiece& piece : from.pieces) piece_line(page, piece, system, several_jobs);
  std::string over = "left over: " + layout::whole(units::print(from.waste, system)) + ", " +
                     layout::whole(units::print(from.waste_weight.mass(), system));
  if (from.waste_cost) over += ", " + layout::whole(units::print(*from.waste_cost));
  if (!from.is_remnant && from.one_by_one > from.take) {
    over += "; one after the other the pieces would take " + shown(from.one_by_one);
  }
  page.item("  ", over);
}

}  // namespace

std::string to_json(const ClothDocument& document) { return document_json(cloth_format, document); }

std::string to_text(const ClothDocument& document, units::System system) {
  layout::Page page;
  std::string jobs;
  for (const ClothJob& job : document.jobs) {
    jobs += (jobs.empty() ? "" : ", ") + layout::plain(job.name);
    if (job.revision > 0) jobs += ", revision " + std::to_string(job.revision);
  }
  page.heading("Cutting cloth",
               document.jobs.size() == 1 ? jobs : std::to_string(document.jobs.size()) + " boards");
  page.item("",
            "Lengths run with the warp. Along: from the cut end of the roll to where the piece "
            "begins; left edge: from there to its nearer side.");
  const bool several = document.jobs.size() > 1;
  for (const CutFrom& from : document.rolls) roll(page, from, system, several);
  if (document.rolls.empty()) {
    page.blank();
    page.line(several ? "These boards have no cloth." : "This board has no cloth.");
  }
  if (!document.notices.empty()) page.blank();
  for (const base::Notice& notice : document.notices) {
    std::string text = notice.subject + ": " + notice.text;
    if (notice.value && notice.unit == "m") {
      text += " " + layout::whole(units::print(units::metres(*notice.value), system));
    }
    page.item("* ", layout::plain(text));
  }
  if (!document.cautions.empty()) page.blank();
  for (const std::string& caution : document.cautions) page.item("! ", caution);
  return page.text();
}

}  // namespace wetout::report
