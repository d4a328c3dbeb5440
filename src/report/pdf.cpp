#include "pdf.hpp"

#include <cairo-pdf.h>
#include <cairo.h>

#include <span>
#include <stdexcept>

#include "layout.hpp"

namespace wetout::report {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;

// Of A to B lines of this look, in millimetres.
std::span<const double> dashes(Pdf::Dash dash) {
  static constexpr double edge[] = {4.0, 2.0};
  static constexpr double centre[] = {12.0, 2.0, 2.0, 2.0};
  static constexpr double cut[] = {1.0, 2.0};
  switch (dash) {
    case Pdf::Dash::none:
      return {};
    case Pdf::Dash::edge:
      return edge;
    case Pdf::Dash::centre:
      return centre;
    case Pdf::Dash::cut:
      return cut;
  }
  return {};
}

cairo_status_t keep(void* into, const unsigned char* data, unsigned int size) {
  static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

struct Pdf::Library {
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* context = nullptr;
  bool has_page = false;

  void font(double size, bool bold) const {
    cairo_select_font_face(context, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                           bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(context, size);
  }
  void path(const std::vector<PlanePoint>& points) const {
    cairo_new_path(context);  // a text leaves its end behind
    for (const PlanePoint& point : points) cairo_line_to(context, point.x, point.y);
    cairo_close_path(context);
  }
  void stroke(const Pen& pen) const {
    const std::span<const double> dash = dashes(pen.dash);
    cairo_set_dash(context, dash.data(), static_cast<int>(dash.size()), 0.0);
    cairo_set_line_width(context, pen.width);
    cairo_set_source_rgb(context, pen.grey, pen.grey, pen.grey);
    cairo_stroke(context);
  }
};

Pdf::Pdf(const std::string& title, const std::string& mark, const std::string& made)
    : library_(std::make_unique<Library>()) {
  Library& in = *library_;
  in.surface = cairo_pdf_surface_create_for_stream(keep, &in.bytes, 100.0, 100.0);
  cairo_pdf_surface_restrict_to_version(in.surface, CAIRO_PDF_VERSION_1_5);
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& text) {
    cairo_pdf_surface_set_metadata(in.surface, what, text.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, layout::plain(title));
  say(CAIRO_PDF_METADATA_CREATOR, mark);
  say(CAIRO_PDF_METADATA_CREATE_DATE, made);
  in.context = cairo_create(in.surface);
  // Round, so that a line inside an outline has the distance it is to have at corners too.
  cairo_set_line_join(in.context, CAIRO_LINE_JOIN_ROUND);
  cairo_scale(in.context, points_per_mm, points_per_mm);
}

Pdf::~Pdf() {
  cairo_destroy(library_->context);
  cairo_surface_destroy(library_->surface);
}

void Pdf::page(PaperSize size) {
  if (library_->has_page) cairo_show_page(library_->context);
  library_->has_page = true;
  cairo_pdf_surface_set_size(library_->surface, size.width * points_per_mm,
                             size.height * points_per_mm);
}

Pdf::Window::Window(Pdf& pdf, const Box& window, PlanePoint at) : pdf_(pdf) {
  cairo_t* const context = pdf_.library_->context;
  cairo_save(context);
  cairo_translate(context, at.x - window.x, at.y - window.y);
  cairo_new_path(context);
  cairo_rectangle(context, window.x, window.y, window.width, window.height);
  cairo_clip(context);
}
Pdf::Window::~Window() { cairo_restore(pdf_.library_->context); }

void Pdf::line(PlanePoint from, PlanePoint to, const Pen& pen) {
  cairo_move_to(library_->context, from.x, from.y);
  cairo_line_to(library_->context, to.x, to.y);
  library_->stroke(pen);
}

void Pdf::closed(const std::vector<PlanePoint>& points, const Pen& pen) {
  library_->path(points);
  library_->stroke(pen);
}

void Pdf::box(const Box& box, const Pen& pen) {
  cairo_new_path(library_->context);
  cairo_rectangle(library_->context, box.x, box.y, box.width, box.height);
  library_->stroke(pen);
}

void Pdf::clip(const std::vector<PlanePoint>& points) {
  cairo_save(library_->context);
  library_->path(points);
  cairo_clip(library_->context);
}
void Pdf::clip_end() { cairo_restore(library_->context); }

double Pdf::width_of(std::string_view text, double size, bool bold) const {
  library_->font(size, bold);
  cairo_text_extents_t extents;
  cairo_text_extents(library_->context, layout::plain(std::string(text)).c_str(), &extents);
  return extents.x_advance;
}

void Pdf::text(PlanePoint at, std::string_view text, double size, Anchor anchor, bool bold) {
  const double width = anchor == Anchor::start ? 0.0 : width_of(text, size, bold);
  library_->font(size, bold);
  cairo_move_to(library_->context, at.x - (anchor == Anchor::middle ? width / 2.0 : width), at.y);
  cairo_set_source_rgb(library_->context, 0.0, 0.0, 0.0);
  cairo_show_text(library_->context, layout::plain(std::string(text)).c_str());
}

std::string Pdf::bytes() {
  Library& in = *library_;
  if (in.has_page) cairo_show_page(in.context);
  cairo_surface_finish(in.surface);
  const cairo_status_t status = cairo_status(in.context);
  if (status != CAIRO_STATUS_SUCCESS) {
    throw std::runtime_error(std::string("the PDF could not be made: ") +
                             cairo_status_to_string(status));
  }
  return std::move(in.bytes);
}

}  // namespace wetout::report
