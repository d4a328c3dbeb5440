// The shapes of an SVG drawing [svg2], in the drawing's own plane.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cubic.hpp"
#include "wetout/base/problem.hpp"

namespace wetout::board {

struct SvgShape {
  std::string id;    ///< of the element; empty where it has none
  std::string what;  ///< "path", for messages
  int line = 0;
  std::vector<Chain> chains;
};
struct SvgDrawing {
  std::vector<SvgShape> shapes;  ///< in the order of the file; x to the right, y down
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
base::Result<SvgDrawing> read_svg(std::string_view bytes, std::string_view name);

}  // namespace wetout::board
