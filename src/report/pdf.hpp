// A PDF with pages of any size, drawn in millimetres from the upper left corner.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sheets.hpp"

namespace wetout::report {

class Pdf {
 public:
  /// `made`: "2026-06-13T16:15:00Z".
  Pdf(const std::string& title, const std::string& mark, const std::string& made);
  Pdf(const Pdf&) = delete;
  Pdf& operator=(const Pdf&) = delete;
  ~Pdf();

  /// Begins a page; the one before is finished.
  void page(PaperSize size);
  /// What is drawn until the end of the block is moved and clipped to the window, which comes to
  /// lie at `at` on the page.
  class Window {
   public:
    Window(Pdf& pdf, const Box& window, PlanePoint at);
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;
    ~Window();

   private:
    Pdf& pdf_;
  };

  enum class Dash { none, edge, centre, cut };
  struct Pen {
    double width = 0.3;
    Dash dash = Dash::none;
    double grey = 0.0;  ///< 1 is white
  };
  void line(PlanePoint from, PlanePoint to, const Pen& pen);
  void closed(const std::vector<PlanePoint>& points, const Pen& pen);
  void box(const Box& box, const Pen& pen);
  /// Until clip_end(): nothing outside the closed line.
  void clip(const std::vector<PlanePoint>& points);
  void clip_end();
  enum class Anchor { start, middle, end };
  /// `at`: on the base line.
  void text(PlanePoint at, std::string_view text, double size, Anchor anchor = Anchor::start,
            bool bold = false);
  /// How wide a text comes out.
  [[nodiscard]] double width_of(std::string_view text, double size, bool bold = false) const;
  /// The last page is finished. Throws std::runtime_error when the library failed.
  [[nodiscard]] std::string bytes();

 private:
  struct Library;
  std::unique_ptr<Library> library_;
};

}  // namespace wetout::report
