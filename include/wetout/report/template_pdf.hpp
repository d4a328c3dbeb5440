// Drawings at full size on as many sheets as it takes, to be laid on foam or board.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/board/hull.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::report {

enum class Paper {
  a4,
  letter,
  roll,  ///< one sheet as large as the drawing
};
/// "a4", "letter", "roll".
std::string_view to_string(Paper paper);

/// What is drawn, in the board's own measures: x from the tail, y from the centre line.
struct TemplateDrawing {
  std::string title;                        ///< "Pico 5-4, outline"
  std::string about;                        ///< "revision 2 of pico-5-4, 5 ft 4 in long"
  std::vector<board::Hull::Point> outline;  ///< board::Hull::outline
  units::Length length;
  bool whole = false;  ///< both halves; else the one with y above 0, to be turned over
  struct Band {
    units::Length width;
    std::string label;
  };
  std::vector<Band> bands;  ///< lines so far inside the outline
  struct Patch {
    units::Length from, to;
    std::optional<units::Length> width;  ///< to the outline without
    std::string label;
  };
  std::vector<Patch> patches;
  struct Station {
    units::Length from_tail, half_width;
    std::string label;  ///< "12 in: 8 1/2 in"
  };
  std::vector<Station> stations;
};

/// In every file that is made here.
inline constexpr std::string_view template_pdf_mark = "wetout drawing at full size";

struct TemplatePdf {
  std::string bytes;
  int sheets = 0;  ///< that belong to the drawing, without the first page
  int columns = 0, rows = 0;
};

/// PDF 1.5 [iso32000-1]. First a page with squares of 100 mm and 4 in to measure, how the sheets
/// lie and how they are put together; then the sheets, nose first, 10 mm of each over the next,
/// with crosses that meet. Sheets that nothing of the board reaches are left out; paper is turned
/// where that takes fewer. Lines are where they belong to 0.01 mm (a printer is the worse). On a
/// roll all of it is one page. `made`: the date the file says it was made, "2026-06-13T16:15:00Z".
/// Texts that are not UTF-8 are shown as layout::plain() does.
TemplatePdf template_pdf(const TemplateDrawing& drawing, Paper paper, const std::string& made);

}  // namespace wetout::report
