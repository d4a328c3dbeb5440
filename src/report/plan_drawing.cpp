#include "wetout/report/plan_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "layout.hpp"
#include "svg.hpp"

namespace wetout::report {
namespace {

using board::Face;
using units::Length;
using units::System;

constexpr double scale = 100.0;      // mm of paper to a metre: 1:10
constexpr double left = 24.0;        // of it stand the measures
constexpr double least_view = 76.0;  // what a column of the legend takes
constexpr double aside = 6.0;        // of the outline in its view
constexpr double top = 24.0;         // of the nose
constexpr double line_height = 4.2;
// What a line of the legend holds at this size of letters.
constexpr std::size_t legend_columns = 46;

double paper(Length length) { return units::in_metres(length) * scale; }

class Drawing {
 public:
  Drawing(const PlanDocument& document, const DrawnBoard& board, System system, DrawnFor use)
      : plan_(document.plan), document_(document), board_(board), system_(system), use_(use) {}

  std::string draw() {
    length_ = paper(plan_.board.length);
    room_ = std::max(least_view, width() + 2.0 * aside);
    middle_ = left + room_ / 2.0;
    page_width_ = left + 2.0 * room_ + 14.0;
    title();
    defs();
    view(Face::deck, middle_);
    view(Face::bottom, middle_ + room_);
    measures();
    const double below = top + length_ + 10.0;
    // A page says in its own letters what lies where.
    if (use_ == DrawnFor::page) return finish(keys(below) + 3.0);
    const double end =
        std::max(legend(Face::deck, left, below), legend(Face::bottom, left + room_, below));
    return finish(keys(end + 2.0) + 3.0);
  }

 private:
  // The size of letters: a page may be as narrow as a phone.
  [[nodiscard]] double letters() const { return use_ == DrawnFor::page ? 4.6 : 3.0; }
  [[nodiscard]] double up(Length from_tail) const { return top + length_ - paper(from_tail); }

  [[nodiscard]] double width() const {
    double half = 0.0;
    for (const board::Hull::Point& point : board_.outline) {
      half = std::max(half, std::abs(paper(point.y)));
    }
    return 2.0 * half;
  }

  void title() {
    const std::string revision = document_.job.saved || document_.job.revision > 0
                                     ? fmt::format(", revision {}", document_.job.revision)
                                     : std::string();
    title_ = plan_.board.name + revision;
    if (use_ == DrawnFor::page) return;
    svg_.text(8, 9, title_, "start", "font-size=\"5\" font-weight=\"bold\"");
    svg_.text(8, 14, fmt::format("{} long, scale 1:10", units::print(plan_.board.length, system_)));
  }

  // The outline of a view, in millimetres around its middle line: y down from the nose.
  void defs() {
    std::string path;
    for (const board::Hull::Point& point : board_.outline) {
      path +=
          fmt::format("{}{:.3f},{:.3f}", path.empty() ? "M" : " L", paper(point.y), up(point.x));
    }
    svg_.raw(fmt::format(
        "<defs>\n<path id=\"outline\" d=\"{} Z\"/>\n"
        "<clipPath id=\"inside\"><use href=\"#outline\"/></clipPath>\n"
        "<pattern id=\"lap\" width=\"1.4\" height=\"1.4\" patternUnits=\"userSpaceOnUse\" "
        "patternTransform=\"rotate(45)\"><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"1.4\" "
        "stroke=\"#000\" stroke-width=\"0.25\"/></pattern>\n</defs>\n",
        path));
  }

  void view(Face face, double middle) {
    svg_.text(middle, top - 3.5, face == Face::deck ? "DECK" : "BOTTOM", "middle",
              "font-weight=\"bold\"");
    svg_.raw(fmt::format("<g transform=\"translate({:.2f} 0)\">\n", middle));
    // Twice the lap as a stroke, of which the inner half shows.
    if (const Length lap = widest_lap_onto(face); lap > Length()) {
      svg_.raw(fmt::format(
          "<use href=\"#outline\" clip-path=\"url(#inside)\" fill=\"none\" stroke=\"url(#lap)\" "
          "stroke-width=\"{:.3f}\"/>\n",
          2.0 * paper(lap)));
    }
    int number = 0;
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (ply.face == face && is_patch(ply)) patch(ply, ++number);
    }
    svg_.raw("<use href=\"#outline\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.5\"/>\n");
    svg_.line(0, top, 0, top + length_, "stroke-dasharray=\"6 1 1 1\" stroke-width=\"0.2\"");
    svg_.raw("</g>\n");
  }

  static bool is_patch(const laminate::PlyNeed& ply) {
    return ply.from_tail || ply.to || ply.width;
  }

  // Laps of the plies of one face lie on the other.
  [[nodiscard]] Length widest_lap_onto(Face face) const {
    Length widest;
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (ply.face != face) widest = std::max(widest, ply.lap);
    }
    return widest;
  }

  [[nodiscard]] Length patch_end(const laminate::PlyNeed& ply) const {
    return ply.to.value_or(plan_.board.length);
  }

  void patch(const laminate::PlyNeed& ply, int number) {
    const double nose_end = up(patch_end(ply));
    const double tail_end = up(ply.from_tail.value_or(Length()));
    const double half = ply.width ? paper(*ply.width) / 2.0 : width();
    svg_.rect(-half, nose_end, 2.0 * half, tail_end - nose_end,
              "clip-path=\"url(#inside)\" fill=\"none\" stroke-width=\"0.35\" "
              "stroke-dasharray=\"2.5 1.2\"");
    // Numbers side by side, near the patch's own end, so that those of nested patches stay apart.
    const double x = number % 2 == 1 ? -6.0 : 6.0;
    const double y = nose_end + 5.0;
    svg_.raw(fmt::format(
        "<circle cx=\"{:.2f}\" cy=\"{:.2f}\" r=\"{:.1f}\" fill=\"#fff\" stroke-width=\"0.3\"/>\n",
        x, y, 0.8 * letters()));
    svg_.text(x, y + 0.37 * letters(), std::to_string(number), "middle", "font-weight=\"bold\"");
  }

  void measures() {
    for (const DrawnBoard::Across& across : board_.across) {
      const double y = up(across.from_tail);
      const double half = paper(across.width) / 2.0;
      svg_.line(middle_ - half, y, middle_ + half, y,
                "stroke-width=\"0.2\" marker-start=\"url(#tip)\" marker-end=\"url(#tip)\"");
      svg_.line(middle_ - half - 1.0, y, 30.0, y,
                "stroke-width=\"0.15\" stroke-dasharray=\"0.6 0.8\"");
      svg_.text(29.0, y - 0.4, units::print(across.width, system_), "end");
      if (use_ == DrawnFor::page) continue;
      svg_.text(29.0, y + 2.6, across.place, "end", "font-size=\"2.3\"");
    }
  }

  // Not broken at the end of a line.
  [[nodiscard]] std::string size(Length length) const {
    return layout::whole(units::print(length, system_));
  }

  [[nodiscard]] std::string coat_name(const std::string& id) const {
    for (const laminate::CoatNeed& coat : plan_.coats) {
      if (coat.id == id) return coat.name;
    }
    return id;
  }

  double write(double x, double y, std::string text) {
    for (double indent = 0.0; !text.empty(); indent = 3.0) {
      std::size_t end = text.size();
      if (end > legend_columns) {
        end = text.rfind(' ', legend_columns);
        if (end == std::string::npos || end == 0) end = text.find(' ', legend_columns);
        end = std::min(end, text.size());
      }
      svg_.text(x + indent, y, text.substr(0, end));
      text.erase(0, std::min(text.size(), end + 1));
      y += line_height;
    }
    return y;
  }

  // From x, y down; returns where it ends.
  double legend(Face face, double x, double y) {
    int number = 0;
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (ply.face != face) continue;
      std::string text;
      if (is_patch(ply)) {
        text = fmt::format("{} {} ({}): {}, {} to {} from the tail", ++number, ply.id,
                           coat_name(ply.coat), ply.cloth, size(ply.from_tail.value_or(Length())),
                           size(patch_end(ply)));
        if (ply.width) text += ", " + size(*ply.width) + " wide";
      } else {
        text = fmt::format("{} ({}): {}, all of the face", ply.id, coat_name(ply.coat), ply.cloth);
      }
      if (ply.lap > Length()) text += ", lap " + size(ply.lap);
      y = write(x, y, std::move(text));
    }
    return y;
  }

  double keys(double y) {
    if (use_ == DrawnFor::page) {
      svg_.rect(left, y - 3.2, 10, 4, "fill=\"url(#lap)\" stroke-width=\"0.2\"");
      svg_.text(left + 13.0, y, "laps of the other face, the widest");
      y += 7.0;
      svg_.line(left, y - 1.4, left + 10.0, y - 1.4,
                "stroke-width=\"0.35\" stroke-dasharray=\"2.5 1.2\"");
      svg_.text(left + 13.0, y, "edge of a patch");
      svg_.line(left + 60.0, y - 1.4, left + 74.0, y - 1.4,
                "stroke-width=\"0.2\" stroke-dasharray=\"6 1 1 1\"");
      svg_.text(left + 77.0, y, "centre line");
      return y + line_height;
    }
    svg_.rect(8, y - 2.6, 8, 3, "fill=\"url(#lap)\" stroke-width=\"0.2\"");
    svg_.text(18, y, "laps of the other face, the widest");
    svg_.line(82, y - 1, 92, y - 1, "stroke-width=\"0.35\" stroke-dasharray=\"2.5 1.2\"");
    svg_.text(94, y, "edge of a patch");
    svg_.line(126, y - 1, 138, y - 1, "stroke-width=\"0.2\" stroke-dasharray=\"6 1 1 1\"");
    svg_.text(140, y, "centre line");
    return y + line_height;
  }

  [[nodiscard]] std::string finish(double height) const {
    // Above the nose there is only the title.
    const double from = use_ == DrawnFor::page ? top - 9.0 : 0.0;
    const std::string begin = use_ == DrawnFor::page
                                  ? std::string("<svg")
                                  : fmt::format("{}\n<svg width=\"{:.0f}mm\" height=\"{:.0f}mm\"",
                                                plan_drawing_begins, page_width_, height);
    return fmt::format(
        "{} xmlns=\"http://www.w3.org/2000/svg\" class=\"board\" "
        "viewBox=\"0 {:.0f} {:.0f} {:.0f}\" font-family=\"sans-serif\" font-size=\"{:.1f}\" "
        "stroke=\"none\" "
        "role=\"img\">\n<title>{}</title>\n<desc>Deck and bottom to scale with plies, laps and "
        "measures.</desc>\n<style>.board line, .board rect, .board circle {{ stroke: #000; "
        "}}</style>\n<defs><marker "
        "id=\"tip\" viewBox=\"-4 -2 8 4\" markerWidth=\"8\" markerHeight=\"4\" "
        "orient=\"auto-start-reverse\"><path d=\"M 0 0 L -4 -1.5 L -4 1.5 Z\"/></marker></defs>\n"
        "<rect width=\"100%\" height=\"100%\" style=\"stroke: none\" fill=\"#fff\"/>\n{}</svg>\n",
        begin, from, page_width_, height - from, letters(), escaped(title_), svg_.body());
  }

  const laminate::Plan& plan_;
  const PlanDocument& document_;
  const DrawnBoard& board_;
  System system_;
  double length_ = 0.0;
  double room_ = 0.0, middle_ = 0.0;  // of a view; of the first
  double page_width_ = 0.0;
  DrawnFor use_;
  std::string title_;
  Svg svg_;
};

}  // namespace

std::string plan_drawing(const PlanDocument& document, const DrawnBoard& board, System system,
                         DrawnFor use) {
  return Drawing(document, board, system, use).draw();
}

}  // namespace wetout::report
