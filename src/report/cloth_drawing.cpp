// The cutting of cloth as a drawing to scale.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "layout.hpp"
#include "svg.hpp"
#include "wetout/report/cloth_document.hpp"

namespace wetout::report {
namespace {

constexpr double page_width = 287.0;  // A4 across, less what printers leave white
constexpr double margin = 8.0, left_room = 27.0;
constexpr double letter = 3.0;  // height of a line of text
constexpr double line_height = 4.2;
constexpr double wide_letter = 1.6;  // a character of it, about
constexpr std::array scales = {5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200};

class Drawing {
 public:
  Drawing(const ClothDocument& document, units::System system)
      : document_(document), system_(system) {
    units::Length longest;
    for (const CutFrom& from : document.rolls) longest = std::max(longest, from.take);
    const double room = page_width - left_room - 2.0 * margin;
    scale_ = scales.back();
    for (const int scale : scales) {
      if (units::in_millimetres(longest) / scale <= room) {
        scale_ = scale;
        break;
      }
    }
  }

  std::string draw() {
    std::string title;
    for (const ClothJob& job : document_.jobs) {
      title += (title.empty() ? "Cutting cloth: " : ", ") + job.name;
      if (job.revision > 0) title += fmt::format(" (revision {})", job.revision);
    }
    svg_.text(margin, 9, title, "start", "font-size=\"4.5\" font-weight=\"bold\"");
    svg_.text(
        margin, 14,
        fmt::format("scale 1:{}; the warp runs to the right; from the cut end at the left and "
                    "the roll's left edge at the top",
                    scale_));
    double y = 22.0;
    for (const CutFrom& from : document_.rolls) y = roll(from, y);
    return fmt::format(
        "{}\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{:.0f}mm\" height=\"{:.0f}mm\" "
        "viewBox=\"0 0 {:.0f} {:.0f}\" font-family=\"sans-serif\" font-size=\"3\" stroke=\"none\" "
        "role=\"img\">\n<title>{}</title>\n<style>line, rect {{ stroke: #000; }}</style>\n<defs>"
        "<pattern id=\"over\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\" "
        "patternTransform=\"rotate(45)\"><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"2\" "
        "stroke-width=\"0.2\"/></pattern></defs>\n<rect "
        "width=\"100%\" height=\"100%\" style=\"stroke: none\" fill=\"#fff\"/>\n{}</svg>\n",
        cloth_drawing_begins, page_width, y, page_width, y, escaped(title), svg_.body());
  }

 private:
  [[nodiscard]] double paper(units::Length length) const {
    return units::in_millimetres(length) / scale_;
  }
  [[nodiscard]] std::string shown(units::Length length) const {
    return units::print(length, system_);
  }

  double roll(const CutFrom& from, double y) {
    svg_.text(margin, y,
              from.name + (from.is_remnant ? ", remnant " : ", take ") + shown(from.take) + " of " +
                  shown(from.width) + " width",
              "start", "font-weight=\"bold\"");
    const double x0 = margin + left_room, y0 = y + 6.5;
    const double length = paper(from.take), width = paper(from.width);
    svg_.rect(x0, y0, length, width, "fill=\"url(#over)\" stroke-width=\"0.25\"");
    marks_.clear();
    for (const CutPiece& piece : from.pieces) draw_piece(piece, x0, y0);
    along_marks(x0, y0, from);
    // The width, at the left.
    svg_.line(x0 - 3, y0, x0 - 3, y0 + width, "stroke-width=\"0.2\"");
    svg_.text(x0 - 4.5, y0 + width / 2 + 1, shown(from.width), "end");
    return legend(from, y0 + width + 4.0 + 2.0 * letter + 3.5) + 5.0;
  }

  void draw_piece(const CutPiece& piece, double x0, double y0) {
    const double x = x0 + paper(piece.along), y = y0 + paper(piece.edge);
    const double w = paper(piece.length), h = paper(piece.width);
    svg_.rect(x, y, w, h, "fill=\"#fff\" stroke-width=\"0.4\"");
    svg_.text(x + 1.5, y + 4.2, std::to_string(piece.n), "start",
              "font-weight=\"bold\" font-size=\"4\"");
    const std::string name = name_of(piece);
    const double letters = wide_letter * static_cast<double>(layout::columns(name));
    if (h > 5.0 && 10.0 + letters < w) svg_.text(x + 9.0, y + 4.0, name);
    for (const units::Length at : {piece.along, piece.along + piece.length}) {
      const bool is_there = std::any_of(marks_.begin(), marks_.end(), [&](units::Length mark) {
        return std::abs(units::in_millimetres(mark - at)) < 0.5;
      });
      if (!is_there) marks_.push_back(at);
    }
  }

  [[nodiscard]] std::string name_of(const CutPiece& piece) const {
    std::string name = piece.coat + "/" + piece.ply;
    if (document_.jobs.size() > 1) name = piece.job + " " + name;
    return piece.strip ? name + ", strip " + *piece.strip : name;
  }

  // What each number is; two columns where the names leave room for them.
  double legend(const CutFrom& from, double y) {
    const double half = (page_width - 2.0 * margin) / 2.0;
    std::vector<std::string> lines;
    bool is_narrow = true;
    for (const CutPiece& piece : from.pieces) {
      std::string line = fmt::format("{}  {}: {} x {}, at {}", piece.n, name_of(piece),
                                     shown(piece.length), shown(piece.width), shown(piece.along));
      if (piece.edge > units::Length()) line += ", " + shown(piece.edge) + " from the edge";
      is_narrow = is_narrow && wide_letter * static_cast<double>(layout::columns(line)) < half;
      lines.push_back(std::move(line));
    }
    const std::size_t rows = is_narrow ? (lines.size() + 1) / 2 : lines.size();
    for (std::size_t i = 0; i < lines.size(); ++i) {
      svg_.text(margin + half * static_cast<double>(i / rows),
                y + line_height * static_cast<double>(i % rows), lines[i]);
    }
    return y + line_height * static_cast<double>(rows);
  }

  // Below the roll, on two lines in turn so that neighbours stay apart.
  void along_marks(double x0, double y0, const CutFrom& from) {
    std::sort(marks_.begin(), marks_.end());
    const double bottom = y0 + paper(from.width);
    double free[2] = {-1e9, -1e9};
    for (const units::Length mark : marks_) {
      const std::string text = shown(mark);
      const double x = x0 + paper(mark);
      const double half = 0.5 * wide_letter * static_cast<double>(layout::columns(text));
      const int line = x - half > free[0] ? 0 : 1;
      if (x - half <= free[line]) continue;
      const double below = bottom + 4.0 + line * letter;
      svg_.line(x, bottom, x, below - 2.4, "stroke-width=\"0.2\"");
      svg_.text(x, below, text, "middle");
      free[line] = x + half + 1.0;
    }
  }

  const ClothDocument& document_;
  units::System system_;
  int scale_ = 10;
  std::vector<units::Length> marks_;
  Svg svg_;
};

}  // namespace

std::string cloth_drawing(const ClothDocument& document, units::System system) {
  return Drawing(document, system).draw();
}

}  // namespace wetout::report
