#include "wetout/report/template_pdf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "pdf.hpp"

namespace wetout::report {
namespace {

using units::Length;

constexpr PaperSize a4{210.0, 297.0};
constexpr PaperSize letter{215.9, 279.4};
constexpr double around = 5.0;  // of white about the drawing
constexpr double letters = 3.5;
constexpr double beside_nose = 130.0;  // on a roll: for the squares to measure
constexpr double inch = 25.4;

double mm(Length length) { return units::in_millimetres(length); }

constexpr Pdf::Pen outline_pen{.width = 0.4};
constexpr Pdf::Pen centre_pen{.width = 0.25, .dash = Pdf::Dash::centre};
constexpr Pdf::Pen edge_pen{.width = 0.35, .dash = Pdf::Dash::edge};
constexpr Pdf::Pen thin_pen{.width = 0.15};
constexpr Pdf::Pen cut_pen{.width = 0.15, .dash = Pdf::Dash::cut, .grey = 0.4};

// In the drawing's own millimetres: x across from the centre line, y down from the nose.
class Template {
 public:
  explicit Template(const TemplateDrawing& drawing) : drawing_(drawing) {
    double half = 0.0;
    for (const board::Hull::Point& point : drawing.outline) {
      outline_.push_back({mm(point.y), mm(drawing.length) - mm(point.x)});
      half = std::max(half, std::abs(mm(point.y)));
    }
    const double left = drawing.whole ? half : 0.0;
    extent_ = {-left - around, -around, left + half + 2.0 * around,
               mm(drawing.length) + 2.0 * around};
    for (const PlanePoint& point : outline_) {
      shape_.push_back({drawing.whole ? point.x : std::max(point.x, 0.0), point.y});
    }
  }

  [[nodiscard]] const Box& extent() const { return extent_; }
  /// What sheets have to reach.
  [[nodiscard]] const std::vector<PlanePoint>& shape() const { return shape_; }

  void draw(Pdf& pdf) const {
    bands(pdf);
    patches(pdf);
    stations(pdf);
    pdf.closed(outline_, outline_pen);
    pdf.line({0.0, 0.0}, {0.0, mm(drawing_.length)}, centre_pen);
    labels(pdf);
  }

 private:
  // A line at a distance from another is the rim of a stroke twice as wide: what is drawn wide in
  // black and once more in white leaves it, at any shape. The widest first: each is white inside.
  void bands(Pdf& pdf) const {
    auto widest_first = drawing_.bands;
    std::stable_sort(widest_first.begin(), widest_first.end(),
                     [](const auto& a, const auto& b) { return a.width > b.width; });
    pdf.clip(outline_);
    for (const TemplateDrawing::Band& band : widest_first) {
      const double reach = 2.0 * mm(band.width);
      pdf.closed(outline_, {.width = reach + edge_pen.width});
      pdf.closed(outline_, {.width = reach - edge_pen.width, .grey = 1.0});
    }
    pdf.clip_end();
  }

  void patches(Pdf& pdf) const {
    pdf.clip(outline_);
    for (const TemplateDrawing::Patch& patch : drawing_.patches) {
      const double half = patch.width ? mm(*patch.width) / 2.0 : extent_.width;
      pdf.box({-half, down(patch.to), 2.0 * half, mm(patch.to) - mm(patch.from)}, edge_pen);
    }
    pdf.clip_end();
  }

  void stations(Pdf& pdf) const {
    for (const TemplateDrawing::Station& station : drawing_.stations) {
      const double y = down(station.from_tail);
      const double half = mm(station.half_width);
      pdf.line({drawing_.whole ? -half : 0.0, y}, {half, y}, thin_pen);
      pdf.text({3.0, y - 1.0}, station.label, letters);
    }
  }

  void labels(Pdf& pdf) const {
    // Under each other, where the board is widest: below the marks that begin there.
    const double widest = std::max_element(outline_.begin(), outline_.end(), [](auto& a, auto& b) {
                            return a.x < b.x;
                          })->y;
    double y = widest + 2.0 * letters;
    pdf.text({3.0, y}, drawing_.title, 1.5 * letters, Pdf::Anchor::start, true);
    pdf.text({3.0, y += 1.7 * letters}, drawing_.about, letters);
    for (const TemplateDrawing::Band& band : drawing_.bands) {
      pdf.text({3.0, y += 1.5 * letters}, band.label, letters);
    }
    for (const TemplateDrawing::Patch& patch : drawing_.patches) {
      pdf.text({3.0, down(patch.to) + 1.5 * letters}, patch.label, letters);
    }
  }

  [[nodiscard]] double down(Length from_tail) const { return mm(drawing_.length) - mm(from_tail); }

  const TemplateDrawing& drawing_;
  std::vector<PlanePoint> outline_, shape_;
  Box extent_;
};

void squares(Pdf& pdf, PlanePoint at) {
  pdf.box({at.x, at.y, 100.0, 100.0}, {.width = 0.2});
  pdf.text({at.x + 50.0, at.y + 97.0}, "100 mm", letters, Pdf::Anchor::middle);
  const double side = 4.0 * inch;
  pdf.box({at.x, at.y, side, side}, {.width = 0.2, .dash = Pdf::Dash::edge});
  pdf.text({at.x + 50.0, at.y + side + letters}, "4 in, dashed", letters, Pdf::Anchor::middle);
}

void cross(Pdf& pdf, double x, double y) {
  constexpr double arm = 4.0;
  pdf.line({x - arm, y}, {x + arm, y}, {.width = 0.2});
  pdf.line({x, y - arm}, {x, y + arm}, {.width = 0.2});
}

// Where this sheet lies over its neighbours: lines in the middle of the overlap, and crosses that
// both sheets have.
void joints(Pdf& pdf, const Sheet& sheet, const Sheets& sheets) {
  const Box& w = sheet.window;
  const auto xs = [&](double at) {
    pdf.line({at, w.y}, {at, w.y + w.height}, cut_pen);
    for (const double share : {0.25, 0.75}) cross(pdf, at, w.y + share * w.height);
  };
  const auto ys = [&](double at) {
    pdf.line({w.x, at}, {w.x + w.width, at}, cut_pen);
    for (const double share : {0.25, 0.75}) cross(pdf, w.x + share * w.width, at);
  };
  if (sheet.column > 0) xs(w.x + sheet_overlap / 2.0);
  if (sheet.column + 1 < sheets.columns) xs(w.x + w.width - sheet_overlap / 2.0);
  if (sheet.row > 0) ys(w.y + sheet_overlap / 2.0);
  if (sheet.row + 1 < sheets.rows) ys(w.y + w.height - sheet_overlap / 2.0);
}

// How the sheets lie, small.
void map(Pdf& pdf, const Template& what, const Sheets& sheets, const Box& into) {
  const Box& extent = what.extent();
  Box all = extent;
  for (const Sheet& sheet : sheets.list) {
    const double right = std::max(all.x + all.width, sheet.window.x + sheet.window.width);
    const double bottom = std::max(all.y + all.height, sheet.window.y + sheet.window.height);
    all.x = std::min(all.x, sheet.window.x);
    all.y = std::min(all.y, sheet.window.y);
    all.width = right - all.x;
    all.height = bottom - all.y;
  }
  const double scale = std::min(into.width / all.width, into.height / all.height);
  const auto at = [&](PlanePoint point) {
    return PlanePoint{into.x + (point.x - all.x) * scale, into.y + (point.y - all.y) * scale};
  };
  for (const Sheet& sheet : sheets.list) {
    const PlanePoint corner = at({sheet.window.x, sheet.window.y});
    const Box box{corner.x, corner.y, sheet.window.width * scale, sheet.window.height * scale};
    pdf.box(box, {.width = 0.15, .grey = 0.3});
    pdf.text({box.x + box.width / 2.0, box.y + box.height / 2.0 + 1.2}, sheet.name(), letters,
             Pdf::Anchor::middle, true);
  }
  std::vector<PlanePoint> outline;
  for (const PlanePoint& point : what.shape()) outline.push_back(at(point));
  pdf.closed(outline, {.width = 0.4});
}

void first_page(Pdf& pdf, const TemplateDrawing& drawing, const Template& what,
                const Sheets& sheets, PaperSize upright) {
  pdf.page(upright);
  double y = sheet_margin + 6.0;
  pdf.text({sheet_margin, y}, drawing.title, 6.0, Pdf::Anchor::start, true);
  pdf.text({sheet_margin, y += 6.0}, drawing.about, letters);
  const std::string half =
      drawing.whole ? "" : " It is one half: turn it over at the centre line for the other.";
  for (const std::string& line :
       {fmt::format("{} sheets follow, at full size, the nose first.{}", sheets.list.size(), half),
        std::string("1. Print at 100 %: no fitting to the page. Measure the squares below."),
        std::string("2. Cut or fold each sheet along the dotted line of one side of a joint."),
        std::string("3. Lay it over its neighbour so that the crosses meet, and tape it down."),
        std::string("4. Check length and a width with a tape before you cut or mark anything.")}) {
    pdf.text({sheet_margin, y += 5.5}, line, letters);
  }
  squares(pdf, {sheet_margin, y + 6.0});
  const double left = sheet_margin + 4.0 * inch + 10.0;
  map(pdf, what, sheets,
      {left, y + 6.0, upright.width - sheet_margin - left,
       upright.height - sheet_margin - (y + 6.0)});
}

TemplatePdf one_sheet(Pdf& pdf, const TemplateDrawing& drawing, const Template& what) {
  const Box& extent = what.extent();
  // As wide as what is written on it.
  double width = std::max(extent.width, beside_nose);
  for (const std::string& text : {drawing.title, drawing.about}) {
    width = std::max(width, pdf.width_of(text, 1.5 * letters, true) + 10.0);
  }
  pdf.page({width + 2.0 * sheet_margin, extent.height + beside_nose + 2.0 * sheet_margin});
  squares(pdf, {sheet_margin, sheet_margin});
  {
    const Pdf::Window window(pdf, {extent.x, extent.y, width, extent.height},
                             {sheet_margin, sheet_margin + beside_nose});
    what.draw(pdf);
  }
  return {pdf.bytes(), 1, 1, 1};
}

}  // namespace

std::string_view to_string(Paper paper) {
  switch (paper) {
    case Paper::a4:
      return "a4";
    case Paper::letter:
      return "letter";
    case Paper::roll:
      return "roll";
  }
  return "";
}

TemplatePdf template_pdf(const TemplateDrawing& drawing, Paper paper, const std::string& made) {
  const Template what(drawing);
  Pdf pdf(drawing.title, std::string(template_pdf_mark), made);
  if (paper == Paper::roll) return one_sheet(pdf, drawing, what);
  const PaperSize upright = paper == Paper::a4 ? a4 : letter;
  const Sheets sheets = sheets_over(what.extent(), what.shape(), upright);
  first_page(pdf, drawing, what, sheets, upright);
  for (const Sheet& sheet : sheets.list) {
    pdf.page(sheets.paper);
    {
      const Pdf::Window window(pdf, sheet.window, {sheet_margin, sheet_margin});
      what.draw(pdf);
      joints(pdf, sheet, sheets);
    }
    pdf.text({sheet_margin, sheets.paper.height - sheet_margin / 2.0},
             fmt::format("{}  {}", sheet.name(), drawing.title), letters, Pdf::Anchor::start, true);
  }
  return {pdf.bytes(), static_cast<int>(sheets.list.size()), sheets.columns, sheets.rows};
}

}  // namespace wetout::report
