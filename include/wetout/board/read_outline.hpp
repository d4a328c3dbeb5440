// A board's outline out of a drawing (docs/formats/outline.md).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"

namespace wetout::board {

/// Where on the page the nose is.
enum class Toward { up, down, left, right };
/// "up", "down", "left", "right".
std::string_view to_string(Toward toward);

struct OutlineRequest {
  std::string id;              ///< of the shape in the drawing; empty: the only one
  std::optional<Toward> nose;  ///< else up, of a board that stands on the page
  units::Length length;        ///< of the board: the drawing is scaled to it
  End tail_end, nose_end;      ///< as the job file says
};

struct ReadOutline {
  DrawnOutline drawn;
  std::vector<At> width;       ///< at the knots
  units::Length wide_point;    ///< from the tail
  units::Length drawn_length;  ///< as the drawing has it; zero where it has no units of length
  units::Length asymmetry;  ///< largest difference of the two sides' half-widths; of half a board 0
  bool is_half = false;
  base::Notices notices;
};

/// From an SVG or DXF drawing (src/board/drawing.hpp says of which parts). The outline is one closed
/// shape, whole or one half with its straight edge along the centre line, or a line from tail to
/// nose, which is one half. Pieces whose ends lie within half a millimetre on the board are one
/// line. The board stands on the page or lies across it. The half-width is the two sides' mean,
/// within 0.001 mm of the curves that are drawn; a notch that is drawn is measured, not used: it is
/// the job file's.
///
/// Notices: "outline.scaled" (the drawing says another length), "outline.uneven" (sides differ by
/// more than 1 mm), "outline.notch" (another depth than the job file's). Problems, with file, line
/// and element: those of read_drawing(); "outline.nothing" (no line in it), "outline.which" (several
/// shapes: their ids), "outline.id" (no such shape), "outline.open" (pieces that do not join),
/// "outline.nose" (which end is the nose), "outline.doubles_back", "outline.uneven" (sides differ
/// by more than a tenth of the width: not along the page?), "outline.end" (an end is cut or not,
/// against the job file).
base::Result<ReadOutline> read_outline(std::string_view bytes, std::string_view name,
                                       const OutlineRequest& request);

}  // namespace wetout::board
