// The shapes of a drawing, in its own plane: x to the right, y down.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cubic.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::board {

struct DrawnShape {
  std::string id;    ///< of the element, or its layer; empty where it has none
  std::string what;  ///< "path", for messages
  int line = 0;
  std::vector<Chain> chains;
};
struct Drawing {
  std::vector<DrawnShape> shapes;  ///< in the order of the file
  /// Of one unit in metres, where the drawing says how large it is in units of length; else the
  /// unit is a pixel, 96 an inch.
  double metres = 0.0254 / 96.0;
  bool has_size = false;
  bool has_copies = false;  ///< `use`: what it stands for is not drawn
};

/// path, line, polyline, polygon, rect, circle, ellipse under nested g, svg, a, with transforms,
/// viewBox and units; what is only defined (defs, symbol, clipPath ...) or not displayed is left
/// out. Nothing outside the bytes is looked at. Problems carry file, line and element. Refused:
/// "outline.too_large" (above 16 MiB), "outline.not_svg", "outline.entities" (a document type that
/// declares entities), "outline.too_deep" (more than 100 levels), "outline.too_many" (shapes or
/// pieces), "outline.path", "outline.number", "outline.transform".
base::Result<Drawing> read_svg(std::string_view bytes, std::string_view name);

/// The text form of DXF, as its published reference has it: LINE, ARC, CIRCLE, ELLIPSE, LWPOLYLINE
/// and POLYLINE with bulges, SPLINE, and INSERT of blocks that hold them, in the plane of the
/// drawing. All of a layer is one shape, its id the layer's name; the unit is that of $INSUNITS.
/// Nothing outside the bytes is looked at. Refused: "outline.too_large", "outline.too_many",
/// "outline.too_deep" (blocks in blocks), "outline.not_dxf".
base::Result<Drawing> read_dxf(std::string_view bytes, std::string_view name);

/// Which of the two it is by its content; "outline.not_drawing" where it is neither.
base::Result<Drawing> read_drawing(std::string_view bytes, std::string_view name);

/// More of anything than an outline has.
inline constexpr std::size_t most_drawing_bytes = std::size_t{16} << 20U;
inline constexpr std::size_t most_drawing_pieces = 1'000'000;

}  // namespace wetout::board
